import { z } from 'zod';
import { packFault, packTypeFault } from '../../scenario/fault.ts';
import { group, pureNumber, text, word } from '../../scenario/field.ts';
import { amount } from './amountInput.ts';
import { MOST_RUNS } from './surveyCost.ts';

/** Distributions as a person writes them. */
export const DISTRIBUTIONS = ['uniform', 'log uniform', 'normal', 'triangular'] as const;

/** How the numbers from `from` to `to` lie. */
const SPACINGS = ['linear', 'logarithmic'] as const;

/** Numbers in one list; the product with the other fields' is bounded anyway. */
const LONGEST_LIST = 10_000;

const field = text(
  { min: 1, max: 100, lines: 'one' },
  {
    about: 'The number of the scenario that is varied: keys and list positions from 0, joined by dots',
    example: 'load.inertia',
  },
);

const values = z
  .array(amount({ about: 'One value', example: '20 ms' }), {
    error: ({ input }) => packTypeFault(input, 'a list of numbers, such as `[18 ms, 20 ms, 24 ms]`'),
  })
  .min(1, { error: () => packFault('outOfRange', 'the list is empty', 'at least one value') })
  .max(LONGEST_LIST, {
    error: () => packFault('outOfRange', 'the list is too long', `at most ${LONGEST_LIST} values`),
  })
  .meta({ description: 'The values it takes, instead of a range.', examples: [['18 ms', '20 ms', '24 ms']] })
  .optional();

const from = amount({ about: 'Lower end', example: '0.2 kg m^2' }).optional();
const to = amount({ about: 'Upper end', example: '2 kg m^2' }).optional();

/** A field of a sweep: a list, or a range in steps. */
export const listedField = group('A number of the scenario and the list of its values', {
  field,
  values,
  from,
  to,
  count: pureNumber(
    { min: 2, max: MOST_RUNS, integer: true },
    { about: 'How many values from one end to the other, both included', example: '12' },
  ).optional(),
  spacing: word(SPACINGS, {
    about: 'linear: equal steps; logarithmic: equal ratios',
    default: 'linear',
  }).optional(),
});

/** A field whose value is drawn. */
export const drawnField = group('A number of the scenario and how its values are distributed', {
  field,
  values,
  distribution: word(DISTRIBUTIONS, {
    about:
      'uniform: from, to; log uniform (equal ratios equally likely): from, to; normal: mean, deviation, cut at from and to; triangular: from, peak, to',
  }).optional(),
  from,
  to,
  mean: amount({ about: 'Mean of a normal distribution before it is cut', example: '1 times' }).optional(),
  deviation: amount({
    about: 'Standard deviation of a normal distribution before it is cut',
    example: '0.1 times',
  }).optional(),
  peak: amount({ about: 'Most likely value of a triangular distribution', example: '1 times' }).optional(),
});

/** A field of which only the range counts. */
export const rangeField = group('A number of the scenario and the range it is sought in', {
  field,
  from,
  to,
  spacing: word(SPACINGS, {
    about: 'linear: equal steps count alike; logarithmic: equal ratios do',
    default: 'linear',
  }).optional(),
});

/** A field as read, whatever its survey asks. */
export type FieldInput =
  | z.output<typeof listedField>
  | z.output<typeof drawnField>
  | z.output<typeof rangeField>;
