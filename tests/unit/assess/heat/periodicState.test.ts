import { inverse, Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { type DutyCycle, dutyCycle } from '../../../../src/assess/heat/dutyCycle.ts';
import { periodicState } from '../../../../src/assess/heat/periodicState.ts';
import {
  heatPerNode,
  highestRises,
  risesAfter,
  thermalModes,
} from '../../../../src/assess/heat/thermalModes.ts';
import type { Cooling, ThermalModel } from '../../../../src/assess/heat/thermalNetwork.ts';
import { linearSolution } from '../../../support/matrixExponential.ts';
import { FOUR_BODIES, ONE_BODY, pulse, SOME_HEAT, THREE_BODIES } from '../../../support/thermalModels.ts';
import { expectAllWithin, expectWithin } from '../../../support/tolerance.ts';

/** Rounding of an eigendecomposition of rates three decades apart. */
const LINEAR_ALGEBRA = { relative: 1e-9, absolute: 1e-9 };

/** dθ/dt written out link by link, from nothing but the model's data. */
function slope(
  model: ThermalModel,
  cooling: Cooling,
  power: readonly number[],
  rises: readonly number[],
): number[] {
  const flow = [...power];
  const index = (name: string) => model.nodes.findIndex((node) => node.name === name);
  for (const link of model.links) {
    const i = index(link.from);
    const j = link.to === 'ambient' ? -1 : index(link.to);
    const heat = link[cooling] * (rises[i]! - (j < 0 ? 0 : rises[j]!));
    flow[i]! -= heat;
    if (j >= 0) flow[j]! += heat;
  }
  return flow.map((watts, i) => watts / model.nodes[i]!.heatCapacity);
}

/** One phase by classical Runge–Kutta steps; keeps the highest rises seen. */
function stepThrough(
  model: ThermalModel,
  cycle: DutyCycle,
  begin: readonly number[],
  highest: number[],
): number[] {
  let rises = [...begin];
  for (const { pulse: heat, cooling } of cycle) {
    if (heat.duration === 0) continue;
    const power = heatPerNode(model, heat).map((joules) => joules / heat.duration);
    const count = Math.max(20, Math.ceil(heat.duration / 0.5));
    const h = heat.duration / count;
    const f = (at: readonly number[]) => slope(model, cooling, power, at);
    const moved = (k: readonly number[], by: number) => rises.map((rise, i) => rise + by * k[i]!);
    for (let step = 0; step < count; step++) {
      const k1 = f(rises);
      const k2 = f(moved(k1, h / 2));
      const k3 = f(moved(k2, h / 2));
      const k4 = f(moved(k3, h));
      rises = rises.map((rise, i) => rise + (h / 6) * (k1[i]! + 2 * k2[i]! + 2 * k3[i]! + k4[i]!));
      for (const [i, rise] of rises.entries()) highest[i] = Math.max(highest[i]!, rise);
    }
  }
  return rises;
}

describe.each([
  ['three bodies', THREE_BODIES, [90, 130, 40]],
  ['four bodies', FOUR_BODIES, [90, 130, 150, 40]],
] as const)('rises of %s', (_name, model, begin) => {
  it.each(['running', 'standstill'] as const)('while %s follow the matrix exponential', (cooling) => {
    const heat = model.nodes.map((_, i) => 4000 * (i + 1));
    const n = model.nodes.length;
    const unit = (j: number) => Array.from({ length: n }, (_, i) => (i === j ? 1 : 0));
    const none = unit(-1);
    const columns = none.map((_, j) => slope(model, cooling, none, unit(j)));
    const a = new Matrix(none.map((_, i) => columns.map((column) => column[i]!)));
    for (const t of [0.4, 60, 5000]) {
      const b = Matrix.columnVector(heat.map((joules, i) => joules / t / model.nodes[i]!.heatCapacity));
      const exact = linearSolution(a, b, Matrix.columnVector([...begin]), t, inverse(a)).getColumn(0);
      const rises = risesAfter(thermalModes(model, cooling), begin, heat, t);
      expectAllWithin(rises, exact, LINEAR_ALGEBRA, `rises after ${t} s`);
    }
  });

  it('of the periodic steady state are those of many cycles in small steps', () => {
    const cycle = dutyCycle(SOME_HEAT, 'startPlugStop', { kind: 'time', time: 40 }, 24);
    const state = periodicState(model, cycle);
    // The slowest time constant is below two hours: 400 cycles of 150 s are more than eight of it.
    let rises = model.nodes.map(() => 0);
    const highest = model.nodes.map(() => 0);
    for (let count = 0; count < 400; count++) {
      highest.fill(0);
      rises = stepThrough(model, cycle, rises, highest);
    }
    // What e^(−8) leaves of some 100 K, and a peak between two steps of half a second.
    expectAllWithin(rises, state.begin, { absolute: 0.1 }, 'rises at the beginning');
    expectAllWithin(
      highest.map((rise) => rise + model.ambient),
      state.peaks,
      { absolute: 0.15 },
      'peaks',
    );
  });

  it('repeat after one cycle from the periodic steady state', () => {
    const cycle = dutyCycle(SOME_HEAT, 'startPlugStop', { kind: 'time', time: 40 }, 24);
    const { begin } = periodicState(model, cycle);
    const end = stepThrough(
      model,
      cycle,
      begin,
      model.nodes.map(() => 0),
    );
    // Runge–Kutta steps of half a second against time constants of a minute and more.
    expectAllWithin(end, begin, { relative: 1e-7 }, 'rises after one cycle');
  });
});

describe('one body', () => {
  it('repeats with the rise of the closed form', () => {
    // 20 kJ at once every 100 s at τ = 100 s: θ_max = ΔΘ/(1 − e^(−1)), ΔΘ = 20 K; the least is e^(−1) of it
    const cycle: DutyCycle = [
      { name: 'stop', pulse: pulse({ cage: 20_000 }), cooling: 'standstill' },
      { name: 'rest', pulse: pulse({ duration: 100 }), cooling: 'standstill' },
    ];
    const { begin, peaks, peakPhase } = periodicState(ONE_BODY, cycle);
    const highest = 20 / (1 - Math.exp(-1));
    expectAllWithin(begin, [highest * Math.exp(-1)], LINEAR_ALGEBRA, 'least rise');
    expectAllWithin(peaks, [40 + highest], LINEAR_ALGEBRA, 'peak');
    expect(peakPhase).toEqual(['stop']);
  });

  it('under steady losses comes to P/G', () => {
    const running: DutyCycle = [
      { name: 'running', pulse: pulse({ cage: 600, duration: 1 }), cooling: 'running' },
    ];
    expectAllWithin(periodicState(ONE_BODY, running).peaks, [100], LINEAR_ALGEBRA, 'temperature');
  });

  it('that never cools gets hotter for ever', () => {
    const model = { ...ONE_BODY, links: [{ ...ONE_BODY.links[0]!, standstill: 0 }] };
    const cycle: DutyCycle = [
      { name: 'stop', pulse: pulse({ cage: 1, duration: 1 }), cooling: 'standstill' },
    ];
    expect(periodicState(model, cycle).peaks).toEqual([Number.POSITIVE_INFINITY]);
  });

  it('that does not cool at rest keeps its heat then', () => {
    const model = { ...ONE_BODY, links: [{ ...ONE_BODY.links[0]!, standstill: 0 }] };
    const after = risesAfter(thermalModes(model, 'standstill'), [50], [3000], 1000);
    expectAllWithin(after, [53], LINEAR_ALGEBRA, 'rise');
  });
});

describe('the highest rise of a phase', () => {
  it('is found inside it: a body that is heated through another one peaks during the rest', () => {
    // The frame, cold, is heated by the hot winding and cools to the air: two exponentials, peak where their slopes cancel.
    const model: ThermalModel = {
      ...THREE_BODIES,
      nodes: [
        { ...THREE_BODIES.nodes[0]!, heatCapacity: 1 },
        { ...THREE_BODIES.nodes[2]!, heatCapacity: 1 },
      ],
      // One way only as far as the frame is concerned: dw/dt = −(w − f), df/dt = (w − f) − 1.5·f; eigenvalues 1/2 and 3
      links: [
        { from: 'winding', to: 'frame', running: 1, standstill: 1 },
        { from: 'frame', to: 'ambient', running: 1.5, standstill: 1.5 },
      ],
    };
    // From w = 100, f = 0: f = 40·(e^(−t/2) − e^(−3t)), highest where e^(−t/2)/2 = 3·e^(−3t): t = ln(6)/2.5
    const t = Math.log(6) / 2.5;
    const expected = 40 * (Math.exp(-t / 2) - Math.exp(-3 * t));
    const rises = highestRises(thermalModes(model, 'standstill'), [100, 0], [0, 0], 10);
    expectWithin(rises[1], expected, LINEAR_ALGEBRA, 'peak of the frame');
    expectWithin(rises[0], 100, LINEAR_ALGEBRA, 'peak of the winding, at the start');
  });
});
