import { formatNumber } from '../formatQuantity.ts';
import type { ChangeOverChoice, Question } from './question.ts';

/** A guess this near is as good as one made in the head can be, share of the answer. */
const NEAR = 0.1;
/** Said of such a guess. */
const NEAR_WORDS = 'within 10 %';
/** So that 110 A is within 10 % of 100 A, whatever the last bit says. */
const ROUNDING = 1e-9;
/** From this ratio on words count in times, below in per cent. */
const TIMES_FROM = 2;
/** In one. */
const PER_CENT = 100;

/**
 * How far a guess is from what the run gives, in words and without a score: "within 10 %", "30 % too low", "2.4 times too high",
 * "wrong sign"; where the sign is part of the answer by its size, "30 % too small in size", for −300 is higher than −496.
 *
 * @param guess SI, or a choice
 * @param actual SI, or the choice that holds
 */
export function judgeGuess(
  guess: number | ChangeOverChoice,
  actual: number | ChangeOverChoice,
  question: Pick<Question, 'signed'>,
): string {
  if (typeof guess === 'string' || typeof actual === 'string')
    return guess === actual ? 'right' : 'not this one';
  if (guess === actual) return 'exact';
  if (actual === 0) return 'the answer is zero';
  if (guess === 0) return 'it is not zero';
  const ratio = Math.abs(guess) / Math.abs(actual);
  const near = Math.abs(ratio - 1) <= NEAR + ROUNDING;
  const same = Math.sign(guess) === Math.sign(actual);
  if (!question.signed) return !same ? 'wrong sign' : near ? NEAR_WORDS : offBy(ratio, 'low', 'high');
  const size = near ? NEAR_WORDS : offBy(ratio, 'small', 'large');
  if (!same) return `wrong sign, its size ${size}`;
  return near ? size : `${size} in size`;
}

function offBy(ratio: number, less: string, more: string): string {
  if (ratio >= TIMES_FROM) return `${twoDigits(ratio)} times too ${more}`;
  if (ratio <= 1 / TIMES_FROM) return `${twoDigits(1 / ratio)} times too ${less}`;
  return `${Math.round(PER_CENT * Math.abs(ratio - 1))} % too ${ratio > 1 ? more : less}`;
}

/** Two digits say all that a comparison with a guess can say. */
function twoDigits(value: number): string {
  const rounded = Number(value.toPrecision(2));
  return rounded < PER_CENT ? String(rounded) : formatNumber(rounded);
}
