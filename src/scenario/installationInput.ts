import { z } from 'zod';
import { bounds } from './bounds.ts';
import { closestWord } from './closestWord.ts';
import { describeValue, packFault, packTypeFault } from './fault.ts';
import { group, quantity, word } from './field.ts';
import { quantityPattern, readQuantity } from './parseQuantity.ts';

/** `never` or a time; one string in the file, hence not a union of two schemas. */
const bypassAfter = z
  .string({
    error: ({ input }) =>
      typeof input === 'number'
        ? packFault('missingUnit', `${input} has no unit`, `\`never\` or a time: write \`${input} s\``)
        : packTypeFault(input, '`never` or a time such as `0.5 s`'),
  })
  .meta({
    description:
      'From energising the reversing coil to energising the bypass coil: a time with its unit, or never (the resistors stay in while this reversal lasts).',
    examples: ['never', '0.5 s'],
    pattern: `^\\s*never\\s*$|${quantityPattern}`,
    default: 'never',
  })
  .transform((text, context): number | 'never' => {
    if (text.trim() === 'never') return 'never';
    const read = readQuantity(text, 'time');
    const { min, max } = bounds.changeover;
    if (typeof read === 'number' && read >= min && read <= max) return read;
    const message =
      typeof read === 'number'
        ? packFault('outOfRange', `${text.trim()} is out of range`, `\`never\` or a time up to ${max} s`)
        : packFault(read.code, read.message, '`never` or a time such as `0.5 s`');
    context.addIssue({ code: 'custom', message });
    return z.NEVER;
  });

/** Resistors in the lines as a person writes them. */
export const lineResistorsInput = group(
  'Equal resistors in all three lines while plugging, with the contactor that bypasses them; a start from rest finds them bypassed',
  {
    resistance: quantity(bounds.resistor, { about: 'Resistance per line', example: '0.8 ohm' }),
    closingTime: quantity(bounds.operatingTime, {
      about: 'Bypass contactor, coil energised to contacts touch; as the other contactors if left out',
      example: '20 ms',
    }).optional(),
    openingTime: quantity(bounds.operatingTime, {
      about: 'Bypass contactor, coil de-energised to contacts part; as the other contactors if left out',
      example: '10 ms',
    }).optional(),
    bypassAfter: bypassAfter.optional(),
  },
);

const phase = (about: string) => word(['A', 'B', 'C'], { about });
const contactor = word(['forward', 'reverse'], { about: 'Which contactor' });
const kinds = ['lost phase', 'welded pole', 'dead pole'] as const;
const kind = <const K extends (typeof kinds)[number]>(name: K) =>
  z.literal(name).meta({ description: `The fault: ${name}.` });

const lostPhase = group('A supply phase is lost: its current ends at its next zero', {
  kind: kind('lost phase'),
  phase: phase('Which phase'),
  at: quantity(bounds.instant, { about: 'When', example: '1.2 s' }),
});

const weldedPole = group('A pole does not part any more once it has touched', {
  kind: kind('welded pole'),
  contactor,
  pole: phase('Which pole, by its motor terminal'),
});

const deadPole = group('A pole never touches', {
  kind: kind('dead pole'),
  contactor,
  pole: phase('Which pole, by its motor terminal'),
});

const fault = z.discriminatedUnion('kind', [lostPhase, weldedPole, deadPole], {
  error: ({ input }) => {
    const expected = `one of ${kinds.map((name) => `\`${name}\``).join(', ')}`;
    if (typeof input !== 'object' || input === null || Array.isArray(input))
      return packTypeFault(input, 'a fault such as `{ kind: lost phase, phase: B, at: 1.2 s }`');
    const written: unknown = 'kind' in input ? input.kind : undefined;
    if (written === undefined || written === null) return packTypeFault(written, expected);
    const close = typeof written === 'string' ? closestWord(written, kinds) : undefined;
    const hint = close === undefined ? expected : `\`${close}\` (${expected})`;
    return packFault('unknownWord', `${describeValue(written)} is not a kind of fault`, hint);
  },
});

/** Faults of the installation as a person writes them. */
export const faultsInput = z
  .array(fault, { error: ({ input }) => packTypeFault(input, 'a list of faults') })
  .max(20, { error: () => packFault('outOfRange', 'the list is too long', 'at most 20 faults') })
  .meta({
    description: 'What is wrong with the installation; nothing if left out.',
    examples: [[{ kind: 'lost phase', phase: 'B', at: '1.2 s' }]],
  });
