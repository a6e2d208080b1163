/**
 * Every metric that can be had from the trace alone, taken by brute force from a dense grid of samples: sums, largest samples
 * and first passages, no interpolant, no quadrature.
 */
import { describe, expect, it } from 'vitest';
import { METRIC_KEYS, type MetricKey } from '../../../src/measure/metric.ts';
import { simulate } from '../../../src/measure/simulate.ts';
import { steadySpeed } from '../../../src/shaft/steadySpeed.ts';
import type { RunEventKind } from '../../../src/simulate/trajectory.ts';
import { ARCING_STARTER, scenarioOf, type Variation } from '../../support/scenarios.ts';
import { KRAUSE } from '../../support/textbookMachines.ts';
import { expectWithin } from '../../support/tolerance.ts';

const variation: Variation = {
  supply: { angle: 0.9, sourceResistance: 0.02, sourceInductance: 0.2e-3 },
  starter: {
    ...ARCING_STARTER,
    closingScatter: [0, 0.0011, 0.0004],
    openingScatter: [0.0003, 0, 0.0012],
    zeroSpeedSwitch: { dropOutSpeed: 8, pickUpSpeed: 14, delay: 0.011 },
  },
  load: {
    inertia: 0.02,
    torques: [
      { kind: 'friction', torque: 1, breakaway: 2 },
      { kind: 'viscous', coefficient: 0.01 },
    ],
  },
  actions: [
    { at: 0.05, do: 'startForward' },
    { at: 0.85, do: 'plug' },
  ],
};
const result = simulate(scenarioOf(KRAUSE.hp3, variation));
const { trajectory, metrics } = result;
/** s: crests are rounded to ω²h²/8 = 3e-7 of their height, sums of smooth functions to about the same. */
const H = 4e-6;
const count = Math.round(trajectory.tEnd / H) + 1;
const trace = trajectory.sample(0, (count - 1) * H, count);
const PHASES = ['A', 'B', 'C'] as const;

const eventTime = (
  kind: RunEventKind,
  match: { contactor?: string; phase?: string } = {},
  last = false,
): number => {
  const found = trajectory.events.filter(
    (event) =>
      event.kind === kind &&
      (match.contactor === undefined || event.contactor === match.contactor) &&
      (match.phase === undefined || event.phase === match.phase),
  );
  return (last ? found.at(-1) : found[0])?.t ?? Number.NaN;
};
const START = 0.05;
const PLUG = 0.85;
const touch = Math.max(START, START + 0.022 + 0.0004);
const parting = PLUG + 0.012;
const reverseTouch = PLUG + 0.03 + 0.022 + 0.0004;
const zero = trajectory.events.filter((event) => event.kind === 'zeroSpeed').at(0)!.t;

/** Index range of the samples inside [a, b]. */
const range = (a: number, b: number) => [Math.ceil(a / H), Math.floor(b / H)] as const;
function highest(f: (i: number) => number, a: number, b: number): number {
  const [from, to] = range(a, b);
  let best = Number.NEGATIVE_INFINITY;
  for (let i = from; i <= to; i++) best = Math.max(best, f(i));
  return best;
}
function sum(f: (i: number) => number, a: number, b: number): number {
  const [from, to] = range(a, b);
  let total = 0;
  for (let i = from; i < to; i++) total += (H * (f(i) + f(i + 1))) / 2;
  return total + (from * H - a) * f(from) + (b - to * H) * f(to);
}
const current = (phase: 'A' | 'B' | 'C') => trace[`i${phase}`];
const biggest = (a: number, b: number) =>
  Math.max(...PHASES.map((p) => highest((i) => Math.abs(current(p)[i]!), a, b)));
function worstCycle(a: number, b: number): number {
  const window = 1 / 60 / H;
  const whole = Math.floor(window);
  const part = window - whole;
  const [from, to] = range(a, b);
  let best = 0;
  for (const phase of PHASES) {
    const total = new Float64Array(to - from + 1);
    for (let i = from; i < to; i++) {
      total[i - from + 1] =
        total[i - from]! + (H * (current(phase)[i]! ** 2 + current(phase)[i + 1]! ** 2)) / 2;
    }
    for (let i = whole + 1; i < total.length; i++) {
      const begin = total[i - whole]! + part * (total[i - whole - 1]! - total[i - whole]!);
      best = Math.max(best, (total[i]! - begin) * 60);
    }
  }
  return Math.sqrt(best);
}
const target = 0.95 * steadySpeed(trajectory.scenario, 1)!;
const upToSpeed = (trace.speed.findIndex((speed) => speed >= target) - 0.5) * H;
const crest = 220 * Math.sqrt(2 / 3);
const beforeTouch = trajectory.at(reverseTouch, 'left');
const supplyAngle = 120 * Math.PI * reverseTouch + 0.9;
const turnOf = (angle: number) => angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));

/** Over the samples while three poles conduct, and both ends of each such stretch. */
function lowestVoltage(): number {
  const size = ({ uAlpha, uBeta }: { uAlpha: number; uBeta: number }) =>
    Math.sqrt(1.5) * Math.hypot(uAlpha, uBeta);
  let lowest = Number.POSITIVE_INFINITY;
  for (const { kind, t0, t1 } of trajectory.segments) {
    if (kind !== 'three') continue;
    const [from, to] = range(t0, t1);
    for (let i = from; i <= to; i++)
      lowest = Math.min(lowest, size({ uAlpha: trace.uAlpha[i]!, uBeta: trace.uBeta[i]! }));
    lowest = Math.min(lowest, size(trajectory.at(t0)), size(trajectory.at(t1, 'left')));
  }
  return lowest;
}

const EXPECTED: Partial<Record<MetricKey, readonly [value: number, relative: number]>> = {
  startPeakCurrent: [biggest(START, PLUG), 1e-6],
  startWorstCycleCurrent: [worstCycle(START, PLUG), 1e-5],
  startMaximumTorque: [highest((i) => trace.torque[i]!, START, PLUG), 1e-6],
  startMinimumTorque: [-highest((i) => -trace.torque[i]!, START, PLUG), 1e-6],
  startTime: [upToSpeed - touch, 1e-5],
  ...Object.fromEntries(
    PHASES.flatMap((p) => [
      [`startI2t${p}`, [sum((i) => current(p)[i]! ** 2, START, upToSpeed), 2e-5]],
      [`plugI2t${p}`, [sum((i) => current(p)[i]! ** 2, PLUG, zero), 1e-5]],
    ]),
  ),
  startStatorHeat: [
    0.435 * sum((i) => trace.iA[i]! ** 2 + trace.iB[i]! ** 2 + trace.iC[i]! ** 2, START, upToSpeed),
    2e-5,
  ],
  plugStatorHeat: [
    0.435 * sum((i) => trace.iA[i]! ** 2 + trace.iB[i]! ** 2 + trace.iC[i]! ** 2, PLUG, zero),
    1e-5,
  ],
  commandToTouch: [reverseTouch - PLUG, 1e-12],
  partingToTouch: [reverseTouch - parting, 1e-12],
  extinctionToTouch: [
    reverseTouch -
      Math.max(...PHASES.map((phase) => eventTime('poleClears', { contactor: 'forward', phase }))),
    1e-12,
  ],
  arcMargin: [
    Math.min(
      ...(['B', 'C'] as const).map(
        (phase) =>
          eventTime('poleTouches', { contactor: 'reverse', phase }) -
          eventTime('poleClears', { contactor: 'forward', phase }),
      ),
    ),
    1e-12,
  ],
  residualVoltage: [Math.hypot(beforeTouch.uAlpha, beforeTouch.uBeta) / crest, 1e-12],
  residualAngle: [turnOf(-supplyAngle - Math.atan2(beforeTouch.uBeta, beforeTouch.uAlpha)), 1e-9],
  supplyAngleAtTouch: [supplyAngle % (2 * Math.PI), 1e-12],
  plugPeakCurrent: [biggest(PLUG, trajectory.tEnd), 1e-6],
  plugWorstCycleCurrent: [worstCycle(PLUG, trajectory.tEnd), 1e-5],
  plugMinimumTorque: [-highest((i) => -trace.torque[i]!, PLUG, trajectory.tEnd), 1e-6],
  plugMaximumTorque: [highest((i) => trace.torque[i]!, PLUG, trajectory.tEnd), 1e-6],
  stopTimeFromParting: [(trace.speed.findIndex((v, i) => i * H > PLUG && v <= 0) - 0.5) * H - parting, 1e-4],
  stopTimeFromTouch: [
    (trace.speed.findIndex((v, i) => i * H > PLUG && v <= 0) - 0.5) * H - reverseTouch,
    1e-4,
  ],
  stopRevolutions: [sum((i) => trace.speed[i]!, PLUG, zero) / (2 * Math.PI), 1e-7],
  switchOpeningSpeed: [trajectory.at(eventTime('switchOpens', {}, true)).speed, 1e-12],
  lowestTerminalVoltage: [lowestVoltage(), 1e-6],
  ...Object.fromEntries(
    (['run', 'plug'] as const).flatMap((prefix) =>
      PHASES.flatMap((phase) => {
        const contactor = prefix === 'run' ? 'forward' : 'reverse';
        const parts = eventTime('poleParts', { contactor, phase });
        const clears = eventTime('poleClears', { contactor, phase });
        return [
          [`${prefix}Pole${phase}PartingCurrent`, [Math.abs(trajectory.at(parts)[`i${phase}`]), 1e-6]],
          [`${prefix}Pole${phase}ClearingTime`, [clears - parts, 1e-9]],
          [`${prefix}Pole${phase}ArcCharge`, [sum((i) => Math.abs(current(phase)[i]!), parts, clears), 2e-4]],
        ];
      }),
    ),
  ),
};

describe('a plug stop with source impedance, scatter, friction and zero-speed switch', () => {
  it('ends well', () => {
    expect(result.status.code).toBe('finished');
    expect(result.warnings).toEqual([]);
  });

  it.each(Object.entries(EXPECTED))('%s is what the trace shows by hand', (key, [value, relative]) => {
    expectWithin(metrics[key as MetricKey].value, value, { relative }, key);
  });

  it('creeps backwards as far and as fast as the trace shows', () => {
    const opened = eventTime('switchOpens', {}, true);
    const fastest = highest((i) => -trace.speed[i]!, opened, trajectory.tEnd);
    expectWithin(metrics.creepSpeed.value, Math.max(0, fastest), { absolute: 1e-6 }, 'creep speed');
    const turned = (trajectory.at(zero).position - trajectory.at(trajectory.tEnd).position) / (2 * Math.PI);
    expectWithin(
      metrics.creepRevolutions.value,
      Math.max(0, turned),
      { absolute: 1e-12 },
      'creep revolutions',
    );
  });

  it('has heat multiples that fit heats and kinetic energy', () => {
    const J = trajectory.shaft.inertia;
    const kinetic = (t: number) => 0.5 * J * trajectory.at(t).speed ** 2;
    const start = metrics.startRotorHeat.value! / kinetic(upToSpeed);
    expectWithin(metrics.startRotorHeatMultiple.value, start, { relative: 1e-4 }, 'start');
    const plug = metrics.plugRotorHeat.value! / kinetic(PLUG);
    expectWithin(metrics.plugRotorHeatMultiple.value, plug, { relative: 1e-9 }, 'plug');
    const ratio = metrics.plugRotorHeat.value! / metrics.startRotorHeat.value!;
    expectWithin(metrics.plugToStartHeatRatio.value, ratio, { relative: 1e-12 }, 'ratio');
  });

  it('states peaks as multiples of the crest current and torque at rated output', () => {
    const { rated } = result;
    const multiple = metrics.plugPeakCurrent.value! / (Math.SQRT2 * rated.current);
    expectWithin(metrics.plugPeakCurrent.multiple?.value, multiple, { relative: 1e-12 }, 'current');
    const torque = metrics.plugMinimumTorque.value! / rated.torque;
    expectWithin(metrics.plugMinimumTorque.multiple?.value, torque, { relative: 1e-12 }, 'torque');
  });

  it('states peaks at the instant and in the phase where the trace has them', () => {
    for (const key of ['startPeakCurrent', 'plugPeakCurrent'] as const) {
      const { time, phase, value } = metrics[key];
      expectWithin(Math.abs(trajectory.at(time!)[`i${phase!}`]), value!, { relative: 1e-9 }, key);
    }
    for (const key of ['startMaximumTorque', 'plugMinimumTorque'] as const)
      expectWithin(trajectory.at(metrics[key].time!).torque, metrics[key].value!, { relative: 1e-9 }, key);
  });

  it('says why a full reversal has no figures here', () => {
    for (const key of ['reversalTime', 'reversalRotorHeat', 'reversalRotorHeatMultiple'] as const) {
      expect(metrics[key].value).toBe(null);
      expect(metrics[key].missing).toBe('the zero-speed switch ended the plugging');
    }
  });
});

describe('a full reversal', () => {
  const { zeroSpeedSwitch: _without, ...starter } = variation.starter!;
  const full = simulate(scenarioOf(KRAUSE.hp3, { ...variation, starter }));

  it('is timed from the touch to 95 % of the steady speed in the other direction', () => {
    const level = 0.95 * steadySpeed(full.scenario, -1)!;
    const samples = full.trajectory.sample(0, full.trajectory.tEnd, count);
    const step = full.trajectory.tEnd / (count - 1);
    const reached = samples.speed.findIndex((speed) => speed <= level) * step;
    const time = full.metrics.reversalTime;
    expectWithin(time.value, reached - reverseTouch, { absolute: 2 * step }, 'reversal time');
    expectWithin(time.time, reached, { absolute: 2 * step }, 'its end');
    expect(full.metrics.reversalRotorHeat.value).toBeGreaterThan(full.metrics.plugRotorHeat.value!);
  });

  it('says why there is no creep', () => {
    expect(full.metrics.creepSpeed.missing).toBe('no zero-speed switch ended the plugging');
  });
});

describe('a run without reversal', () => {
  const only = simulate(scenarioOf(KRAUSE.hp3, { actions: [{ at: 0, do: 'startForward' }] }));

  it('has every key, with a value or with the reason why not', () => {
    expect(Object.keys(only.metrics)).toEqual([...METRIC_KEYS]);
    for (const key of METRIC_KEYS) {
      const metric = only.metrics[key];
      if (metric.value === null) expect(metric.missing).toMatch(/\w{3,}/);
      else expect(Number.isFinite(metric.value)).toBe(true);
      expect(metric.definition).toMatch(/\.$/);
    }
    expect(only.metrics.plugPeakCurrent.missing).toContain('no plug or reversal takes place');
  });
});
