import { z } from 'zod';
import { bounds } from './bounds.ts';
import { defaultMaxSteps, defaultRelativeTolerance } from './defaults.ts';
import { packFault, packTypeFault } from './fault.ts';
import { group, pureNumber, quantity, word } from './field.ts';
import { quantityPattern, readQuantity } from './parseQuantity.ts';

/** The initial state as a person writes it. */
export const initialInput = word(['rest', 'running forward', 'running reverse'], {
  about: 'State at t = 0: at rest without flux, or running in the steady state that circuit and load give',
  default: 'rest',
});

const action = group('One command', {
  at: quantity(bounds.instant, { about: 'When', example: '1.5 s' }),
  do: word(['start forward', 'start reverse', 'plug', 'coast', 'stop'], {
    about:
      'start forward, start reverse: energise that contactor; plug: energise the opposite one until the zero-speed switch opens; coast (or stop): drop both',
  }),
});

/** The actions as a person writes them. */
export const actionsInput = z
  .array(action, {
    error: ({ input }) => packTypeFault(input, 'a list such as `[{ at: 0 s, do: start forward }]`'),
  })
  .min(1, { error: () => packFault('outOfRange', 'the list is empty', 'at least one action') })
  .max(1000, { error: () => packFault('outOfRange', 'the list is too long', 'at most 1000 actions') })
  .meta({
    description: 'What is done and when, in ascending order of time.',
    examples: [
      [
        { at: '0 s', do: 'start forward' },
        { at: '1.5 s', do: 'plug' },
      ],
    ],
  });

/** `auto` or a time; one string in the file, hence not a union of two schemas. */
const endTime = z
  .string({
    error: ({ input }) =>
      typeof input === 'number'
        ? packFault('missingUnit', `${input} has no unit`, `\`auto\` or a time: write \`${input} s\``)
        : packTypeFault(input, '`auto` or a time such as `5 s`'),
  })
  .meta({
    description:
      'auto: until the last action has done its work; or a time with its unit, above 0 to one hour.',
    examples: ['auto', '5 s'],
    pattern: `^\\s*auto\\s*$|${quantityPattern}`,
    default: 'auto',
  })
  .transform((text, context): number | 'auto' => {
    if (text.trim() === 'auto') return 'auto';
    const read = readQuantity(text, 'time');
    if (typeof read === 'number' && read > bounds.endTime.min && read <= bounds.endTime.max) return read;
    const message =
      typeof read === 'number'
        ? packFault(
            'outOfRange',
            `${text} is out of range`,
            `\`auto\` or a time up to ${bounds.endTime.max} s`,
          )
        : packFault(read.code, read.message, '`auto` or a time such as `5 s`');
    context.addIssue({ code: 'custom', message });
    return z.NEVER;
  });

/** The solver settings as a person writes them. */
export const solverInput = group('How the run is integrated', {
  relativeTolerance: pureNumber(
    { min: 1e-12, max: 1e-3 },
    {
      about: 'Relative tolerance of the integration',
      example: `${defaultRelativeTolerance}`,
      default: `${defaultRelativeTolerance}`,
    },
  ).optional(),
  endTime: endTime.optional(),
  maxSteps: pureNumber(
    { min: 100, max: 1e8, integer: true },
    {
      about: 'Most integration steps in one run before it ends with the status stepLimit',
      example: `${defaultMaxSteps}`,
      default: `${defaultMaxSteps}`,
    },
  ).optional(),
  frame: word(['auto', 'stationary'], {
    about: 'auto: the reference frame that suits the conducting poles; stationary: for cross-checks',
    default: 'auto',
  }).optional(),
});
