import { z } from 'zod';
import { closestWord } from './closestWord.ts';
import { describeValue, packFault, packTypeFault } from './fault.ts';

/**
 * One of a few words where something longer could stand as well.
 *
 * @param words that are understood
 * @param expected everything that could stand here, for the message
 */
export function keyword<const W extends readonly [string, ...string[]]>(words: W, expected: string) {
  return z.enum(words, {
    error: ({ input }) => {
      if (typeof input !== 'string') return packTypeFault(input, expected);
      const close = closestWord(input, words);
      const hint = close === undefined ? expected : `\`${close}\` (${expected})`;
      return packFault('unknownWord', `${describeValue(input)} is not known here`, hint);
    },
  });
}
