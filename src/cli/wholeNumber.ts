import { InputError } from './inputError.ts';

/**
 * Reads a whole number from the command line.
 *
 * @param option as typed: `--workers`
 * @throws InputError when it is none, or outside
 */
export function wholeNumber(option: string, text: string, least: number, largest: number): number {
  const value = /^\d{1,15}$/u.test(text) ? Number(text) : Number.NaN;
  if (value >= least && value <= largest) return value;
  throw new InputError(`${option} ${text}: expected a whole number from ${least} to ${largest}`);
}
