import { z } from 'zod';
import type { Bounds } from './bounds.ts';
import { closestWord } from './closestWord.ts';
import { dimensions } from './dimension.ts';
import { describeValue, packFault, packTypeFault } from './fault.ts';
import { quantityPattern, readQuantity } from './parseQuantity.ts';

/** What an editor shows beside a key. */
export interface About {
  /** One or two sentences without a full stop at the end. */
  readonly about: string;
  readonly example: string;
  /** Why the key must stand; said where it is missing. */
  readonly why?: string;
  /** What holds where the key is left out, as it would be written. */
  readonly default?: string;
}

/**
 * A number with its unit; comes out in SI.
 *
 * @param bounds which dimension, and the range that is taken for plausible
 * @param about for the editor; the example is also shown where the key is missing
 */
export function quantity(bounds: Bounds, about: About) {
  const entry = dimensions[bounds.dimension];
  const why = about.why === undefined ? '' : `: ${about.why}`;
  const expected = `${entry.words} with its unit, such as \`${about.example}\`${why}`;
  const range = `${bounds.aboveMin ? 'above' : 'from'} ${withUnit(bounds.min, entry.si)} to ${withUnit(bounds.max, entry.si)}`;
  return z
    .string({
      error: ({ input }) => {
        if (typeof input !== 'number') return packTypeFault(input, expected);
        if (!Number.isFinite(input)) return packFault('notANumber', `${input} is not a number`, expected);
        return packFault(
          'missingUnit',
          `${input} has no unit`,
          `${entry.words}: write \`${input} ${unitOf(about.example)}\``,
        );
      },
    })
    .meta({
      description: `${about.about}. A number with its unit (${entry.spellings.join(', ')}), ${range}.`,
      examples: [about.example],
      pattern: quantityPattern,
      ...(about.default === undefined ? {} : { default: about.default }),
    })
    .transform((text, context) => {
      const read = readQuantity(text, bounds.dimension);
      if (typeof read !== 'number') {
        context.addIssue({ code: 'custom', message: packFault(read.code, read.message, read.expected) });
        return z.NEVER;
      }
      if (read > bounds.max || read < bounds.min || (bounds.aboveMin === true && read === bounds.min)) {
        const message = `${text.trim()} is out of range`;
        context.addIssue({
          code: 'custom',
          message: packFault('outOfRange', message, `${entry.words} ${range}`),
        });
        return z.NEVER;
      }
      return read;
    });
}

/** A plain number without a unit. */
export function pureNumber(
  range: { min: number; max: number; integer?: boolean; even?: boolean },
  about: About,
) {
  const kind = range.even ? 'an even whole number' : range.integer ? 'a whole number' : 'a plain number';
  const expected = `${kind} from ${range.min} to ${range.max}, such as \`${about.example}\``;
  const outside = (input: unknown) =>
    packFault('outOfRange', `${describeValue(input)} is not allowed`, expected);
  let schema = z
    .number({
      error: ({ input }) =>
        typeof input === 'number'
          ? packFault('notANumber', `${input} is not a number`, expected)
          : packTypeFault(input, expected),
    })
    .min(range.min, { error: ({ input }) => outside(input) })
    .max(range.max, { error: ({ input }) => outside(input) });
  const step = range.even ? 2 : range.integer ? 1 : undefined;
  if (step !== undefined) schema = schema.multipleOf(step, { error: ({ input }) => outside(input) });
  return schema.meta({
    description: `${about.about}. ${expected[0]!.toUpperCase()}${expected.slice(1)}.`,
    examples: [Number(about.example)],
    ...(about.default === undefined ? {} : { default: Number(about.default) }),
  });
}

/** One of a few words. */
export function word<const W extends readonly [string, ...string[]]>(
  words: W,
  about: Omit<About, 'example'>,
) {
  const expected =
    words.length === 1 ? `\`${words[0]}\`` : `one of ${words.map((w) => `\`${w}\``).join(', ')}`;
  return z
    .enum(words, {
      error: ({ input }) => {
        if (typeof input !== 'string') return packTypeFault(input, expected);
        const close = closestWord(input, words);
        const hint = close === undefined ? expected : `\`${close}\` (${expected})`;
        return packFault('unknownWord', `${describeValue(input)} is not known here`, hint);
      },
    })
    .meta({
      description: `${about.about}.`,
      examples: [...words],
      ...(about.default === undefined ? {} : { default: about.default }),
    });
}

/** A key that is understood only to be refused unless it holds the one word the model covers. */
export function onlyCovered<const W extends string>(covered: W, reason: string) {
  return z
    .literal(covered, {
      error: ({ input }) =>
        packFault(
          'notSupported',
          `${describeValue(input)} is not covered: ${reason}`,
          `\`${covered}\`, or leave the key out`,
        ),
    })
    .meta({ description: `Only \`${covered}\` is covered: ${reason}.`, default: covered });
}

/** Free text of one line or several, without characters that could steer a terminal. */
export function text(
  limits: { readonly min: number; readonly max: number; readonly lines: 'one' | 'several' },
  about: About,
) {
  const { min, max, lines } = limits;
  const size =
    lines === 'one' ? `one line of ${min} to ${max} characters` : `text of up to ${max} characters`;
  const expected = `${size} (in quotes if it looks like a number)`;
  const outside = ({ input }: { readonly input?: unknown }) =>
    packFault('outOfRange', `has ${typeof input === 'string' ? input.length : 0} characters`, expected);
  const unprintable =
    lines === 'one' ? /[\p{Cc}\p{Cs}\uFFFD-\uFFFF]/u : /[^\P{Cc}\n\t]|[\p{Cs}\uFFFD-\uFFFF]/u;
  return z
    .string({ error: ({ input }) => packTypeFault(input, expected) })
    .min(min, { error: outside })
    .max(max, { error: outside })
    .refine((written) => !unprintable.test(written), {
      error: () => packFault('notText', 'contains a character that cannot be printed', expected),
    })
    .meta({ description: `${about.about}.`, examples: [about.example] });
}

/** A group of keys; any other key is an error. */
export function group<S extends z.ZodRawShape>(about: string, shape: S) {
  const keys = Object.keys(shape).join(', ');
  return z
    .strictObject(shape, {
      error: (issue) =>
        issue.code === 'unrecognized_keys'
          ? packFault('unknownKey', 'is not a known key', keys)
          : packTypeFault(issue.input, `a group of keys (${keys})`),
    })
    .meta({ description: `${about}.` });
}

/** The unit of an example: the one to suggest where none was written. */
export function unitOf(example: string): string {
  return example.trim().replace(/^\S+\s*/, '');
}

/** A limit for a message: six digits and its unit. */
export function withUnit(value: number, unit: string): string {
  return `${Number(value.toPrecision(6))} ${unit}`;
}
