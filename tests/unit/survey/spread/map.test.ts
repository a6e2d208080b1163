import { describe, expect, it } from 'vitest';
import { runList } from '../../../../src/survey/draws/runList.ts';
import type { RowVerdict, SurveyRow, VariedField } from '../../../../src/survey/spec/survey.ts';
import { mapOf } from '../../../../src/survey/spread/map.ts';
import { rowOf, syntheticSurvey, uniform } from './syntheticSurvey.ts';

const suitable: RowVerdict = { outcome: 'suitable', decisive: 'stopTime' };
const not: RowVerdict = { outcome: 'notSuitable', decisive: 'rotorHeat' };
const open: RowVerdict = { outcome: 'notJudged', decisive: '' };

const fields: VariedField[] = [
  { path: 'load.inertia', unit: 'kg m^2', spread: { kind: 'values', values: [1, 4, 2, 3] } },
  {
    path: 'supply.angle',
    unit: 'deg',
    spread: { kind: 'grid', from: 0, to: 90, count: 3, spacing: 'linear' },
  },
];
const limits = syntheticSurvey({ kind: 'limitMap' }, fields, ['plugPeakCurrent', 'stopTimeFromTouch']);

/** Verdicts by the second field's index, then by the first field's value. */
const VERDICTS: Record<number, RowVerdict | null>[] = [
  { 1: suitable, 2: suitable, 3: not, 4: not },
  { 1: not, 2: suitable, 3: null, 4: open },
  { 1: not, 2: not, 3: not, 4: not },
];

const rows: SurveyRow[] = Array.from({ length: 12 }, (_, run) => {
  const values = runList(limits).valuesOf(run);
  const [inertia, angle] = values as [number, number];
  const verdict = VERDICTS[angle / 45]![inertia] ?? null;
  return { ...rowOf(run, 0), values, metrics: [100 * inertia + angle, run === 5 ? null : run], verdict };
});

describe('the map of two fields', () => {
  it('has the lists of the fields and the metric of each cell', () => {
    const map = mapOf(limits, () => rows)!;
    expect(map.first).toEqual({ field: 'load.inertia', unit: 'kg m^2', values: [1, 4, 2, 3] });
    expect(map.second).toEqual({ field: 'supply.angle', unit: 'deg', values: [0, 45, 90] });
    expect(map.tables[0]).toEqual({
      metric: 'plugPeakCurrent',
      cells: [
        [100, 145, 190],
        [400, 445, 490],
        [200, 245, 290],
        [300, 345, 390],
      ],
    });
    expect(map.tables[1]!.cells[1]).toEqual([3, 4, null]);
    expect(map.verdicts![2]).toEqual([suitable, suitable, not]);
  });

  it('has nothing in cells whose row is missing or bad, and rows may come in any order', () => {
    const some = rows
      .filter(({ run }) => run !== 4)
      .map((row): SurveyRow => (row.run === 7 ? { ...row, status: 'failed', reason: 'x' } : row))
      .reverse();
    const map = mapOf(limits, () => [...some, { ...rowOf(12, 1), metrics: [1, 1] }])!;
    expect(map.tables[0]!.cells).toEqual([
      [100, 145, 190],
      [400, null, 490],
      [200, null, 290],
      [300, 345, 390],
    ]);
    expect(map.verdicts![1]![1]).toBeNull();
  });

  it('tells along the first field how far it may go and where every verdict changes', () => {
    const [low, middle, high] = mapOf(limits, () => rows)!.lines!;
    expect(low).toEqual({
      at: 0,
      smallestSuitable: 1,
      largestSuitable: 2,
      changes: [{ from: 2, to: 3, before: suitable, after: not }],
      missing: 0,
    });
    // A range open on both sides: too small fails, too large is not judged, and between them a cell is
    // missing.
    expect(middle).toEqual({
      at: 45,
      smallestSuitable: 2,
      largestSuitable: 2,
      changes: [
        { from: 1, to: 2, before: not, after: suitable },
        { from: 2, to: 4, before: suitable, after: open },
      ],
      missing: 1,
    });
    expect(high).toEqual({ at: 90, smallestSuitable: null, largestSuitable: null, changes: [], missing: 0 });
  });

  it('has verdicts only where they are taken down', () => {
    const sweep = syntheticSurvey({ kind: 'sweep' }, fields, limits.metrics);
    expect(mapOf(sweep, () => rows)).toMatchObject({ verdicts: null, lines: null });
    expect(mapOf({ ...sweep, verdict: true }, () => rows)!.lines).toHaveLength(3);
  });

  it('is none for other surveys', () => {
    expect(mapOf(syntheticSurvey({ kind: 'sweep' }, fields.slice(1)), () => rows)).toBeNull();
    const random = syntheticSurvey({ kind: 'random', runs: 3, sequence: 'quasi' }, fields);
    expect(mapOf(random, () => rows)).toBeNull();
    const drawn = [uniform('load.inertia', 0, 1), fields[1]!];
    expect(mapOf(syntheticSurvey({ kind: 'sweep' }, drawn), () => rows)).toBeNull();
  });
});
