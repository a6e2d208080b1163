/** Torque of the shaft and deceleration of the load: both sides of each limit, waived, and without their data. */
import { describe, expect, it } from 'vitest';
import type { Criterion, CriterionKey } from '../../../../src/assess/criterion.ts';
import { mechanicsCriteria } from '../../../../src/assess/stop/mechanicsCriteria.ts';
import { measure } from '../../../../src/measure/measure.ts';
import type { RunResult } from '../../../../src/measure/result.ts';
import type { LimitsData } from '../../../../src/scenario/scenario.ts';
import { pluggedRun, withLimits, withMetrics } from '../../../support/judgedRun.ts';
import { syntheticTrajectory } from '../../../support/syntheticTrajectory.ts';
import { KRAUSE } from '../../../support/textbookMachines.ts';
import { expectWithin } from '../../../support/tolerance.ts';

const of = (result: RunResult, key: CriterionKey): Criterion => {
  const found = mechanicsCriteria(result).find((criterion) => criterion.key === key);
  if (found === undefined) throw new Error(`no criterion ${key}`);
  return found;
};
const shaftOf = (result: RunResult, limits: Partial<LimitsData>) =>
  of(withLimits(result, limits), 'shaftTorque');

const J_MOTOR = KRAUSE.hp3.machine.inertia;
const J_LOAD = 0.03;
const run = pluggedRun();

describe('the torque of a rigid shaft', () => {
  /**
   * Of 1 N·m of friction that opposes motion and a load of 0.03 kg·m²: (J_L·T_e + J_M·T_l)/(J_M + J_L), largest magnitude over a
   * grid of 2 µs from the command to where friction holds the shaft; then all of the air-gap torque is carried.
   */
  const { trajectory } = run;
  const count = Math.round((trajectory.tEnd - 0.02) / 2e-6);
  const grid = trajectory.sample(0.02, trajectory.tEnd, count + 1);
  let rigid = 0;
  for (let i = 0; i <= count; i++) {
    const speed = grid.speed[i]!;
    const torque = grid.torque[i]!;
    const carried =
      speed === 0 ? torque : (J_LOAD * torque + J_MOTOR * Math.sign(speed)) / (J_MOTOR + J_LOAD);
    rigid = Math.max(rigid, Math.abs(carried));
  }
  /** Crests between samples: (ω·1 µs)²/2 at twice the supply frequency, 3e-7. */
  const tolerance = { relative: 1e-6 };

  it('is the share of the load, twice where even an elastic shaft keeps the limit', () => {
    const judged = shaftOf(run, { couplingTorque: 2.5 * rigid });
    expect(judged).toMatchObject({
      outcome: 'pass',
      required: true,
      source: 'limits.couplingTorque, given in the scenario',
    });
    expectWithin(judged.value, 2 * rigid, tolerance, 'value');
    expect(judged.remark).toContain('twice the torque of a rigid shaft');
    expect(shaftOf(run, { couplingTorque: 2.05 * rigid }).outcome).toBe('close');
  });

  it('fails where not even a rigid shaft keeps it', () => {
    const judged = shaftOf(run, { couplingTorque: 0.9 * rigid });
    expect(judged.outcome).toBe('fail');
    // The value is the same on both sides of the limit: what an elastic shaft may swing to.
    expectWithin(judged.value, 2 * rigid, tolerance, 'value');
    expect(judged.remark).toContain('exceeds the limit by itself');
  });

  it('is not judged where the elasticity decides', () => {
    for (const limit of [1.05 * rigid, 1.95 * rigid]) {
      const judged = shaftOf(run, { couplingTorque: limit });
      expect(judged).toMatchObject({ outcome: 'notJudged', required: true });
      expect(judged.remark).toContain('the stiffness of the coupling (load.coupling) is missing');
      expectWithin(judged.value, 2 * rigid, tolerance, 'value');
    }
  });

  it('is all of the air-gap torque while friction holds the shaft', () => {
    const stalled = pluggedRun({
      initial: 'rest',
      actions: [{ at: 0, do: 'startForward' }],
      load: { inertia: J_LOAD, torques: [{ kind: 'friction', torque: 500, breakaway: 500 }] },
      solver: { relativeTolerance: 1e-8, endTime: 0.1 },
    });
    const { startMaximumTorque, startMinimumTorque } = stalled.metrics;
    const peak = Math.max(startMaximumTorque.value ?? 0, -(startMinimumTorque.value ?? 0));
    expectWithin(shaftOf(stalled, { keyTorque: 1 }).value, 2 * peak, { relative: 1e-6 }, 'value');
  });

  it('holds the weakest part that is given, and names what is not', () => {
    const judged = shaftOf(run, { couplingTorque: 50 * rigid, keyTorque: 3 * rigid, gearboxTorque: 'none' });
    expect(judged.limit).toBe(3 * rigid);
    expect(judged.source).toContain('limits.keyTorque');
    expect(judged.remark).toContain('not given: limits.brakeTorque');
    expect(judged.remark).not.toContain('limits.gearboxTorque');
  });

  it('is waived where no part has a limit, and not judged where none is known', () => {
    const none = { couplingTorque: 'none', gearboxTorque: 'none', keyTorque: 'none' } as const;
    expect(shaftOf(run, { ...none, brakeTorque: 'none' })).toMatchObject({ outcome: 'pass', value: null });
    expect(shaftOf(run, none)).toMatchObject({
      outcome: 'notJudged',
      remark: 'not judged because limits.brakeTorque is missing',
    });
    expect(of(run, 'shaftTorque')).toMatchObject({ outcome: 'notJudged', required: true });
  });
});

it('the torque of an elastic coupling is that of the coupling, whichever its sign and operation', () => {
  const coupling = { stiffness: 5000, damping: 1, backlash: 0 };
  const shaft = { ...run.trajectory.shaft, coupling };
  const elastic = { ...run, trajectory: { ...run.trajectory, shaft } };
  const judge = (start: number | null, plug: number | null, limit: number) =>
    shaftOf(withMetrics(elastic, { startCouplingTorque: start, plugCouplingTorque: plug }), {
      keyTorque: limit,
    });
  expect(judge(80, -120, 150)).toMatchObject({ outcome: 'pass', value: 120, limit: 150 });
  expect(judge(80, -120, 125)).toMatchObject({ outcome: 'close', value: 120 });
  expect(judge(80, -120, 110)).toMatchObject({ outcome: 'fail', value: 120 });
  expect(judge(130, -120, 125)).toMatchObject({ outcome: 'fail', value: 130 });
  expect(judge(null, -120, 125).value).toBe(120);
  expect(judge(null, null, 125).outcome).toBe('notJudged');
});

describe('the deceleration of the load', () => {
  /** 30 rad/s² with a swing at twice the supply frequency, which a mean over one period does not see. */
  const swing = 2 * Math.PI * 120;
  const trajectory = syntheticTrajectory(
    { speed: (t) => 180 - 30 * t + 0.2 * Math.sin(swing * t) },
    [0, 0.21, 0.5],
  );
  const measured = measure(trajectory);
  const reversal = {
    command: 0,
    to: 0.5,
    outgoing: 'forward',
    incoming: 'reverse',
    direction: 1,
    parting: null,
    touch: null,
    zero: null,
    switchOpening: null,
  } as const;
  const slowing: RunResult = { ...measured, operations: { ...measured.operations, reversal } };
  const judge = (key: CriterionKey, limits: Partial<LimitsData>) =>
    of(withLimits(slowing, { decelerationRadius: 0.2, ...limits }), key);

  it('is the mean over the worst period at the radius given: 30 rad/s² · 0.2 m', () => {
    expectWithin(judge('deceleration', { deceleration: 10 }).value, 6, { relative: 1e-9 }, 'deceleration');
    expect(judge('deceleration', { deceleration: 7 })).toMatchObject({ outcome: 'pass', unit: 'm/s²' });
    expect(judge('deceleration', { deceleration: 6.5 }).outcome).toBe('close');
    expect(judge('deceleration', { deceleration: 5.9 }).outcome).toBe('fail');
    expect(judge('deceleration', { deceleration: 'none' }).outcome).toBe('pass');
    expect(judge('deceleration', {})).toMatchObject({ outcome: 'notJudged', required: false });
  });

  it('is that of the slower shaft behind a gear', () => {
    const shaft = { ...trajectory.shaft, ratio: 4 };
    const geared = { ...slowing, trajectory: { ...trajectory, shaft } };
    const judged = of(withLimits(geared, { decelerationRadius: 0.2, deceleration: 10 }), 'deceleration');
    expectWithin(judged.value, 1.5, { relative: 1e-9 }, 'deceleration');
  });

  it('tips the load beyond g over the ratio of height to half base', () => {
    expectWithin(judge('tipping', { tippingRatio: 1.25 }).limit, 7.84532, { relative: 1e-12 }, 'limit');
    expect(judge('tipping', { tippingRatio: 1.25 }).outcome).toBe('pass');
    expect(judge('tipping', { tippingRatio: 1.55 }).outcome).toBe('close');
    expect(judge('tipping', { tippingRatio: 1.7 }).outcome).toBe('fail');
    expect(judge('tipping', { tippingRatio: 'none' }).outcome).toBe('pass');
    expect(judge('tipping', {}).outcome).toBe('notJudged');
  });

  it('slides the load beyond μ·g', () => {
    expectWithin(judge('sliding', { slidingFriction: 0.8 }).limit, 7.84532, { relative: 1e-12 }, 'limit');
    expect(judge('sliding', { slidingFriction: 0.8 }).outcome).toBe('pass');
    expect(judge('sliding', { slidingFriction: 0.63 }).outcome).toBe('close');
    expect(judge('sliding', { slidingFriction: 0.6 }).outcome).toBe('fail');
    expect(judge('sliding', { slidingFriction: 'none' }).outcome).toBe('pass');
    expect(judge('sliding', {}).outcome).toBe('notJudged');
  });

  it('needs the radius, and a reversal', () => {
    expect(of(withLimits(slowing, { slidingFriction: 0.8 }), 'sliding').remark).toBe(
      'not judged because limits.decelerationRadius is missing',
    );
    const without = { ...slowing, operations: { ...slowing.operations, reversal: null } };
    expect(
      of(withLimits(without, { slidingFriction: 0.8, decelerationRadius: 0.2 }), 'sliding').outcome,
    ).toBe('notJudged');
  });
});
