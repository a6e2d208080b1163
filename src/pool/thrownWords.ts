import { inspect } from 'node:util';

/** Longest text that is shown of a value, characters. */
const LONGEST = 200;

/** Any value as one line of text; null where it does not let itself be shown. */
export function shownValue(value: unknown): string | null {
  try {
    // A promise waits for nothing here, and an error would show places in files.
    if (value instanceof Promise) return 'a promise';
    if (value instanceof Error) return String(value);
    const text = inspect(value, {
      depth: 2,
      breakLength: Number.POSITIVE_INFINITY,
      maxArrayLength: 10,
      maxStringLength: LONGEST,
    }).replaceAll(/\s+/gu, ' ');
    return text.length > LONGEST ? `${text.slice(0, LONGEST)}…` : text;
  } catch {
    return null;
  }
}

/** What was thrown, in words: an error's message; anything else as it is. Throws nothing, whatever it is given. */
export function thrownWords(thrown: unknown): string {
  try {
    if (typeof thrown === 'string') return thrown;
    const message = isObject(thrown) && 'message' in thrown ? thrown.message : thrown;
    return typeof message === 'string' ? message : (shownValue(message) ?? UNSHOWN);
  } catch {
    return UNSHOWN;
  }
}

const UNSHOWN = 'the run threw what cannot be shown';

function isObject(value: unknown): value is object {
  return typeof value === 'object' && value !== null;
}
