/** Instantaneous trip and voltage dip: both sides of each limit, waived, and without their data. */
import { describe, expect, it } from 'vitest';
import type { Criterion, CriterionKey } from '../../../../src/assess/criterion.ts';
import { protectionCriteria } from '../../../../src/assess/protection/protectionCriteria.ts';
import type { RunResult } from '../../../../src/measure/result.ts';
import type { LimitsData } from '../../../../src/scenario/scenario.ts';
import { pluggedRun, withLimits, withMetrics } from '../../../support/judgedRun.ts';
import { expectWithin } from '../../../support/tolerance.ts';

const of = (result: RunResult, key: CriterionKey): Criterion => {
  const found = protectionCriteria(result).find((criterion) => criterion.key === key);
  if (found === undefined) throw new Error(`no criterion ${key}`);
  return found;
};

const run = pluggedRun({ supply: { sourceResistance: 0.02, sourceInductance: 2e-4 } });
const ROUNDING = { relative: 1e-14 };

describe('the instantaneous trip', () => {
  const judge = (limit: LimitsData['instantaneousTrip'], start: number | null, plug: number | null) =>
    of(
      withMetrics(withLimits(run, { instantaneousTrip: limit }), {
        startPeakCurrent: start,
        plugPeakCurrent: plug,
      }),
      'instantaneousTrip',
    );

  it('compares the larger crest with √2 times the setting', () => {
    expectWithin(judge(100, 90, 120).limit, 141.42135623730951, ROUNDING, 'limit');
    expect(judge(100, 90, 120)).toMatchObject({ outcome: 'pass', value: 120, unit: 'A' });
    expect(judge(100, 135, 120)).toMatchObject({ outcome: 'close', value: 135 });
    expect(judge(100, 90, 145)).toMatchObject({ outcome: 'fail', value: 145 });
    expect(judge(100, 145, 90)).toMatchObject({ outcome: 'fail', value: 145 });
  });

  it('takes the worst of the closing angles, of another run and of what the contactors make', () => {
    const own = withMetrics(withLimits(run, { instantaneousTrip: 100 }), {
      startPeakCurrent: 90,
      plugPeakCurrent: 120,
    });
    const worst = withMetrics(own, { plugPeakCurrent: 142 });
    const [found] = protectionCriteria(own, worst);
    expect(found).toMatchObject({ outcome: 'fail', value: 142 });
    expect(found?.remark).toMatch(/^at the worst of the closing angles/);
    const pole = {
      phase: 'A',
      meanCrest: 100,
      worstCrest: 143,
      meanRms: 70,
      worstRms: 80,
      meanBounceCharge: null,
    } as const;
    const making = {
      kind: 'making',
      contactor: 'reverse',
      occurrence: 1,
      command: 'plug',
      runs: 1,
      poles: [pole],
    } as const;
    const [made] = protectionCriteria(own, own, { driving: 'forward', makings: [making], breakings: [] });
    expect(made).toMatchObject({ outcome: 'fail', value: 143 });
    expect(protectionCriteria(own, own)[0]).toMatchObject({ outcome: 'pass', value: 120 });
  });

  it('says in which operation, and which one the run lacks', () => {
    expect(judge(100, 135, 120).remark).toMatch(/^in the start;/);
    expect(judge(100, 90, 120).remark).toMatch(/^in the plug;/);
    expect(judge(100, null, 120).remark).toMatch(/^in the plug; the run contains no start/);
    expect(judge(100, 90, null).remark).toMatch(/^in the start; the run contains no plug/);
  });

  it('warns that a circuit without leakage saturation shows too little, and only then', () => {
    expect(judge(100, 90, 120).remark).toContain('without saturation of the leakage paths');
    const { scenario } = run;
    const leakageSaturation = { stator: null, cages: [null] };
    const saturated = withLimits(
      { ...run, scenario: { ...scenario, machine: { ...scenario.machine, leakageSaturation } } },
      { instantaneousTrip: 500 },
    );
    expect(of(saturated, 'instantaneousTrip').remark).not.toContain('saturation');
  });

  it('is waived or not judged as the scenario says', () => {
    expect(judge('none', 90, 120)).toMatchObject({ outcome: 'pass', value: null });
    expect(judge(null, 90, 120)).toMatchObject({
      outcome: 'notJudged',
      required: false,
      remark: 'not judged because limits.instantaneousTrip is missing',
    });
    expect(judge(100, null, null).outcome).toBe('notJudged');
  });
});

describe('the voltage dip', () => {
  const judge = (limit: LimitsData['voltageDip'], start: number | null, plug: number | null) =>
    of(
      withMetrics(withLimits(run, { voltageDip: limit }), { startVoltageDip: start, plugVoltageDip: plug }),
      'voltageDip',
    );

  it('compares the deeper dip with the limit', () => {
    expect(judge(0.15, 0.1, 0.12)).toMatchObject({ outcome: 'pass', value: 0.12, limit: 0.15 });
    expect(judge(0.15, 0.14, 0.12)).toMatchObject({ outcome: 'close', value: 0.14 });
    expect(judge(0.15, 0.1, 0.16)).toMatchObject({ outcome: 'fail', value: 0.16 });
    expect(judge('none', 0.1, 0.16).outcome).toBe('pass');
    expect(judge(null, 0.1, 0.16).outcome).toBe('notJudged');
  });

  it('of a supply without impedance is missing data, not a dip of zero', () => {
    const stiff = withLimits(pluggedRun(), { voltageDip: 0.15 });
    expect(of(stiff, 'voltageDip')).toMatchObject({
      outcome: 'notJudged',
      remark: 'not judged because the impedance of the supply is missing (its short-circuit power)',
    });
  });

  it('behind a cable alone is judged', () => {
    const cabled = pluggedRun({ supply: { cable: { resistance: 0.05, inductance: 0 } } });
    expect(of(withLimits(cabled, { voltageDip: 0.15 }), 'voltageDip').value).toBeGreaterThan(0.01);
  });
});
