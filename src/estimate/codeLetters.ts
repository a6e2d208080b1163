import { codeLetterRange, kvaPerHorsepower } from '../scenario/codeLetter.ts';
import { nameplateError } from './nameplateError.ts';

/** What a NEMA code letter says of the locked-rotor current, A r.m.s. in the line. */
export interface CodeLetterCurrent {
  /** Middle of the letter's band; of A and V, which are open on one side, the known end. */
  readonly middle: number;
  /** Ends of the band over `middle`; beyond the known end of A and V a usual spread (common practice, no source). */
  readonly range: readonly [low: number, high: number];
  /** In words. */
  readonly source: string;
}

/**
 * Locked-rotor current that a code letter stands for, capital or small.
 *
 * @param power rated shaft power, W
 * @param lineVoltage V
 * @throws ScenarioError when there is no such letter
 */
export function codeLetterCurrent(letter: string, power: number, lineVoltage: number): CodeLetterCurrent {
  const name = letter.trim().toUpperCase();
  const band = codeLetterRange(name);
  if (band === null)
    throw nameplateError(
      'codeLetter',
      letter,
      'is no NEMA code letter',
      'one of A B C D E F G H J K L M N P R S T U V',
    );
  const { from, below } = band;
  const amperes = (kva: number) => kva / kvaPerHorsepower(lineVoltage, 1, power);
  if (from === 0)
    return { middle: amperes(below), range: [0.7, 1], source: `upper end of code letter ${name}` };
  if (!Number.isFinite(below))
    return { middle: amperes(from), range: [1, 1.2], source: `lower end of code letter ${name}` };
  const middle = (from + below) / 2;
  return {
    middle: amperes(middle),
    range: [from / middle, below / middle],
    source: `middle of code letter ${name}, ${from} to ${below} kVA/hp`,
  };
}
