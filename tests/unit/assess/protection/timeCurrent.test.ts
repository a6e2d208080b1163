/** The time–current plot on known currents, published relay points and a published locked-rotor current. */
import { describe, expect, it } from 'vitest';
import { timeCurrentData } from '../../../../src/assess/protection/timeCurrent.ts';
import { measure } from '../../../../src/measure/measure.ts';
import type { RunResult } from '../../../../src/measure/result.ts';
import type { Scenario, ThermalData } from '../../../../src/scenario/scenario.ts';
import { pluggedRun, withLimits } from '../../../support/judgedRun.ts';
import { syntheticTrajectory } from '../../../support/syntheticTrajectory.ts';
import { expectWithin } from '../../../support/tolerance.ts';

const run = pluggedRun();
const edited = (more: Partial<Scenario>): RunResult => ({ ...run, scenario: { ...run.scenario, ...more } });
const OMEGA = 2 * Math.PI * 60;
/** s */
const DECAY = 0.4;
const TOUCH = 0.1;

describe('the current of an operation', () => {
  /** Phase A alone carries 100·e^(−t/τ) A r.m.s. from the touch on; B and C half of it each, opposite. */
  const measured = measure(
    syntheticTrajectory(
      { iAlpha: (t) => Math.SQRT2 * 100 * Math.exp(-(t - TOUCH) / DECAY) * Math.cos(OMEGA * t) },
      [0, TOUCH, 0.37, 0.9],
    ),
  );
  const reversal = {
    command: 0.05,
    to: 0.9,
    outgoing: 'forward',
    incoming: 'reverse',
    direction: 1,
    parting: null,
    touch: TOUCH,
    zero: 0.6,
    switchOpening: null,
  } as const;
  const result: RunResult = { ...measured, operations: { start: null, reversal, otherActions: 0 } };
  const { plug, start } = timeCurrentData(result);

  it('is that of the phase with the largest I²t, from the touch to zero speed', () => {
    expect(plug?.phase).toBe('A');
    expectWithin(plug?.duration, 0.5, { absolute: 1e-12 }, 'duration');
    expectWithin(plug?.perPeriod[0]?.time, 1 / 60, { absolute: 1e-12 }, 'first period');
    expect(plug?.perPeriod.at(-1)?.time).toBeLessThanOrEqual(0.5);
    expect(plug?.perPeriod.at(-1)?.time).toBeGreaterThan(0.48);
    expect(start).toBeNull();
  });

  it('period by period and as the constant current with the same I²t', () => {
    // ∫ of the squared envelope over [a, b]; the swing at twice the frequency leaves at most 1/(2ωτ)² = 3e-5 of it.
    const mean = (a: number, b: number) =>
      (100 ** 2 * (DECAY / 2) * (Math.exp((-2 * a) / DECAY) - Math.exp((-2 * b) / DECAY))) / (b - a);
    for (const { time, current } of plug?.perPeriod ?? [])
      expectWithin(current, Math.sqrt(mean(time - 1 / 60, time)), { relative: 1e-4 }, `at ${time} s`);
    for (const { time, current } of plug?.equivalent ?? [])
      expectWithin(current, Math.sqrt(mean(0, time)), { relative: 1e-4 }, `up to ${time} s`);
    expect(plug?.equivalent.length).toBeGreaterThan(20);
  });

  it('is missing where no circuit is completed or the operation is shorter than a period', () => {
    const none = { ...result, operations: { ...result.operations, reversal: { ...reversal, touch: null } } };
    expect(timeCurrentData(none).plug).toBeNull();
    const brief = { ...result, operations: { ...result.operations, reversal: { ...reversal, zero: 0.11 } } };
    expect(timeCurrentData(brief).plug).toBeNull();
  });

  it('of a start counts until the machine is up to speed', () => {
    const started = pluggedRun({
      initial: 'rest',
      actions: [
        { at: 0, do: 'startForward' },
        { at: 0.6, do: 'plug' },
      ],
    });
    const { start: found } = timeCurrentData(started);
    expectWithin(
      found?.duration,
      started.metrics.startTime.value ?? Number.NaN,
      { relative: 1e-9 },
      'duration',
    );
    // All of the I²t of the start, but for what flows in the last broken period.
    const last = found?.equivalent.at(-1);
    const i2t = (last?.current ?? 0) ** 2 * (last?.time ?? 0);
    const whole = Math.max(
      ...(['A', 'B', 'C'] as const).map((phase) => started.metrics[`startI2t${phase}`].value ?? 0),
    );
    expect(i2t / whole).toBeGreaterThan(0.95);
    expect(i2t / whole).toBeLessThanOrEqual(1 + 1e-9);
  });
});

describe('the overload relay', () => {
  /** Class 10 trips in 10 s at 6 times its setting: 10 = τ·ln(36/(36 − 1.1²)). */
  const TAU = 10 / Math.log(36 / 34.79);
  const overload = { setting: 10, tripClass: '10' } as const;
  const curves = timeCurrentData(edited({ protection: { overload, curves: [] } })).overload;

  it('has its curves from cold and warm with k = 1.1, in 10 s at 6 times the setting', () => {
    expect(curves).toMatchObject({ setting: 10, tripClass: '10' });
    expect(curves?.cold).toHaveLength(60);
    for (const { time, current } of curves?.cold ?? []) {
      const square = (current / 10) ** 2;
      expectWithin(time, TAU * Math.log(square / (square - 1.21)), { relative: 1e-9 }, `cold, ${current} A`);
    }
    for (const { time, current } of curves?.warm ?? []) {
      const square = (current / 10) ** 2;
      expectWithin(
        time,
        TAU * Math.log((square - 1) / (square - 1.21)),
        { relative: 1e-9 },
        `warm, ${current} A`,
      );
    }
  });

  it('is that of the control circuit where the scenario has no other', () => {
    expect(timeCurrentData(run).overload).toBeNull();
    const control = { overload: { ...overload, start: 'cold', memory: 'kept' } };
    const scenario = {
      ...run.scenario,
      starter: { ...run.scenario.starter, control },
    } as unknown as Scenario;
    expect(timeCurrentData({ ...run, scenario }).overload?.setting).toBe(10);
  });
});

describe('the locked rotor', () => {
  const thermal = { lockedRotorTimeCold: 20, lockedRotorTimeHot: 12 } as ThermalData;

  it('withstands constant I²t through the time at the published locked-rotor current, 65.739 A', () => {
    const { lockedRotor } = timeCurrentData(edited({ thermal }));
    expectWithin(lockedRotor.current, 65.739, { relative: 1e-5 }, 'current');
    for (const [line, time] of [
      [lockedRotor.cold, 20],
      [lockedRotor.hot, 12],
    ] as const) {
      expect(line).toHaveLength(2);
      for (const point of line ?? [])
        expectWithin(point.current ** 2 * point.time, 65.739 ** 2 * time, { relative: 2e-5 }, 'I²t');
    }
  });

  it('has no line where no time is given', () => {
    expect(timeCurrentData(run).lockedRotor).toMatchObject({ cold: null, hot: null });
  });

  it('keeps its current behind an impedance of the supply', () => {
    const { supply } = run.scenario;
    const { lockedRotor } = timeCurrentData(edited({ supply: { ...supply, sourceInductance: 1e-3 } }));
    expectWithin(lockedRotor.current, 65.739, { relative: 1e-5 }, 'current');
  });
});

it('points of breakers and fuses and the setting of the trip are handed on', () => {
  const curve = { name: 'feeder fuse', kind: 'fuse', points: [{ current: 100, time: 10 }] } as const;
  const { curves } = timeCurrentData(edited({ protection: { overload: null, curves: [curve] } }));
  expect(curves).toEqual([curve]);
  expect(timeCurrentData(run).curves).toEqual([]);
  expect(timeCurrentData(withLimits(run, { instantaneousTrip: 90 })).instantaneousTrip).toBe(90);
  expect(timeCurrentData(withLimits(run, { instantaneousTrip: 'none' })).instantaneousTrip).toBeNull();
  expect(timeCurrentData(run).instantaneousTrip).toBeNull();
});
