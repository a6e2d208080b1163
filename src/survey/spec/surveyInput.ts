import { z } from 'zod';
import { METRIC_KEYS } from '../../measure/metric.ts';
import { packFault, packTypeFault } from '../../scenario/fault.ts';
import { group, pureNumber, text, word } from '../../scenario/field.ts';
import { yesNo } from '../../scenario/yesNo.ts';
import { drawnField, listedField, rangeField } from './fieldInput.ts';
import { MOST_RUNS } from './surveyCost.ts';

/** What a survey can ask, as a person writes it. */
export const ASK_WORDS = ['sweep', 'random', 'worst case', 'sensitivity', 'limit map'] as const;

/** What a survey asks, as written. */
export type AskWord = (typeof ASK_WORDS)[number];

/** Fields of one survey: far above what anybody can read a result of, low enough for low-discrepancy sequences. */
export const MOST_FIELDS = 30;

/** Largest seed: 32 bits. */
const LARGEST_SEED = 4_294_967_295;

/** Of a survey that states none. */
export const DEFAULT_SEED = 1;

/** Of random and sensitivity where none is stated. */
export const DEFAULT_SEQUENCE = 'quasi';

const common = {
  title: text(
    { min: 1, max: 200, lines: 'one' },
    { about: 'One line that names the survey', example: 'What the instant of closing does' },
  ),
  description: text(
    { min: 0, max: 10_000, lines: 'several' },
    { about: 'Free text about the question', example: 'The instant of closing is chance.' },
  ).optional(),
  scenario: text(
    { min: 1, max: 1000, lines: 'one' },
    {
      about: 'File of the scenario that is varied, relative to this file',
      example: 'may-this-belt-be-plugged.yaml',
    },
  ),
  metrics: z
    .array(word(METRIC_KEYS, { about: 'A metric' }), {
      error: ({ input }) => packTypeFault(input, 'a list of metrics, such as `[plugMinimumTorque]`'),
    })
    .min(1, { error: () => packFault('outOfRange', 'the list is empty', 'at least one metric') })
    .meta({
      description:
        'What is taken down of every run; if left out, lowest torque, peak current, time, rotor heat and revolutions of the plug stop.',
      examples: [['plugMinimumTorque', 'stopRevolutions']],
    })
    .optional(),
  verdict: yesNo({
    about: 'The verdict of every run is taken down too, which takes longer',
    default: 'no',
  }).optional(),
  seed: pureNumber(
    { min: 0, max: LARGEST_SEED, integer: true },
    { about: 'Same survey, same seed, same runs', example: `${DEFAULT_SEED}`, default: `${DEFAULT_SEED}` },
  ).optional(),
};

function vary<F extends z.ZodType>(one: F) {
  return z
    .array(one, {
      error: ({ input }) => packTypeFault(input, 'a list of fields, such as `[{ field: load.inertia, … }]`'),
    })
    .min(1, { error: () => packFault('outOfRange', 'the list is empty', 'at least one field') })
    .max(MOST_FIELDS, {
      error: () => packFault('outOfRange', 'the list is too long', `at most ${MOST_FIELDS} fields`),
    })
    .meta({ description: 'What is varied.' });
}

/** The upper end of a count of runs is checked where the whole survey is known, with what it would cost. */
function count(least: number, about: { readonly about: string; readonly example: string }) {
  const expected = `a whole number from ${least} to ${MOST_RUNS}, such as \`${about.example}\``;
  const refused = (input: unknown) =>
    typeof input !== 'number'
      ? packTypeFault(input, expected)
      : Number.isFinite(input)
        ? packFault('outOfRange', `${input} is not allowed`, expected)
        : packFault('notANumber', `${input} is not a number`, expected);
  return z
    .number({ error: ({ input }) => refused(input) })
    .min(least, { error: ({ input }) => refused(input) })
    .multipleOf(1, { error: ({ input }) => refused(input) })
    .meta({ description: `${about.about}.`, examples: [Number(about.example)], maximum: MOST_RUNS });
}

const sequence = word(['quasi', 'pseudo'], {
  about: 'quasi: a sequence that fills the ranges evenly; pseudo: independent draws',
  default: DEFAULT_SEQUENCE,
}).optional();

const ask = <const W extends AskWord>(one: W, about: string) =>
  z
    .literal(one, { error: ({ input }) => packTypeFault(input, `\`${one}\``) })
    .meta({ description: `${about}.` });

/** The definition of a survey file for each thing it can ask. */
export const SURVEY_INPUTS = {
  sweep: group('Every combination of the values of its fields', {
    ...common,
    ask: ask('sweep', 'Every combination of the values of the fields'),
    vary: vary(listedField),
  }),
  random: group('Draws of all fields at once', {
    ...common,
    ask: ask('random', 'Draws of all fields at once'),
    runs: count(1, { about: 'How many draws', example: '2000' }),
    sequence,
    vary: vary(drawnField),
  }),
  'worst case': group('The extreme of one metric within ranges of the fields', {
    ...common,
    ask: ask('worst case', 'The extreme of one metric within the ranges of the fields'),
    metric: word(METRIC_KEYS, { about: 'The metric whose extreme is sought' }),
    seek: word(['smallest', 'largest', 'largest magnitude'], { about: 'Which extreme' }),
    runs: count(1, { about: 'Most runs the search may make', example: '500' }),
    vary: vary(rangeField),
  }),
  sensitivity: group('How much of the scatter of the metrics each field causes', {
    ...common,
    ask: ask('sensitivity', 'How much of the scatter of the metrics each field causes'),
    samples: count(2, {
      about: 'Draws of all fields; each costs as many runs as there are fields, and two',
      example: '512',
    }),
    sequence,
    vary: vary(drawnField),
  }),
  'limit map': group('The verdict over the values of two fields', {
    ...common,
    ask: ask('limit map', 'The verdict over the values of two fields'),
    vary: vary(listedField),
  }),
} as const satisfies Readonly<Record<AskWord, z.ZodType>>;

/** What is looked at where nobody knows what is asked: what all surveys share. */
export const UNKNOWN_ASK_INPUT = z.looseObject(
  { ...common, ask: word(ASK_WORDS, { about: 'What is asked' }), vary: vary(z.unknown()) },
  { error: ({ input }) => packTypeFault(input, 'a survey with title, scenario, ask, vary') },
);
