import { z } from 'zod';
import type { Bounds } from './bounds.ts';
import { dimensions } from './dimension.ts';
import { packFault, packTypeFault } from './fault.ts';
import { type About, pureNumber, unitOf, withUnit } from './field.ts';
import { keyword } from './keyword.ts';
import { quantityPattern, readQuantity } from './parseQuantity.ts';
import { type RatioRange, ratio } from './ratioField.ts';

const NONE = 'none: it is stated that no limit applies. Left out: not known';

/**
 * A limit with its unit, or `none`. It is one string in the file, hence not a union of two schemas.
 *
 * @param bounds which dimension, and the range that is taken for plausible
 * @param about for the editor
 */
export function limitQuantity(bounds: Bounds, about: About) {
  const { words, si, spellings } = dimensions[bounds.dimension];
  const expected = `${words} with its unit, such as \`${about.example}\`, or \`none\``;
  const range = `${bounds.aboveMin ? 'above' : 'from'} ${withUnit(bounds.min, si)} to ${withUnit(bounds.max, si)}`;
  return z
    .string({
      error: ({ input }) =>
        typeof input === 'number'
          ? packFault(
              'missingUnit',
              `${input} has no unit`,
              `${words}: write \`${input} ${unitOf(about.example)}\``,
            )
          : packTypeFault(input, expected),
    })
    .meta({
      description: `${about.about}. A number with its unit (${spellings.join(', ')}), ${range}; ${NONE}.`,
      examples: [about.example, 'none'],
      pattern: `^\\s*none\\s*$|${quantityPattern}`,
    })
    .transform((text, context): number | 'none' => {
      if (text.trim() === 'none') return 'none';
      const read = readQuantity(text, bounds.dimension);
      if (typeof read === 'number') {
        if (read <= bounds.max && (bounds.aboveMin ? read > bounds.min : read >= bounds.min)) return read;
        const message = packFault(
          'outOfRange',
          `${text.trim()} is out of range`,
          `${words} ${range}, or \`none\``,
        );
        context.addIssue({ code: 'custom', message });
        return z.NEVER;
      }
      const wanted = read.code === 'notANumber' ? expected : read.expected;
      context.addIssue({ code: 'custom', message: packFault(read.code, read.message, wanted) });
      return z.NEVER;
    });
}

/**
 * A limit that is a part of a whole, or `none`.
 *
 * @param range that is taken for plausible
 * @param about for the editor
 */
export function limitRatio(range: RatioRange, about: About) {
  return z
    .union([
      z.literal('none', {
        error: ({ input }) => packTypeFault(input, `a percentage such as \`${about.example}\`, or \`none\``),
      }),
      ratio('fraction', range, about),
    ])
    .meta({
      description: `${about.about}: a fraction or a percentage; ${NONE}.`,
      examples: [about.example, 'none'],
    });
}

/**
 * A limit that is a plain number, or `none`.
 *
 * @param range that is taken for plausible
 * @param about for the editor
 */
export function limitNumber(range: { readonly min: number; readonly max: number }, about: About) {
  const expected = `a plain number from ${range.min} to ${range.max}, such as \`${about.example}\`, or \`none\``;
  return z.union([keyword(['none'], expected), pureNumber(range, about)]).meta({
    description: `${about.about}: a plain number from ${range.min} to ${range.max}; ${NONE}.`,
    examples: [Number(about.example), 'none'],
  });
}
