/** Most runs one survey may make. Chosen: what a person can wait for and a table can hold. */
export const MOST_RUNS = 10_000_000;

/**
 * s; guess of what one run takes on one core. Measured: 3 to 10 ms a run on a quiet machine with the textbook plug stop. The estimate
 * is one of magnitude.
 */
export const RUN_TIME_GUESS = 0.01;

/** Bytes; guess of what one run leaves in the journal. Measured: a row of three fields and five metrics with all digits has 234. */
export const ROW_BYTES = 250;

/** Runs in one verdict where duty alone does not change (see `Survey.verdict`). */
const VERDICT_RUNS = 15;

/** What a survey takes, before it has begun. */
export interface SurveyCost {
  /** s, on one core. */
  readonly seconds: number;
  readonly bytes: number;
}

/**
 * Guesses what a survey takes.
 *
 * @param count number of runs
 * @param verdict of every run too
 */
export function surveyCost(count: number, verdict: boolean): SurveyCost {
  const seconds = count * RUN_TIME_GUESS * (verdict ? VERDICT_RUNS : 1);
  return { seconds, bytes: count * ROW_BYTES };
}

/** A cost in words: `58 days on one core and 250 GB`. */
export function costWords({ seconds, bytes }: SurveyCost): string {
  return `${timeWords(seconds)} on one core and ${sizeWords(bytes)}`;
}

/** `46 s`, `2.5 h`; s. */
export function timeWords(seconds: number): string {
  return inUnits(seconds, TIMES);
}

/** `60 kB`, `2.5 GB`; bytes. */
export function sizeWords(bytes: number): string {
  return inUnits(bytes, SIZES);
}

type Units = readonly (readonly [size: number, name: string])[];

/** s */
const TIMES: Units = [
  [365 * 86_400, 'years'],
  [86_400, 'days'],
  [3600, 'h'],
  [60, 'min'],
  [0, 's'],
];

/** Bytes */
const SIZES: Units = [
  [1e9, 'GB'],
  [1e6, 'MB'],
  [0, 'kB'],
];

/** The smallest size of a unit's own. */
const SMALLEST: Readonly<Record<string, number>> = { s: 1, kB: 1e3 };

/** A larger unit is taken from two of it on; two digits, as a guess deserves. */
function inUnits(value: number, units: Units): string {
  const [size, name] = units.find(([one]) => value >= 2 * one)!;
  const number = value / (size === 0 ? SMALLEST[name]! : size);
  return `${Number(number.toPrecision(2))} ${name}`;
}
