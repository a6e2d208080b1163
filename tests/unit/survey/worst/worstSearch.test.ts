import { describe, expect, it } from 'vitest';
import { extremeOf } from '../../../../src/survey/worst/extremeOf.ts';
import { worstSearch } from '../../../../src/survey/worst/worstSearch.ts';
import { branin, rastrigin } from './functions.ts';
import { ranged, ranges, rowOf, searched, worstSurvey } from './planted.ts';

const FIELDS = [ranged(-5, 10), ranged(0, 15)];

describe('the same rows give the same batches', () => {
  const survey = worstSurvey(FIELDS, 500);
  const { rows, sizes } = searched(survey, branin);
  const ends = sizes.map((_, i) => sizes.slice(0, i).reduce((a, b) => a + b, 0));

  it('from a search that is told them all at once', () => {
    for (const [i, end] of ends.entries()) {
      const batch = worstSearch(survey).next(rows.slice(0, end));
      expect(batch).toEqual(rows.slice(end, end + sizes[i]!).map(({ values }) => values));
    }
    expect(worstSearch(survey).next(rows)).toBeNull();
  });

  it('from a search that was asked before, about more, fewer or other rows', () => {
    const search = worstSearch(survey);
    const other = rows.map((row) => rowOf(row.run, row.values, rastrigin));
    expect(search.next(rows)).toBeNull();
    for (const end of [ends[3]!, ends[3]!, ends[6]!, ends[2]!]) {
      const expected = worstSearch(survey).next(rows.slice(0, end));
      expect(search.next(rows.slice(0, end))).toEqual(expected);
    }
    const first = other.slice(0, 128);
    expect(search.next(first)).toEqual(worstSearch(survey).next(first));
    expect(search.next(first)).not.toEqual(worstSearch(survey).next(rows.slice(0, 128)));
  });

  it('and another seed gives others', () => {
    expect(worstSearch(worstSurvey(FIELDS, 500, 2)).next([])).not.toEqual(worstSearch(survey).next([]));
  });
});

it.each([1, 2, 40, 64, 65, 100, 777])('of at most %i runs all are made, no point twice', (runs) => {
  const { rows, sizes } = searched(worstSurvey(ranges(3, -5, 5), runs), rastrigin);
  expect(rows).toHaveLength(runs);
  // The polish learns from each of its small batches; what comes before it fills the workers.
  expect(sizes.every((size) => size > 0 && size <= 64)).toBe(true);
  expect(sizes[0]).toBe(Math.min(64, runs));
  expect(new Set(rows.map(({ values }) => values.join())).size).toBe(runs);
  expect(rows.every(({ values }) => values.every((value) => value >= -5 && value <= 5))).toBe(true);
});

it('a search that closes in on a corner makes no run twice', () => {
  const { rows } = searched(worstSurvey(ranges(2, 0, 1), 400), ([x, y]) => x! + y!);
  expect(new Set(rows.map(({ values }) => values.join())).size).toBe(rows.length);
});

it('a metric that is the same everywhere ends the search early, with the first run', () => {
  const survey = worstSurvey(FIELDS, 2000);
  const { rows } = searched(survey, () => 3);
  // 9 batches explore, then 24 local searches of four at once come to rest in their first batch.
  expect(rows).toHaveLength(64 * (9 + 6));
  expect(extremeOf(survey, rows)).toMatchObject({ value: 3, row: { run: 0 }, history: [{ run: 0 }] });
});

it('where every run is refused the search uses its runs and finds nothing', () => {
  const survey = worstSurvey(FIELDS, 400);
  const { rows } = searched(survey, () => null);
  expect(rows).toHaveLength(400);
  expect(extremeOf(survey, rows)).toBeNull();
});

describe('what the search cannot go on from is refused', () => {
  const survey = worstSurvey(FIELDS, 300);
  const batch = worstSearch(survey).next([])!;
  const rows = batch.map((values, run) => rowOf(run, values, branin));

  it('rows with values that it did not ask for', () => {
    const wrong = rows.with(5, { ...rows[5]!, values: [1, 2] });
    expect(() => worstSearch(survey).next(wrong)).toThrow(/row 5: its values are 1, 2, the search asked for/);
  });

  it('a batch that is not complete, and rows after the end', () => {
    expect(() => worstSearch(survey).next(rows.slice(0, 20))).toThrow(
      'row 20 is missing: the batch goes up to row 63',
    );
    const short = worstSurvey(FIELDS, 10);
    const all = searched(short, branin).rows;
    expect(() => worstSearch(short).next([...all, all[0]!])).toThrow(
      'row 10: the search was over after 10 runs',
    );
  });

  it('a survey that seeks nothing, or a field without a range', () => {
    expect(() => worstSearch({ ...survey, task: { kind: 'sweep' } })).toThrow(
      'of kind sweep seeks no extreme',
    );
    expect(() => worstSearch({ ...survey, metrics: ['stopTimeFromTouch'] })).toThrow(
      /plugMinimumTorque is sought/,
    );
    const listed = { ...FIELDS[0]!, spread: { kind: 'values', values: [1, 2] } } as const;
    expect(() => worstSearch({ ...survey, fields: [listed] })).toThrow(/load.inertia: .* not values/);
  });
});

describe('the extreme of rows', () => {
  const survey = worstSurvey(ranges(1, 0, 9), 9);
  const rows = [5, 7, 4, 4, 6, 3, 3].map((value, run) => rowOf(run, [run], () => value));

  it('is the first of equal ones, whatever the order of the rows, with every step on the way to it', () => {
    const history = [
      { run: 0, value: 5 },
      { run: 2, value: 4 },
      { run: 5, value: 3 },
    ];
    expect(extremeOf(survey, rows)).toMatchObject({ row: rows[5], value: 3, history });
    expect(extremeOf(survey, rows.toReversed())).toMatchObject({ row: rows[5], value: 3, history });
  });

  it('passes over rows that are not good, lack the metric or hold no number', () => {
    const worse = rows
      .with(5, { ...rows[5]!, status: 'failed' })
      .with(6, { ...rows[6]!, status: 'unbalanced' });
    expect(extremeOf(survey, worse)!.row.run).toBe(2);
    const lacking = worse
      .with(2, { ...rows[2]!, metrics: [1, null] })
      .with(3, { ...rows[3]!, metrics: [1, Number.NaN] });
    expect(extremeOf(survey, lacking)!.row.run).toBe(0);
  });
});
