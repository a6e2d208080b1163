import { z } from 'zod';
import type { Bounds } from './bounds.ts';
import { packFault, packTypeFault } from './fault.ts';
import { quantityPattern, readQuantity } from './parseQuantity.ts';

/** What is said of a time that may be a word instead. */
interface AboutTime {
  /** A sentence with its full stop. */
  readonly about: string;
  /** A time with its unit. */
  readonly example: string;
  /** s */
  readonly bounds: Bounds;
}

/**
 * A time with its unit, or one word. It is one string in the file, hence not a union of two schemas. The word is its default.
 *
 * @param word that may stand in place of a time
 * @param what for the editor; the example is also shown in messages
 */
export function timeOrWord<const W extends string>(word: W, what: AboutTime) {
  const { about, example, bounds } = what;
  const expected = `\`${word}\` or a time such as \`${example}\``;
  return z
    .string({
      error: ({ input }) =>
        typeof input === 'number'
          ? packFault('missingUnit', `${input} has no unit`, `\`${word}\` or a time: write \`${input} s\``)
          : packTypeFault(input, expected),
    })
    .meta({
      description: about,
      examples: [word, example],
      pattern: `^\\s*${word}\\s*$|${quantityPattern}`,
      default: word,
    })
    .transform((text, context): number | W => {
      if (text.trim() === word) return word;
      const read = readQuantity(text, 'time');
      if (typeof read === 'number' && read <= bounds.max) {
        if (bounds.aboveMin === true ? read > bounds.min : read >= bounds.min) return read;
      }
      const message =
        typeof read === 'number'
          ? packFault(
              'outOfRange',
              `${text.trim()} is out of range`,
              `\`${word}\` or a time up to ${bounds.max} s`,
            )
          : packFault(read.code, read.message, expected);
      context.addIssue({ code: 'custom', message });
      return z.NEVER;
    });
}
