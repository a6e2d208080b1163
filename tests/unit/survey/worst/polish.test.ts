import { expect, it } from 'vitest';
import { extremeOf } from '../../../../src/survey/worst/extremeOf.ts';
import { polish } from '../../../../src/survey/worst/polish.ts';
import { searchEndOf } from '../../../../src/survey/worst/searchEnd.ts';
import { searchSpace } from '../../../../src/survey/worst/searchSpace.ts';
import { trialBook } from '../../../../src/survey/worst/trialBook.ts';
import { branin } from './functions.ts';
import { foundIn, ranged, ranges, rowOf, searched, worstSurvey } from './planted.ts';

/**
 * A torque peak as real ones are: a flat narrow valley askew to the axes, a cliff beside it, and a slope to
 * one end of the third field. Least −778 at (224.6°, 0.55, 0).
 */
function flatValley([angle, delay, inertia]: readonly number[]): number {
  const off = (((angle! - 224.6 + 540) % 360) - 180) / 360 - 0.4 * (delay! - 0.55);
  const cliff = off < -0.008 ? 10 : 0;
  return -778 + 9000 * off * off + 200 * (delay! - 0.55) ** 2 + 2 * inertia! + cliff;
}

it('in a flat askew valley beside a cliff nothing is left but a hundred-millionth', () => {
  for (const seed of [1, 2, 3]) {
    const { row, value } = foundIn(
      worstSurvey([ranged(0, 360, 'deg'), ...ranges(2, 0, 1)], 600, seed),
      flatValley,
    );
    expect(value, `seed ${seed}`).toBeLessThanOrEqual(-778 * (1 - 1e-8));
    expect(row.values[2]).toBe(0);
  }
});

it('ends of fields far from the best are tried, alone and together', () => {
  // From the middle both fields rise to either side; only with both at the end of 1 is there a pit.
  const metric = ([x, y, z]: readonly number[]) =>
    x === 1 && y === 1 ? -2 : (x! - 0.4) ** 2 + (y! - 0.4) ** 2 + (z! - 0.4) ** 2;
  const space = searchSpace({ fields: ranges(3, 0, 1) });
  const book = trialBook();
  for (const point of [
    [0.5, 0.5, 0.5],
    [0.45, 0.45, 0.45],
  ])
    book.enter({ point, cost: metric(point) }, 'local');
  const polishing = polish(0.05, { space, book, normal: () => 0.3, runs: 500 });
  let step = polishing.next([]);
  while (step.done !== true) step = polishing.next(step.value.map(metric));
  expect(step.value).toBe(true);
  expect(book.least()).toBe(-2);
});

it('a search says whether it came to rest or its runs were used up, and at what', () => {
  const endAfter = (runs: number) => {
    const survey = worstSurvey([ranged(-5, 10), ranged(0, 15)], runs);
    return searchEndOf(survey, searched(survey, branin).rows.toReversed());
  };
  expect([40, 100, 600].map(endAfter)).toEqual(['exploring', 'polishing', 'exploring on']);
  const single = worstSurvey(ranges(1, 0, 1), 1500);
  const parabola = searched(single, ([x]) => (x! - 0.3) ** 2).rows;
  expect(parabola.length).toBeLessThan(1500);
  expect(searchEndOf(single, parabola)).toBe('rest');
  const survey = worstSurvey([ranged(-5, 10), ranged(0, 15)], 100);
  const { rows } = searched(survey, branin);
  expect(searchEndOf(survey, rows.slice(0, 64))).toBeNull();
  expect(searchEndOf(survey, rows.with(3, { ...rows[3]!, values: [0, 0] }))).toBeNull();
});

it('what is sought grows towards an edge only where rows near the edge say so', () => {
  const survey = worstSurvey([...ranges(2, 0, 1), ranged(0, 360, 'deg')], 10);
  const rowsOf = (metric: (x: readonly number[]) => number) =>
    [
      [0, 1, 0],
      [0.01, 1, 0],
      [0.02, 1, 0],
      [0, 0.99, 0],
      [0, 1, 3],
      [0, 0, 0],
    ].map((x, run) => rowOf(run, x, metric));
  const edges = (metric: (x: readonly number[]) => number) => extremeOf(survey, rowsOf(metric))!.risingEdges;
  expect(edges(([x, y, z]) => x! - y! + z!)).toEqual([0, 1]);
  expect(edges(([, y]) => -y!)).toEqual([1]);
  // A cliff far from the edge says nothing about it.
  expect(edges(([x, y]) => x! + (y! < 0.5 ? 1 : 0))).toEqual([0]);
  // It falls again.
  expect(edges(([x]) => -1 + (x === 0.01 ? 0.5 : 10 * x!))).toEqual([]);
});
