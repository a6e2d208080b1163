import { it } from 'vitest';

/**
 * True in `npm run test:long`: checks that go through many like forms go through all of them there, and through those that differ most in
 * `npm test`.
 */
export const LONG_FORMS = process.env.LONG_FORMS === '1';

/** All forms in the long tests, some of them in the usual ones. */
export function forms<T>(all: readonly T[], some: readonly T[]): readonly T[] {
  return LONG_FORMS ? all : some;
}

/** A test of the long tests alone; in the usual ones it is not there, instead of being skipped. */
export function longIt(title: string, body: () => Promise<void>): void {
  if (LONG_FORMS) it(title, body);
}
