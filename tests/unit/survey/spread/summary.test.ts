import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { randomStream } from '../../../../src/survey/draws/randomStream.ts';
import type { SurveyRow, SurveyTask } from '../../../../src/survey/spec/survey.ts';
import { summaryOf } from '../../../../src/survey/spread/summary.ts';
import { expectWithin } from '../../../support/tolerance.ts';
import { rowOf, syntheticSurvey } from './syntheticSurvey.ts';

const RANDOM: SurveyTask = { kind: 'random', runs: 1000, sequence: 'pseudo' };
const survey = syntheticSurvey(RANDOM);
const summaryOfValues = (values: readonly (number | null)[]) =>
  summaryOf(survey, () => values.map((value, run) => rowOf(run, value))).metrics[0]!;

describe('the summary of a metric', () => {
  // Statistical Reference Datasets of the National Institute of Standards and Technology, univariate, NumAcc3
  // and NumAcc4: certified mean
  // 1000000.2 and 10000000.2, deviation 0.1 exactly; from memory. The data themselves are rounded to 1e-9 of
  // their size.
  it.each([
    [1e6, 1e-8],
    [1e7, 1e-7],
  ])(
    'has mean and deviation as certified for numbers that differ only far behind the point: %d',
    (size, relative) => {
      const values = Array.from({ length: 1001 }, (_, i) => size + (i === 0 ? 0.2 : i % 2 === 1 ? 0.1 : 0.3));
      const { mean, deviation, count } = summaryOfValues(values);
      expect(count).toBe(1001);
      expectWithin(mean, size + 0.2, { relative: 1e-15 }, 'mean');
      expectWithin(deviation, 0.1, { relative }, 'deviation');
    },
  );

  it('has the extremes with the first run that has them', () => {
    const { smallest, largest, missing, count } = summaryOfValues([3, null, -2, 9, -2, 9]);
    expect({ smallest, largest, missing, count }).toEqual({
      smallest: { run: 2, value: -2 },
      largest: { run: 3, value: 9 },
      missing: 1,
      count: 5,
    });
  });

  it('has no deviation for one value, and nothing for none', () => {
    expect(summaryOfValues([4])).toMatchObject({ count: 1, mean: 4, deviation: null, missing: 0 });
    expect(summaryOfValues([null])).toMatchObject({
      count: 0,
      missing: 1,
      mean: null,
      smallest: null,
      quantiles: [],
      histogram: null,
    });
  });

  it('has the quantiles and bounds that sorting gives, and counts every value once', () => {
    const value = fc.oneof(fc.double({ min: -1e6, max: 1e6, noNaN: true }), fc.integer({ min: 0, max: 4 }));
    fc.assert(
      fc.property(fc.array(value, { minLength: 1, maxLength: 2500, size: 'max' }), (values) => {
        const sorted = values.toSorted((a, b) => a - b);
        const { quantiles, histogram } = summaryOfValues(values);
        expect(quantiles.map(({ percent }) => percent)).toEqual([1, 5, 25, 50, 75, 90, 95, 99]);
        for (const { percent, value, low, high } of quantiles) {
          const place = (values.length * percent) / 100;
          const upper = sorted[Math.floor(place)]!;
          const expected = Number.isInteger(place)
            ? (sorted[place - 1]! + upper) / 2
            : sorted[Math.ceil(place) - 1]!;
          expect(value + 0).toBe(expected + 0);
          if (low !== null) expect(low).toBeLessThanOrEqual(value);
          if (high !== null) expect(high).toBeGreaterThanOrEqual(value);
        }
        expect(histogram!.counts.reduce((sum, n) => sum + n, 0)).toBe(values.length);
        for (const [bin, n] of histogram!.counts.entries()) {
          const [from, to] = [histogram!.edges[bin]!, histogram!.edges[bin + 1]!];
          const last = bin === histogram!.counts.length - 1;
          expect(values.filter((x) => x >= from && (x < to || (last && x === to))).length).toBe(n);
        }
      }),
      { seed: 2, numRuns: 8 },
    );
  });

  it('bounds the median of twelve values by the third and the tenth', () => {
    // Table A.7 as in quantileRanks.test.ts.
    const values = [5, 11, 2, 8, 1, 9, 12, 3, 10, 7, 4, 6];
    const median = summaryOfValues(values).quantiles.find(({ percent }) => percent === 50);
    expect(median).toEqual({ percent: 50, value: 6.5, low: 3, high: 10 });
    expect(summaryOfValues([1, 2, 3]).quantiles[3]).toMatchObject({ value: 2, low: null, high: null });
  });

  it('bounds quantiles of known distributions in 95 of 100 samples', () => {
    let hits = 0;
    let low = 0;
    const samples = 100;
    for (let sample = 0; sample < samples; sample++) {
      const next = randomStream(9, sample);
      const found = summaryOfValues(Array.from({ length: 120 }, next)).quantiles.find(
        ({ percent }) => percent === 90,
      )!;
      if (found.low! <= 0.9 && (found.high ?? 1) >= 0.9) hits++;
      if (found.low! > 0.9) low++;
    }
    // At least 95 %, each bound missed by 2.5 % at most; four standard deviations of the count, 2.2 and 1.6.
    expect(hits).toBeGreaterThan(0.95 * samples - 9);
    expect(hits).toBeLessThan(samples);
    expect(low).toBeLessThan(0.025 * samples + 6.3);
  });
});

describe('the summary of a survey', () => {
  const verdict = (outcome: 'suitable' | 'notSuitable' | 'notJudged', decisive: string) => ({
    outcome,
    decisive,
  });

  it('counts rows by status and leaves the figures of bad ones out', () => {
    const rows: SurveyRow[] = [
      rowOf(0, 1),
      rowOf(1, 100, { status: 'unbalanced', reason: 'the energy balance is off by 3 %' }),
      rowOf(2, null, { status: 'failed', reason: 'overspeed at 0.31 s' }),
      rowOf(3, null, { status: 'refused', reason: 'negative' }),
      rowOf(4, 3),
      rowOf(5, null),
    ];
    const { runs, byStatus, metrics, verdicts } = summaryOf(survey, () => rows);
    expect(runs).toBe(6);
    expect(byStatus).toEqual({ good: 3, refused: 1, failed: 1, unbalanced: 1 });
    expect(metrics[0]).toMatchObject({ count: 2, missing: 1, mean: 2 });
    expect(metrics[0]!.largest).toEqual({ run: 4, value: 3 });
    expect(verdicts).toBeNull();
  });

  it('groups reasons that differ in numbers alone and shows the twelve most frequent', () => {
    const word = (k: number) => 'abcdefghijklmnopqrst'[k]!;
    const reasons = [
      ...['overspeed: -1.5e-3 s, 12,5 rad/s', 'overspeed: 7 s, 3 rad/s', 'overspeed: 1.25E+6 s, −8 rad/s'],
      ...Array.from({ length: 30 }, (_, i) => `cause ${word(i % 15)} at run ${i}`),
      'cause a at run 99',
    ];
    const rows = reasons.map((reason, run) => rowOf(run, null, { status: 'failed', reason }));
    const { groups, others } = summaryOf(survey, () => rows).reasons;
    expect(groups).toHaveLength(12);
    expect(groups[0]).toEqual({
      status: 'failed',
      pattern: 'overspeed: # s, # rad/s',
      example: reasons[0],
      firstRun: 0,
      count: 3,
    });
    expect(groups[1]).toMatchObject({ pattern: 'cause a at run #', count: 3, firstRun: 3 });
    expect(groups[2]).toMatchObject({ pattern: 'cause b at run #', count: 2 });
    expect(others).toBe(2 * 4);
  });

  it('keeps a bounded number of groups however many different reasons there are', () => {
    const letters = (run: number) =>
      [...run.toString(26)].map((d) => String.fromCharCode(97 + Number.parseInt(d, 26))).join('');
    const rows = Array.from({ length: 2000 }, (_, run) =>
      rowOf(run, null, { status: 'failed', reason: letters(run) }),
    );
    // A reason that comes after so many others is counted, but no longer told apart.
    for (let run = 2000; run < 2005; run++)
      rows.push(rowOf(run, null, { status: 'failed', reason: 'so late' }));
    const { groups, others } = summaryOf(survey, () => rows).reasons;
    expect(groups).toHaveLength(12);
    expect(others).toBe(2005 - 12);
  });

  it('counts outcomes and decisive criteria', () => {
    const verdicts = [
      verdict('suitable', 'rotorHeat'),
      verdict('notSuitable', 'stopTime rotorHeat'),
      verdict('notSuitable', 'stopTime'),
      verdict('notJudged', ''),
      null,
    ];
    const rows = verdicts.map((one, run) => rowOf(run, 1, { verdict: one }));
    const judged = syntheticSurvey(RANDOM, undefined, undefined, { verdict: true });
    expect(summaryOf(judged, () => rows).verdicts).toEqual({
      suitable: 1,
      notSuitable: 2,
      notJudged: 1,
      none: 1,
      decisive: [
        { criterion: 'stopTime', suitable: 0, notSuitable: 2, notJudged: 0 },
        { criterion: 'rotorHeat', suitable: 1, notSuitable: 1, notJudged: 0 },
      ],
    });
  });

  it('gives intervals for draws alone and says what they assume', () => {
    const rows = () => Array.from({ length: 20 }, (_, run) => rowOf(run, run));
    const of = (task: SurveyTask) => {
      const { note, metrics } = summaryOf(syntheticSurvey(task), rows);
      return { note, low: metrics[0]!.quantiles[3]!.low };
    };
    expect(of(RANDOM)).toEqual({ note: expect.stringMatching(/assume independent draws\.$/u), low: 5 });
    expect(of({ kind: 'random', runs: 20, sequence: 'quasi' })).toEqual({
      note: expect.stringMatching(/quasi-random.*on the wide side\.$/u),
      low: 5,
    });
    expect(of({ kind: 'sweep' })).toEqual({ note: expect.stringMatching(/grid and no draws/u), low: null });
    expect(of({ kind: 'sensitivity', samples: 2, sequence: 'quasi' }).low).toBeNull();
    const worst = of({ kind: 'worst', metric: 'plugPeakCurrent', seek: 'largest', runs: 20 });
    expect(worst).toEqual({ note: expect.stringMatching(/search/u), low: null });
  });

  it('is exact for fifty thousand rows, which are read a few times', () => {
    let readings = 0;
    const count = 50_000;
    const source = () => {
      readings++;
      return {
        *[Symbol.iterator]() {
          const next = randomStream(6, 0);
          for (let run = 0; run < count; run++) yield rowOf(run, next() * next() * next());
        },
      };
    };
    const { metrics, runs } = summaryOf(survey, source);
    expect(runs).toBe(count);
    expect(readings).toBeLessThanOrEqual(5);
    // Mean 1/8, variance 1/27 − 1/64 of a product of three uniform numbers; four deviations of the mean.
    expectWithin(metrics[0]!.mean, 1 / 8, { absolute: 4 * Math.sqrt((1 / 27 - 1 / 64) / count) }, 'mean');
    const next = randomStream(6, 0);
    const sorted = Float64Array.from({ length: count }, () => next() * next() * next()).sort();
    expect(metrics[0]!.quantiles.map(({ value }) => value)).toEqual(
      [1, 5, 25, 50, 75, 90, 95, 99].map((percent) => {
        const rank = (count * percent) / 100;
        return (sorted[rank - 1]! + sorted[rank]!) / 2;
      }),
    );
  });
});
