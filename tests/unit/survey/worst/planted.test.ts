import { describe, expect, it } from 'vitest';
import { randomStream } from '../../../../src/survey/draws/randomStream.ts';
import type { VariedField } from '../../../../src/survey/spec/survey.ts';
import { expectWithin } from '../../../support/tolerance.ts';
import { ackley, branin, hartmann6, pit, rastrigin, slit } from './functions.ts';
import { foundIn, ranged, ranges, worstSurvey } from './planted.ts';

const SEEDS = [1, 2, 3];
const RANDOM_DRAWS = 10_000;

interface Planted {
  readonly name: string;
  readonly fields: readonly VariedField[];
  readonly metric: (values: readonly number[]) => number;
  readonly minimum: number;
  readonly tolerance: number;
  readonly runs: number;
}

const CASES: readonly Planted[] = [
  {
    name: 'a narrow pit, 1 field',
    fields: ranges(1, 0, 1),
    metric: pit([0.713]),
    minimum: -1,
    tolerance: 1e-6,
    runs: 300,
  },
  {
    name: 'a narrow pit, 2 fields',
    fields: ranges(2, 0, 1),
    metric: pit([0.713, 0.29]),
    minimum: -1,
    tolerance: 1e-6,
    runs: 1000,
  },
  {
    name: 'a narrow pit, 3 fields',
    fields: ranges(3, 0, 1),
    metric: pit([0.713, 0.29, 0.6]),
    minimum: -1,
    tolerance: 1e-3,
    runs: 4000,
  },
  {
    name: 'a narrow slit, 4 fields',
    fields: ranges(4, 0, 1),
    metric: slit,
    minimum: -1,
    tolerance: 1e-3,
    runs: 1000,
  },
  {
    name: 'a narrow slit, 6 fields',
    fields: ranges(6, 0, 1),
    metric: slit,
    minimum: -1,
    tolerance: 1e-3,
    runs: 2000,
  },
  {
    name: 'Branin',
    fields: [ranged(-5, 10), ranged(0, 15)],
    metric: branin,
    minimum: 0.397887,
    tolerance: 1e-3,
    runs: 300,
  },
  {
    name: 'Rastrigin, 2 fields',
    fields: ranges(2, -5.12, 4.8),
    metric: rastrigin,
    minimum: 0,
    tolerance: 1e-3,
    runs: 5000,
  },
  {
    name: 'Ackley, 2 fields',
    fields: ranges(2, -30, 32),
    metric: ackley,
    minimum: 0,
    tolerance: 0.1,
    runs: 1000,
  },
  {
    name: 'Hartmann 6',
    fields: ranges(6, 0, 1),
    metric: hartmann6,
    minimum: -3.32237,
    tolerance: 1e-3,
    runs: 1500,
  },
];

describe('the extreme that was planted is found from several seeds, and nothing tried is better', () => {
  it.each(CASES)('$name in $runs runs', ({ name, fields, metric, minimum, tolerance, runs }) => {
    for (const seed of runs > 2000 ? SEEDS.slice(0, 2) : SEEDS) {
      const { row, value } = foundIn(worstSurvey(fields, runs, seed), metric);
      expectWithin(value, minimum, { absolute: tolerance }, `${name}, seed ${seed}`);
      expect(metric(row.values)).toBe(value);
      if (seed > 1) continue;
      expect(value).toBeLessThanOrEqual(leastOfRandom(fields, metric));
      expect(value).toBeLessThanOrEqual(leastAround(fields, metric, row.values) + tolerance / 10);
    }
  });
});

it('extremes at corners are found exactly at the bounds', () => {
  for (const count of [1, 2, 4, 6]) {
    const metric = (x: readonly number[]) =>
      x.reduce((sum, a, i) => sum + (i % 2 ? a : -a) + 0.3 * Math.sin(9 * a), 0);
    // Slopes run from 1 − 2.7 to 1 + 2.7, so the waves have hollows inside; the corner is lower.
    const tilted = (x: readonly number[]) =>
      3 * x.reduce((sum, a, i) => sum + (i % 2 ? a : -a), 0) + metric(x) / 3;
    const { row } = foundIn(worstSurvey(ranges(count, 0, 1), 300), tilted);
    expect(row.values).toEqual(Array.from({ length: count }, (_, i) => (i % 2 ? 0 : 1)));
  }
});

it('an extreme on one bound and inside along the other fields is found, the bound exactly', () => {
  const metric = ([x, y, z]: readonly number[]) => (x! - 0.31) ** 2 + (y! - 0.62) ** 2 - z!;
  const { row } = foundIn(worstSurvey([ranged(0, 1), ranged(0, 1), ranged(0.2, 1.7)], 500), metric);
  expect(row.values[2]).toBe(1.7);
  expectWithin(row.values[0], 0.31, { absolute: 1e-4 }, 'x');
  expectWithin(row.values[1], 0.62, { absolute: 1e-4 }, 'y');
});

it.each([359.2, 0.4])(
  'an extreme at %s degrees lies across the seam of the full turn and is found',
  (peak) => {
    const fields = [ranged(0, 360, 'deg'), ranged(0.8, 1.2)];
    const metric = ([angle, scale]: readonly number[]) => {
      const away = ((angle! - peak + 540) % 360) - 180;
      return scale! * Math.exp(-((away / 8) ** 2)) + 0.5 * Math.cos((2 * Math.PI * (angle! - 90)) / 180);
    };
    for (const seed of SEEDS) {
      const { row } = foundIn(worstSurvey(fields, 1000, seed, 'largest'), metric);
      expectWithin(((row.values[0]! - peak + 540) % 360) - 180, 0, { absolute: 0.5 }, `seed ${seed}`);
      expect(row.values[1]).toBe(1.2);
    }
  },
);

it('the largest, and the largest of either sign, are sought where they are asked for', () => {
  const metric = ([x]: readonly number[]) => Math.sin(x!) * (1 + x! / 20);
  const { value } = foundIn(worstSurvey(ranges(1, 0, 6), 200, 1, 'largest'), metric);
  // Where the derivative (1 + x / 20) cos x + (sin x) / 20 is 0.
  expectWithin(value, metric([1.617023]), { absolute: 1e-6 }, 'largest');
  const either = foundIn(worstSurvey(ranges(1, 0, 6), 200, 1, 'largestMagnitude'), metric);
  expectWithin(either.value, metric([4.752767]), { absolute: 1e-6 }, 'largest of either sign');
});

it('an extreme on the border of what is refused is found, and nothing refused is taken for it', () => {
  const metric = ([x, y]: readonly number[]) => (x! + y! > 1.2 ? null : -x! - y! / 2);
  for (const seed of SEEDS) {
    const { row, value } = foundIn(worstSurvey(ranges(2, 0, 1), 500, seed), metric);
    // Linear programme: at x = 1, y = 0.2.
    expectWithin(value, -1.1, { absolute: 1e-3 }, `seed ${seed}`);
    expect(row.status).toBe('good');
  }
});

function leastOfRandom(fields: readonly VariedField[], metric: Planted['metric']): number {
  const draw = randomStream(77, 0);
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < RANDOM_DRAWS; i++)
    least = Math.min(least, metric(fields.map((field) => at(field, draw()))));
  return least;
}

/** A grid of 0.2 % of the ranges: 5 numbers along each field of up to four, 3 along each of more. */
function leastAround(
  fields: readonly VariedField[],
  metric: Planted['metric'],
  centre: readonly number[],
): number {
  const steps = fields.length > 4 ? [-1, 0, 1] : [-2, -1, 0, 1, 2];
  let points: number[][] = [[]];
  fields.forEach((field, i) => {
    const grid = steps.map((k) => {
      const { from, to } = field.spread as { from: number; to: number };
      return Math.min(to, Math.max(from, centre[i]! + 0.002 * k * (to - from)));
    });
    points = points.flatMap((point) => grid.map((value) => [...point, value]));
  });
  return points.reduce((least, point) => Math.min(least, metric(point)), Number.POSITIVE_INFINITY);
}

function at({ spread }: VariedField, share: number): number {
  const { from, to } = spread as { from: number; to: number };
  return from + share * (to - from);
}
