import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { quantileOf } from '../../../../src/survey/draws/quantileOf.ts';
import { runList } from '../../../../src/survey/draws/runList.ts';
import {
  type SensitivityLayout,
  type SensitivityRole,
  sensitivityLayout,
} from '../../../../src/survey/draws/sensitivityLayout.ts';
import type { Spread, Survey, SurveyTask } from '../../../../src/survey/spec/survey.ts';

const SWEEP: SurveyTask = { kind: 'sweep' };

function surveyOf(spreads: readonly Spread[], task: SurveyTask, seed = 1): Survey {
  return {
    title: 'Plugs at the mill',
    description: '',
    base: { fileName: 'mill.yaml', text: '' },
    fields: spreads.map((spread, i) => ({ path: `field.${i}`, unit: '', spread })),
    metrics: ['plugMinimumTorque'],
    verdict: false,
    seed,
    task,
  };
}
const values = (...list: number[]): Spread => ({ kind: 'values', values: list });
const grid = (count: number): Spread => ({ kind: 'grid', from: 0, to: 1, count, spacing: 'linear' });
const all = (survey: Survey): number[][] => {
  const { count, valuesOf } = runList(survey);
  return Array.from({ length: count }, (_, run) => valuesOf(run));
};

/** Number of the run with this role. */
function numberOf(layout: SensitivityLayout, role: SensitivityRole): number {
  switch (role.kind) {
    case 'median':
      return layout.median;
    case 'low':
    case 'high':
      return layout[role.kind](role.field);
    case 'a':
    case 'b':
      return layout[role.kind](role.sample);
    case 'exchanged':
      return layout.exchanged(role.sample, role.field);
  }
}

const DRAWN: readonly Spread[] = [
  { kind: 'uniform', from: 0, to: 360 },
  { kind: 'normal', mean: 1, deviation: 0.1, from: 0.7, to: 1.3 },
  { kind: 'triangular', from: 0.8, peak: 1, to: 1.2 },
  { kind: 'logUniform', from: 0.2, to: 2 },
];

describe('a sweep', () => {
  it('goes through every combination, the last field fastest', () => {
    expect(all(surveyOf([values(1, 2), values(30, 10, 20)], SWEEP))).toEqual([
      [1, 30],
      [1, 10],
      [1, 20],
      [2, 30],
      [2, 10],
      [2, 20],
    ]);
  });

  it('has every combination exactly once', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 2, max: 6 }), { minLength: 1, maxLength: 4 }), (counts) => {
        const runs = all(surveyOf(counts.map(grid), SWEEP));
        expect(runs).toHaveLength(counts.reduce((product, count) => product * count, 1));
        expect(new Set(runs.map((run) => run.join(' '))).size).toBe(runs.length);
      }),
      { seed: 1, numRuns: 20 },
    );
  });

  it('of two fields is what a limit map runs', () => {
    const fields = [grid(3), grid(4)];
    expect(all(surveyOf(fields, { kind: 'limitMap' }))).toEqual(all(surveyOf(fields, SWEEP)));
  });

  it('is counted and computed exactly up to 2^53 runs, without being made', () => {
    const list = runList(surveyOf([grid(2 ** 20), grid(2 ** 20), grid(2 ** 13)], SWEEP));
    expect(list.count).toBe(2 ** 53);
    expect(list.valuesOf(2 ** 53 - 1)).toEqual([1, 1, 1]);
    expect(list.valuesOf(2 ** 53 - 2)).toEqual([1, 1, Number((8190 / 8191).toPrecision(14))]);
    expect(list.valuesOf(2 ** 33)).toEqual([Number((1 / (2 ** 20 - 1)).toPrecision(14)), 0, 0]);
  });

  it('of more is refused, also where a number cannot tell', () => {
    // 2^53 + 1 = 3 · 107 · 28059810762433, which rounds to 2^53.
    expect(2 ** 53 + 1).toBe(2 ** 53);
    const most = surveyOf([grid(28_059_810_762_433), grid(107), grid(3)], SWEEP);
    expect(() => runList(most)).toThrow(/more than 9007199254740992 combinations/u);
    expect(runList(surveyOf([grid(28_059_810_762_433), grid(107), grid(2)], SWEEP)).count).toBe(
      6_004_799_503_160_662,
    );
  });

  it('refuses a field that has no list', () => {
    expect(() => runList(surveyOf([grid(2), DRAWN[0]!], SWEEP))).toThrow(
      new TypeError('field.1: every combination needs a list or a grid, not a uniform distribution'),
    );
  });
});

describe.each(['quasi', 'pseudo'] as const)('%s-random runs', (sequence) => {
  const task: SurveyTask = { kind: 'random', runs: 400, sequence };

  it('have the same values whoever asks in whatever order', () => {
    const survey = surveyOf(DRAWN, task);
    const whole = all(survey);
    fc.assert(
      fc.property(fc.array(fc.nat({ max: 399 }), { minLength: 1, maxLength: 30 }), (order) => {
        const { valuesOf } = runList(survey);
        expect(order.map(valuesOf)).toEqual(order.map((run) => whole[run]));
      }),
      { seed: 1, numRuns: 30 },
    );
  });

  it('of shards are together the runs of the whole', () => {
    const survey = surveyOf(DRAWN, task);
    const shards = [0, 1, 2].map((shard) => {
      const { count, valuesOf } = runList(survey);
      return Array.from({ length: count }, (_, run) => run)
        .filter((run) => run % 3 === shard)
        .map((run) => [run, valuesOf(run)] as const);
    });
    const joined = shards.flat().sort(([a], [b]) => a - b);
    expect(joined.map(([, drawn]) => drawn)).toEqual(all(survey));
  });

  it('lie in the ranges of their fields and fill their quarters evenly', () => {
    const runs = all(surveyOf(DRAWN, task));
    expect(runs).toHaveLength(400);
    for (const [field, spread] of DRAWN.entries()) {
      const quarters = [0.25, 0.5, 0.75].map((u) => quantileOf(spread, u));
      const shares = [0, 0, 0, 0];
      for (const run of runs) {
        const value = run[field]!;
        if (spread.kind !== 'values') expect(value >= spread.from && value <= spread.to).toBe(true);
        const quarter = quarters.filter((bound) => value >= bound).length;
        shares[quarter] = shares[quarter]! + 1;
      }
      // 100 each; of pseudo-random ones 4 deviations are 35, of 400 = 256 + 128 + 16 points of the sequence
      // none.
      for (const share of shares)
        expect(Math.abs(share - 100)).toBeLessThanOrEqual(sequence === 'quasi' ? 0 : 35);
    }
  });

  it('do not move together from field to field', () => {
    const runs = all(surveyOf([DRAWN[0]!, DRAWN[0]!], task));
    // Fields of the same spread: 1/16 of 400 runs in each square, 25; 4 deviations are 20.
    for (let square = 0; square < 16; square++) {
      const inside = runs.filter(([x, y]) => Math.floor(x! / 90) * 4 + Math.floor(y! / 90) === square);
      expect(Math.abs(inside.length - 25)).toBeLessThanOrEqual(20);
    }
  });

  it('are others for another seed', () => {
    const [one, two] = [all(surveyOf(DRAWN, task, 1)), all(surveyOf(DRAWN, task, 2))];
    expect(one.filter((run, i) => run.some((value, field) => value === two[i]![field]))).toEqual([]);
  });
});

describe('the runs of a sensitivity survey', () => {
  it.each(['quasi', 'pseudo'] as const)('begin with the tornado, %s', (sequence) => {
    const runs = all(surveyOf(DRAWN, { kind: 'sensitivity', samples: 2, sequence }));
    expect(runs).toHaveLength(1 + 2 * 4 + 2 * (4 + 2));
    const at = (moved: number, u: number) =>
      DRAWN.map((spread, field) => quantileOf(spread, field === moved ? u : 0.5));
    expect(runs.slice(0, 9)).toEqual([
      at(-1, 0.5),
      at(0, 0.1),
      at(0, 0.9),
      at(1, 0.1),
      at(1, 0.9),
      at(2, 0.1),
      at(2, 0.9),
      at(3, 0.1),
      at(3, 0.9),
    ]);
  });

  it.each(['quasi', 'pseudo'] as const)('go on with A, B and A with each field of B, %s', (sequence) => {
    const runs = all(surveyOf(DRAWN, { kind: 'sensitivity', samples: 16, sequence }));
    const layout = sensitivityLayout(4, 16);
    for (let sample = 0; sample < 16; sample++) {
      const [a, b] = [runs[9 + 6 * sample]!, runs[10 + 6 * sample]!];
      expect(a).toBe(runs[layout.a(sample)]);
      expect(b).toBe(runs[layout.b(sample)]);
      expect(a.some((value, field) => value === b[field])).toBe(false);
      for (let field = 0; field < 4; field++) {
        expect(runs[11 + 6 * sample + field]).toEqual(a.with(field, b[field]!));
        expect(layout.exchanged(sample, field)).toBe(11 + 6 * sample + field);
      }
    }
  });

  it('draw A and B from separate coordinates of one sequence, each evenly spread', () => {
    const spread: Spread = { kind: 'uniform', from: 0, to: 32 };
    const runs = all(surveyOf([spread, spread], { kind: 'sensitivity', samples: 32, sequence: 'quasi' }));
    const layout = sensitivityLayout(2, 32);
    for (const runOf of [layout.a, layout.b])
      for (const field of [0, 1]) {
        const strata = Array.from({ length: 32 }, (_, sample) => Math.floor(runs[runOf(sample)]![field]!));
        expect(new Set(strata).size).toBe(32);
      }
  });

  it('are others for another seed, but for the tornado', () => {
    const task: SurveyTask = { kind: 'sensitivity', samples: 4, sequence: 'quasi' };
    const [one, two] = [all(surveyOf(DRAWN, task, 1)), all(surveyOf(DRAWN, task, 2))];
    expect(one.slice(0, 9)).toEqual(two.slice(0, 9));
    for (let run = 9; run < one.length; run++) expect(one[run]).not.toEqual(two[run]);
  });

  it('are numbered there and back', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 0, max: 20 }), (fields, samples) => {
        const layout = sensitivityLayout(fields, samples);
        const wrong = Array.from({ length: layout.count }, (_, run) => run).filter(
          (run) => numberOf(layout, layout.roleOf(run)) !== run,
        );
        expect(wrong).toEqual([]);
      }),
      { seed: 1, numRuns: 30 },
    );
  });
});

describe('a list of runs', () => {
  it('is refused for a worst case, which is a search', () => {
    const task: SurveyTask = { kind: 'worst', metric: 'plugMinimumTorque', seek: 'smallest', runs: 100 };
    expect(() => runList(surveyOf(DRAWN, task))).toThrow(TypeError);
  });

  it('has no runs but those it counts', () => {
    const { valuesOf } = runList(surveyOf([grid(3)], SWEEP));
    for (const run of [-1, 3, 0.5, Number.NaN])
      expect(() => valuesOf(run)).toThrow(/this survey has runs 0 to 2/u);
  });

  it('is refused where the sequence has not so many coordinates or points', () => {
    const fields = Array.from({ length: 65 }, () => DRAWN[0]!);
    expect(() => runList(surveyOf(fields, { kind: 'sensitivity', samples: 4, sequence: 'quasi' }))).toThrow(
      /130 numbers: up to 128/u,
    );
    expect(runList(surveyOf(fields, { kind: 'sensitivity', samples: 4, sequence: 'pseudo' })).count).toBe(
      131 + 4 * 67,
    );
    const random = (sequence: 'quasi' | 'pseudo'): SurveyTask => ({
      kind: 'random',
      runs: 2 ** 32 + 1,
      sequence,
    });
    expect(() => runList(surveyOf(DRAWN, random('quasi')))).toThrow(/4294967297 quasi-random draws/u);
    expect(runList(surveyOf(DRAWN, random('pseudo'))).count).toBe(2 ** 32 + 1);
  });

  it('is refused beyond 2^53 runs', () => {
    const task: SurveyTask = { kind: 'sensitivity', samples: 2 ** 52, sequence: 'pseudo' };
    expect(() => runList(surveyOf(DRAWN, task))).toThrow(/up to 9007199254740992 would be right/u);
  });

  it('is refused where a field has nothing to draw from', () => {
    const nothing: Spread = { kind: 'normal', mean: 0, deviation: 1, from: 50, to: 60 };
    expect(() => runList(surveyOf([nothing], { kind: 'random', runs: 10, sequence: 'quasi' }))).toThrow(
      /field.0: .*nothing is left to draw from/u,
    );
  });
});
