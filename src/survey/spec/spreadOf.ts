import type { Path } from '../../scenario/place.ts';
import type { FieldForm } from './fieldForms.ts';
import type { End } from './readSpread.ts';
import type { Report } from './report.ts';
import type { Spread } from './survey.ts';
import { rounded } from './times.ts';

/** Deviations from the mean at which the tails of a normal distribution are cut: 6 in 100 000 lie outside. */
const CUT = 4;

/** The valid numbers of a field, in one unit. */
export interface Numbers {
  readonly values: readonly (number | undefined)[] | undefined;
  readonly from: number | undefined;
  readonly to: number | undefined;
  readonly mean: number | undefined;
  readonly deviation: number | undefined;
  readonly peak: number | undefined;
  readonly count: number | undefined;
  readonly logarithmic: boolean;
  /** `from` was written as `to` and the other way about. */
  readonly turned: boolean;
}

interface SpreadWithEnds {
  readonly spread: Spread;
  readonly ends: readonly [End, End];
}

/**
 * Puts the numbers of a field together and reports what is wrong between them.
 *
 * @param report paths within the field
 * @returns null where a number is missing or something was reported
 */
export function spreadOf(kind: FieldForm['kind'], numbers: Numbers, report: Report): SpreadWithEnds | null {
  if (kind === 'values') return listOf(numbers.values, report);
  if (kind === 'normal') return normalOf(numbers, report);
  const { from, to, count, peak, logarithmic } = numbers;
  if (from === undefined || to === undefined) return null;
  if (!inOrder(numbers, from, to, report)) return null;
  const ends = statedEnds(numbers, from, to);
  const isLogarithmic = kind === 'log uniform' || logarithmic;
  if (isLogarithmic && from <= 0) {
    report(ends[0].path, {
      code: 'outOfRange',
      message: `${from} has no logarithm`,
      expected: `a number above 0, or ${kind === 'log uniform' ? '`uniform`' : '`linear`'}`,
    });
    return null;
  }
  switch (kind) {
    case 'grid':
      if (count === undefined) return null;
      return { spread: { kind, from, to, count, spacing: isLogarithmic ? 'logarithmic' : 'linear' }, ends };
    case 'triangular':
      if (peak === undefined || !isBetween('peak', peak, from, to, report)) return null;
      return { spread: { kind, from, peak, to }, ends };
    default:
      return { spread: { kind: isLogarithmic ? 'logUniform' : 'uniform', from, to }, ends };
  }
}

function listOf(values: Numbers['values'], report: Report): SpreadWithEnds | null {
  const known = (values ?? []).filter((value) => value !== undefined);
  if (known.length === 0 || known.length !== values?.length) return null;
  const seen = new Set<number>();
  let whole = true;
  for (const [at, value] of known.entries()) {
    if (seen.has(value)) {
      whole = false;
      report(['values', at], {
        code: 'conflict',
        message: `${value} stands twice`,
        expected: 'each value once',
      });
    }
    seen.add(value);
  }
  if (!whole) return null;
  // Not by spreading: a list may be longer than a call's arguments.
  const endAt = (better: (one: number, other: number) => boolean): End => {
    const at = known.reduce((best, value, index) => (better(value, known[best]!) ? index : best), 0);
    return { number: known[at]!, path: ['values', at], automatic: false };
  };
  const ends = [endAt((one, other) => one < other), endAt((one, other) => one > other)] as const;
  return { spread: { kind: 'values', values: known }, ends };
}

function normalOf(numbers: Numbers, report: Report): SpreadWithEnds | null {
  const { mean, deviation } = numbers;
  if (mean === undefined || deviation === undefined) return null;
  if (!(deviation > 0)) {
    report(['deviation'], { code: 'outOfRange', message: 'is not above 0', expected: 'a deviation above 0' });
    return null;
  }
  const from = numbers.from ?? rounded(mean - CUT * deviation);
  const to = numbers.to ?? rounded(mean + CUT * deviation);
  if (numbers.from !== undefined && numbers.to !== undefined && !inOrder(numbers, from, to, report))
    return null;
  if (!isBetween('mean', mean, from, to, report)) return null;
  const [lower, upper] = statedEnds(numbers, from, to);
  const ends = [
    numbers.from === undefined ? { ...lower, path: ['mean'], automatic: true } : lower,
    numbers.to === undefined ? { ...upper, path: ['mean'], automatic: true } : upper,
  ] as const;
  return { spread: { kind: 'normal', mean, deviation, from, to }, ends };
}

function statedEnds({ turned }: Numbers, from: number, to: number): readonly [End, End] {
  const [lower, upper]: [Path, Path] = turned ? [['to'], ['from']] : [['from'], ['to']];
  return [
    { number: from, path: lower, automatic: false },
    { number: to, path: upper, automatic: false },
  ];
}

function inOrder({ turned }: Numbers, from: number, to: number, report: Report): boolean {
  if (from < to) return true;
  report([turned ? 'from' : 'to'], {
    code: 'conflict',
    message: from === to ? 'is the same as `from`, which leaves nothing to vary' : 'is below `from`',
    expected: 'a number above `from`',
  });
  return false;
}

function isBetween(key: 'peak' | 'mean', number: number, from: number, to: number, report: Report): boolean {
  if (number >= from && number <= to) return true;
  const expected = `a number from ${from} to ${to}`;
  report([key], { code: 'conflict', message: 'does not lie between `from` and `to`', expected });
  return false;
}
