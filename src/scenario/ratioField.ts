import { z } from 'zod';
import { describeValue, packFault, packTypeFault } from './fault.ts';
import type { About } from './field.ts';
import { quantityPattern, quoted, splitQuantity } from './parseQuantity.ts';
import type { Fault } from './problem.ts';

/** Range of a ratio. */
export interface RatioRange {
  readonly min: number;
  /** The smallest value itself is refused. */
  readonly aboveMin?: boolean;
  readonly max: number;
}

/** fraction: a part of a whole, in percent; multiple: of a rated value, in percent or `times`. */
export type RatioKind = 'fraction' | 'multiple';

/**
 * A ratio, written as a plain number or in percent (a multiple also with `times`).
 *
 * @param kind which units are read
 * @param range that is taken for plausible
 * @param about for the editor; the example is also shown where the key is missing
 */
export function ratio(kind: RatioKind, range: RatioRange, about: About) {
  const words = kind === 'fraction' ? 'a fraction or a percentage' : 'a multiple or a percentage';
  const expected = `${words}, such as \`${about.example}\``;
  const within = `${range.aboveMin ? 'above' : 'from'} ${inPercent(range.min)} to ${inPercent(range.max)}`;
  return z
    .union([
      z.number({
        error: ({ input }) =>
          typeof input === 'number'
            ? packFault('notANumber', `${input} is not a number`, expected)
            : packTypeFault(input, expected),
      }),
      z.string({ error: ({ input }) => packTypeFault(input, expected) }).regex(new RegExp(quantityPattern), {
        error: ({ input }) => packed(readRatio(String(input), kind, expected), expected),
      }),
    ])
    .meta({
      description: `${about.about}. A plain number, or one with ${kind === 'fraction' ? '%' : '% or times'}, ${within}.`,
      examples: [about.example],
      ...(about.default === undefined ? {} : { default: about.default }),
    })
    .transform((written, context) => {
      const read = typeof written === 'number' ? written + 0 : readRatio(written, kind, expected);
      if (typeof read !== 'number') {
        context.addIssue({ code: 'custom', message: packed(read, expected) });
        return z.NEVER;
      }
      if (read > range.max || read < range.min || (range.aboveMin === true && read === range.min)) {
        const meant = typeof written === 'number' && read > range.max && read / 100 <= range.max;
        const hint = meant ? ` (\`${written} %\`?)` : '';
        const message = `${describeValue(written)} is out of range`;
        context.addIssue({
          code: 'custom',
          message: packFault('outOfRange', message, `${words} ${within}${hint}`),
        });
        return z.NEVER;
      }
      return read;
    });
}

/**
 * Reads a ratio with its sign.
 *
 * @param text such as `92.1 %`, `6.8 times`
 * @param kind which units are read
 * @param expected for the message
 */
export function readRatio(text: string, kind: RatioKind, expected: string): number | Fault {
  const split = splitQuantity(text, expected, '%');
  if ('code' in split) return split;
  const { digits, number, unitText } = split;
  if (unitText === '%' || unitText === 'percent') return hundredth(digits);
  if (kind === 'multiple' && ['times', 'x', '×'].includes(unitText)) return number + 0;
  if (unitText === '')
    return {
      code: 'missingUnit',
      message: `${quoted(text)} is text`,
      expected: `${digits} without quotes, or a percentage`,
    };
  return { code: 'wrongUnit', message: `${quoted(unitText)} is no unit of a ratio`, expected };
}

function packed(fault: number | Fault, expected: string): string {
  return typeof fault === 'number'
    ? packFault('notANumber', 'is no ratio', expected)
    : packFault(fault.code, fault.message, fault.expected);
}

function inPercent(value: number): string {
  return `${Number((value * 100).toPrecision(6))} %`;
}

/** A hundredth of a decimal number, as a program would read it: 92.1 % is 0.921, which a division misses by a bit. */
function hundredth(digits: string): number {
  const [mantissa, exponent = '0'] = digits.toLowerCase().split('e');
  return Number(`${mantissa}e${Number(exponent) - 2}`) + 0;
}
