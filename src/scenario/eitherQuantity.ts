import { z } from 'zod';
import type { Bounds } from './bounds.ts';
import { dimensions } from './dimension.ts';
import { packFault, packTypeFault } from './fault.ts';
import { type About, withUnit } from './field.ts';
import { quantityPattern, readQuantity } from './parseQuantity.ts';

/** What the unit told: which of two quantities was written, and its value in SI. */
export interface Either<K extends string> {
  readonly kind: K;
  readonly value: number;
}

/** One of the two quantities that may stand in one place. */
interface Choice<K extends string> {
  readonly kind: K;
  readonly bounds: Bounds;
}

/**
 * A number whose unit tells which of two quantities it is, such as a reactance in ohm or an inductance in henry.
 *
 * @param first the more usual of the two
 * @param second the other
 * @param words both in a sentence, with their articles
 * @param about for the editor
 */
export function eitherQuantity<K extends string>(
  first: Choice<K>,
  second: Choice<K>,
  words: string,
  about: About,
) {
  const expected = `${words}, such as \`${about.example}\``;
  const units = [first, second].map(({ bounds }) => dimensions[bounds.dimension].usual);
  return z
    .string({
      error: ({ input }) =>
        typeof input === 'number'
          ? packFault(
              'missingUnit',
              `${input} has no unit`,
              `${words}: \`${input} ${units[0]}\` or \`${input} ${units[1]}\``,
            )
          : packTypeFault(input, expected),
    })
    .meta({
      description: `${about.about}: ${words}, in ${units[0]} or ${units[1]}.`,
      examples: [about.example],
      pattern: quantityPattern,
      ...(about.default === undefined ? {} : { default: about.default }),
    })
    .transform((text, context): Either<K> => {
      for (const { kind, bounds } of [first, second]) {
        const value = readQuantity(text, bounds.dimension);
        if (typeof value !== 'number') continue;
        const inside =
          value >= bounds.min && value <= bounds.max && !(bounds.aboveMin === true && value === bounds.min);
        if (inside) return { kind, value };
        const { words: one, si } = dimensions[bounds.dimension];
        const range = `${one} ${bounds.aboveMin ? 'above' : 'from'} ${withUnit(bounds.min, si)} to ${withUnit(bounds.max, si)}`;
        context.addIssue({
          code: 'custom',
          message: packFault('outOfRange', `${text.trim()} is out of range`, range),
        });
        return z.NEVER;
      }
      const fault = readQuantity(text, first.bounds.dimension);
      if (typeof fault !== 'number')
        context.addIssue({ code: 'custom', message: packFault(fault.code, fault.message, expected) });
      return z.NEVER;
    });
}
