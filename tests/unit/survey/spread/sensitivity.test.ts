import { describe, expect, it } from 'vitest';
import type { Survey, SurveyRow } from '../../../../src/survey/spec/survey.ts';
import { sensitivityOf } from '../../../../src/survey/spread/sensitivity.ts';
import { expectAllWithin, expectWithin } from '../../../support/tolerance.ts';
import { computedRows, rowOf, syntheticSurvey, uniform } from './syntheticSurvey.ts';

const asking = (
  samples: number,
  fields: Survey['fields'],
  sequence: 'quasi' | 'pseudo' = 'quasi',
  more: Partial<Survey> = {},
) => syntheticSurvey({ kind: 'sensitivity', samples, sequence }, fields, ['plugPeakCurrent'], more);

const resultOf = (survey: Survey, rows: readonly SurveyRow[]) =>
  sensitivityOf(survey, () => rows)!.metrics[0]!;
const firstOf = ({ fields }: ReturnType<typeof resultOf>) => fields.map(({ first }) => first!.value);
const totalOf = ({ fields }: ReturnType<typeof resultOf>) => fields.map(({ total }) => total!.value);
const PI4 = Math.PI ** 4;

/** Ishigami and Homma (1990): sin x1 + a·sin² x2 + b·x3⁴·sin x1, each from −π to π. */
const ishigami = {
  fields: ['supply.angle', 'load.inertia', 'starter.closingTime'].map((path) =>
    uniform(path, -Math.PI, Math.PI),
  ),
  f: ([x, y, z]: readonly number[]) => Math.sin(x!) + 7 * Math.sin(y!) ** 2 + 0.1 * z! ** 4 * Math.sin(x!),
  // Saltelli, Chan and Scott, Sensitivity Analysis (2000), from memory: parts of the variance in closed form.
  exact: () => {
    const [a, b] = [7, 0.1];
    const first = [(1 + (b * PI4) / 5) ** 2 / 2, a ** 2 / 8, 0];
    const joint = (8 * b ** 2 * PI4 ** 2) / 225;
    const variance = a ** 2 / 8 + (b * PI4) / 5 + (b ** 2 * PI4 ** 2) / 18 + 0.5;
    return {
      variance,
      first: first.map((part) => part / variance),
      total: [(first[0]! + joint) / variance, first[1]! / variance, joint / variance],
    };
  },
};

/** Sobol's function: product of (|4x − 2| + a)/(1 + a), each x from 0 to 1. */
const A = [0, 1, 4.5, 9, 99];
const sobol = {
  fields: A.map((_, i) => uniform(`load.torque.${i}.torque`, 0, 1)),
  f: (x: readonly number[]) =>
    A.reduce((product, a, i) => (product * (Math.abs(4 * x[i]! - 2) + a)) / (1 + a), 1),
  // Saltelli and Sobol (1995): V_i = 1/(3(1 + a_i)²), V = product of (1 + V_i), minus 1; from memory.
  exact: () => {
    const parts = A.map((a) => 1 / (3 * (1 + a) ** 2));
    const product = parts.reduce((all, part) => all * (1 + part), 1);
    const variance = product - 1;
    return {
      variance,
      first: parts.map((part) => part / variance),
      total: parts.map((part) => (part * product) / (1 + part) / variance),
    };
  },
};

describe('the exact values of the tests', () => {
  it('are as printed', () => {
    // Ishigami function with a = 7, b = 0.1: 0.3138, 0.4424, 0 and 0.558, 0.442, 0.244, as public libraries
    // of test functions print them.
    const { first, total } = ishigami.exact();
    expectAllWithin(first, [0.3138, 0.4424, 0], { absolute: 2e-4 }, 'first');
    expectAllWithin(total, [0.558, 0.442, 0.244], { absolute: 6e-4 }, 'total');
  });
});

describe.each([
  ['the Ishigami function', ishigami],
  ['the g-function of Sobol', sobol],
])('the indices of %s', (_name, { fields, f, exact }) => {
  const { variance, first, total } = exact();

  it('come near the exact ones with quasi-random draws', () => {
    const survey = asking(1024, fields);
    const found = resultOf(survey, computedRows(survey, f));
    expect(found).toMatchObject({ used: 1024, leftOut: 0, reason: null });
    expectWithin(found.variance, variance, { relative: 0.02 }, 'variance');
    expectAllWithin(firstOf(found), first, { absolute: 0.025 }, 'first');
    expectAllWithin(totalOf(found), total, { absolute: 0.025 }, 'total');
  });

  it('have intervals that hold the exact ones in about 95 of 100 surveys with pseudo-random draws', () => {
    let missed = 0;
    const surveys = 6;
    let width = 0;
    for (let seed = 1; seed <= surveys; seed++) {
      const survey = asking(120, fields, 'pseudo', { seed });
      const found = resultOf(survey, computedRows(survey, f));
      for (const [i, field] of found.fields.entries()) {
        for (const [index, truth] of [
          [field.first!, first[i]!],
          [field.total!, total[i]!],
        ] as const) {
          expect(index.low).toBeLessThanOrEqual(index.value);
          expect(index.high).toBeGreaterThanOrEqual(index.value);
          // An index that is exactly 0 has no spread to be bounded.
          if (truth < index.low - 1e-12 || truth > index.high + 1e-12) missed++;
          width += index.high - index.low;
        }
      }
    }
    const all = 2 * fields.length * surveys;
    // Percentile intervals of skewed estimates of 120 samples hold a little less than they say.
    expect(missed / all).toBeLessThan(0.15);
    expect(width / all).toBeLessThan(0.5);
  });
});

describe('the indices of any metric', () => {
  const { fields, f } = ishigami;
  const survey = asking(64, fields);
  const rows = computedRows(survey, f);
  const whole = resultOf(survey, rows);

  it('do not change with a constant added or a factor, however large the mean becomes', () => {
    const far = rows.map((row) => ({ ...row, metrics: [1e6 + 3 * row.metrics[0]!] }));
    const found = resultOf(survey, far);
    expectAllWithin(firstOf(found), firstOf(whole), { absolute: 1e-7 }, 'first');
    expectAllWithin(totalOf(found), totalOf(whole), { absolute: 1e-7 }, 'total');
    expectWithin(found.mean, 1e6 + 3 * whole.mean!, { relative: 1e-12 }, 'mean');
  });

  it('leave out every block with a run that is bad, missing or without a value, and say how many', () => {
    // Blocks of five runs begin at run 7; bad runs in blocks 0, 2, 2 and 10, and block 63 is missing.
    const bad = new Set([7, 7 + 10, 7 + 12]);
    const broken = rows
      .map((row): SurveyRow => (bad.has(row.run) ? { ...row, status: 'unbalanced', reason: 'x' } : row))
      .map((row) => (row.run === 7 + 54 ? { ...row, metrics: [null] } : row))
      .filter(({ run }) => run < 7 + 63 * 5);
    const found = resultOf(survey, broken);
    expect(found).toMatchObject({ used: 60, leftOut: 4 });
    const others = rows.filter(({ run }) => ![0, 2, 10, 63].includes(Math.floor((run - 7) / 5)));
    expect(found).toEqual(resultOf(survey, others));
    expect(firstOf(found)).not.toEqual(firstOf(whole));
    // The runs of the tornado are none of these.
    const tornadoBad = rows.map((row) => (row.run < 7 ? { ...row, metrics: [null] } : row));
    expect(resultOf(survey, tornadoBad)).toEqual(whole);
  });

  it('are the same for the same rows in another order, and their intervals follow the seed', () => {
    expect(resultOf(survey, rows.toReversed())).toEqual(whole);
    const other = resultOf({ ...survey, seed: 2 }, rows);
    expect(firstOf(other)).toEqual(firstOf(whole));
    expect(other.fields[0]!.first!.low).not.toBe(whole.fields[0]!.first!.low);
  });

  it('add up to the whole where fields act each by itself, which the note says', () => {
    const sums = asking(512, fields);
    const found = resultOf(
      sums,
      computedRows(sums, ([x, y, z]) => 3 * x! + 2 * y! + z!),
    );
    // Variances go with the squares of the factors: 9 : 4 : 1.
    expectAllWithin(firstOf(found), [9 / 14, 4 / 14, 1 / 14], { absolute: 0.01 }, 'first');
    expectAllWithin(totalOf(found), [9 / 14, 4 / 14, 1 / 14], { absolute: 0.01 }, 'total');
    expectWithin(found.sumOfFirst!.value, 1, { absolute: 0.02 }, 'sum');
    expect(found.sumOfFirst!.low).toBeLessThan(1);
    expect(found.sumOfFirst!.high).toBeGreaterThan(1);
    expect(found.note).toMatch(/nearly each by itself/u);
    expect(resultOf(asking(128, fields), computedRows(asking(128, fields), f)).note).toMatch(
      /add up to [78]\d %; the rest .* acting together/u,
    );
  });

  it('are none for a constant, and for too few blocks, each with a reason', () => {
    const constant = resultOf(
      survey,
      computedRows(survey, () => 0.1),
    );
    expect(constant).toMatchObject({
      reason: 'the value is the same in all draws',
      sumOfFirst: null,
      note: '',
    });
    expect(constant.fields[0]).toEqual({ field: 'supply.angle', first: null, total: null });
    const rounded = resultOf(
      survey,
      computedRows(survey, ([x]) => 1e3 + 1e-13 * x!),
    );
    expect(rounded.reason).toBe('the value is the same in all draws');
    const few = resultOf(
      survey,
      rows.filter(({ run }) => run < 7 + 7 * 5),
    );
    expect(few).toMatchObject({
      used: 7,
      leftOut: 57,
      reason: '7 blocks of runs have a value throughout; 8 are needed',
    });
    const none = resultOf(survey, [rowOf(0, 1)]);
    expect(none).toMatchObject({ used: 0, mean: null, variance: null });
    expect(none.reason).toMatch(/^0 blocks/u);
  });

  it('are for sensitivity surveys alone, and say where their intervals are wide', () => {
    expect(sensitivityOf(syntheticSurvey({ kind: 'sweep' }), () => rows)).toBeNull();
    expect(sensitivityOf(survey, () => rows)!.note).toMatch(/wide side/u);
    expect(sensitivityOf(asking(64, fields, 'pseudo'), () => rows)!.note).not.toMatch(/wide side/u);
  });
});
