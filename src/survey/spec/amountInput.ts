import { z } from 'zod';
import { packFault, packTypeFault } from '../../scenario/fault.ts';
import type { About } from '../../scenario/field.ts';
import { quantityPattern, quoted, splitQuantity } from '../../scenario/parseQuantity.ts';

/** A number with the unit it is written in; which quantity it is only the scenario knows. */
export interface Amount {
  readonly number: number;
  /** As written; empty for a plain number. */
  readonly unit: string;
}

/** The unit of multiples of what stands in the scenario. */
export const TIMES = 'times';

/** Spellings of it. */
const TIMES_SPELLINGS: readonly string[] = [TIMES, 'x', '×'];

/** Characters of the longest unit worth reading. */
const LONGEST_UNIT = 40;

/**
 * A number of a field: with a unit as the scenario reads it, in multiples (`times`) of the number in the scenario, or plain.
 *
 * @param about for the editor; the example is also shown in messages
 */
export function amount(about: About) {
  const expected = `a number with its unit, such as \`${about.example}\`, in \`times\`, or a plain number`;
  return z
    .union([
      z.number({
        error: ({ input }) =>
          typeof input === 'number'
            ? packFault('notANumber', `${input} is not a number`, expected)
            : packTypeFault(input, expected),
      }),
      z.string({ error: ({ input }) => packTypeFault(input, expected) }).meta({ pattern: quantityPattern }),
    ])
    .meta({ description: `${about.about}, with its unit or in \`times\`.`, examples: [about.example] })
    .transform((written, context): Amount => {
      if (typeof written === 'number') return { number: written + 0, unit: '' };
      const split = splitQuantity(written, expected, unitOfExample(about.example));
      const refuse = (code: 'missingUnit' | 'wrongUnit' | 'notANumber', message: string, right: string) => {
        context.addIssue({ code: 'custom', message: packFault(code, message, right) });
        return z.NEVER;
      };
      if ('code' in split) return refuse('notANumber', split.message, split.expected);
      const { digits, number, unitText } = split;
      if (unitText === '')
        return refuse(
          'missingUnit',
          `${quoted(written)} has no unit`,
          `\`${digits} times\`, or a unit, or no quotes`,
        );
      if (unitText.length > LONGEST_UNIT)
        return refuse('wrongUnit', `${quoted(unitText)} is no unit`, expected);
      return { number: number + 0, unit: TIMES_SPELLINGS.includes(unitText) ? TIMES : unitText };
    });
}

function unitOfExample(example: string): string {
  return example.replace(/^\S+\s*/u, '');
}
