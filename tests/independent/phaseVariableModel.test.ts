import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it, vi } from 'vitest';
import { expectClose } from './closeTo.ts';
import {
  COMPARISON_RUNS,
  MACHINE_3_HP,
  MACHINE_50_HP,
  MACHINE_TWO_CAGES,
  scenarioOf,
} from './comparisonRuns.ts';
import { rotorHeat } from './heatMetrics.ts';
import { NOTHING, phaseCircuit } from './phaseCircuit.ts';
import { runPhaseVariableModel } from './phaseVariableModel.ts';
import { runReader } from './runReader.ts';
import { steadyCircuit } from './steadyCircuit.ts';
import { terminalVector } from './terminalVoltage.ts';

// Seconds of integration on a busy machine; nothing here measures speed.
vi.setConfig({ testTimeout: 30_000 });

const OMEGA = 2 * Math.PI * 60;
const SYNCHRONOUS = OMEGA / 2;
const FREE = { way: 0, held: false } as const;
const IDEAL = {
  poles: 'ideal',
  closingTime: 0,
  openingTime: 0,
  changeoverDelay: 0,
  zeroSpeedSwitch: null,
} as const;

/** Values printed with six digits: half a unit of the last one, and 1e-5 for peaks read from 25 µs samples. */
const SIX_DIGITS = 1.5e-5;

/** Enough where long decays, not the integrator, limit the agreement. */
const COARSE = { tolerance: 1e-9 };

/** R.m.s. over the supply period that ends at t. */
function cycleRms(run: ReturnType<typeof runPhaseVariableModel>['run'], t: number, phase: number): number {
  const reader = runReader(run);
  const at = run.circuit.index.square + phase;
  return Math.sqrt((reader.stateAt(t)[at]! - reader.stateAt(t - 1 / 60)[at]!) * 60);
}

describe('the phase-variable model', () => {
  it('takes nothing from the code it checks', () => {
    const here = new URL('.', import.meta.url);
    const files = readdirSync(here).filter((name) => name.endsWith('.ts') && name !== 'comparison.test.ts');
    expect(files).toContain('phaseCircuit.ts');
    for (const name of files) {
      const imports = [...readFileSync(new URL(name, here), 'utf8').matchAll(/from '([^']+)'/g)];
      for (const [, path] of imports) expect(path).not.toMatch(/^\.\.|^#/);
    }
  });

  it('has a torque rate equal to the difference quotient of its torque', () => {
    const circuit = phaseCircuit(
      scenarioOf({ title: '', machine: MACHINE_TWO_CAGES, actions: [], endTime: 1 }),
    );
    circuit.setMode({ supply: [0, 2, 1], inserted: NOTHING, motor: FREE, load: FREE, touching: 0 });
    const y = new Float64Array(circuit.size);
    y.set([30, -50, 20, 11, -31, 20, -17, -4, 21, 90, 0.7]);
    const f = new Float64Array(circuit.size);
    circuit.rhs(f, y, 0.003);
    const STEP = 1e-7;
    const moved = (sign: number) => circuit.torque(y.map((value, i) => value + sign * STEP * f[i]!));
    // Central difference: error of second order in the step, and cancellation of 1e-16/1e-7.
    expectClose(circuit.torqueRate(y, f), (moved(1) - moved(-1)) / (2 * STEP), 1e-7);
  });
});

describe('steady state of the equivalent circuit (Krause machines, 1710 and 1705 r/min)', () => {
  const cases = [
    { machine: MACHINE_3_HP, volts: 220, rpm: 1710, torque: 14.027, current: 8.845 },
    { machine: MACHINE_50_HP, volts: 460, rpm: 1705, torque: 234.641, current: 62.804 },
  ];
  it.each(cases)('is kept by the windings at $rpm r/min', ({ machine, volts, rpm, torque, current }) => {
    const scenario = scenarioOf({
      title: '',
      machine,
      lineVoltage: volts,
      initial: 'runningForward',
      load: { inertia: 0, torques: [{ kind: 'gravity', torque }] },
      actions: [],
      endTime: 0.1,
    });
    const { run } = runPhaseVariableModel(scenario);
    const end = runReader(run).stateAt(0.1);
    expectClose(cycleRms(run, 0.1, 0), current, 1e-4);
    expectClose(end[run.circuit.index.omega], (rpm * 2 * Math.PI) / 60, 1e-5);
    // Started in the steady state, nothing may drift: only the integrator's error is allowed.
    expectClose(run.circuit.torque(end), torque, 1e-8);
    expectClose(end[run.circuit.index.omega], runReader(run).stateAt(0)[run.circuit.index.omega]!, 1e-9);
  });

  it('holds for two cages in parallel, in the reverse direction too', () => {
    const scenario = scenarioOf({
      title: '',
      machine: MACHINE_TWO_CAGES,
      initial: 'runningReverse',
      load: { inertia: 0, torques: [{ kind: 'viscous', coefficient: 0.05 }] },
      actions: [],
      endTime: 0.1,
    });
    const { run } = runPhaseVariableModel(scenario);
    const end = runReader(run).stateAt(0.1);
    const omega = end[run.circuit.index.omega]!;
    const point = steadyCircuit(scenario, 1 + omega / SYNCHRONOUS);
    expect(omega).toBeLessThan(-0.9 * SYNCHRONOUS);
    expectClose(run.circuit.torque(end), -point.torque, 1e-8);
    expectClose(cycleRms(run, 0.1, 2), Math.hypot(...point.stator) / Math.SQRT2, 1e-8);
  });
});

describe('free acceleration from rest (tables computed with scipy in two formulations)', () => {
  it('gives the torque, current and time of the 3 hp machine', () => {
    const { metrics, run } = runPhaseVariableModel(
      scenarioOf({ title: '', starter: IDEAL, actions: [{ at: 0, do: 'startForward' }], endTime: 1 }),
    );
    expectClose(metrics.startMaximumTorque?.value, 132.06, SIX_DIGITS);
    expectClose(metrics.startMaximumTorque?.time, 10.49e-3, 0, 5e-6);
    expectClose(metrics.startMinimumTorque?.value, -22.078, 3e-5);
    expectClose(metrics.startTime?.value, 0.333954, 0, 1e-6);
    // The table's heat is that of the whole second, the metric's only up to 95 % speed.
    const end = runReader(run).stateAt(1);
    const energy = run.circuit.train.kinetic(end);
    expectClose(rotorHeat(run, end) / energy, 1.08575, SIX_DIGITS);
  });

  it('gives the torque, current and time of the 50 hp machine at a supply angle of 90°', () => {
    const { metrics, run } = runPhaseVariableModel(
      scenarioOf({
        title: '',
        machine: MACHINE_50_HP,
        lineVoltage: 460,
        angle: Math.PI / 2,
        starter: IDEAL,
        actions: [{ at: 0, do: 'startForward' }],
        endTime: 0.6,
      }),
    );
    expectClose(metrics.startMaximumTorque?.value, 1654.628, SIX_DIGITS);
    expectClose(metrics.startMinimumTorque?.value, -569.6, SIX_DIGITS);
    expectClose(metrics.startTime?.value, 0.508365, 0, 1e-6);
    expect(metrics.startPeakCurrent?.phase).toBe('A');
    expectClose(metrics.startPeakCurrent?.value, 694.774, SIX_DIGITS);
    expectClose(metrics.startPeakCurrent?.time, 6.767e-3, 0, 1e-6);
    const half = runReader(run).firstRise(0, 0.6, (y) => y[run.circuit.index.omega]! - SYNCHRONOUS / 2);
    expectClose(half, 0.278349, 0, 1e-6);
  });
});

describe('instant exchange of B and C at no load (tables computed with scipy in two formulations)', () => {
  const swap = (hp: 3 | 50, angle: number, endTime: number) =>
    runPhaseVariableModel(
      scenarioOf({
        title: '',
        machine: hp === 3 ? MACHINE_3_HP : MACHINE_50_HP,
        lineVoltage: hp === 3 ? 220 : 460,
        angle,
        starter: IDEAL,
        initial: 'runningForward',
        actions: [{ at: 0, do: 'startReverse' }],
        endTime,
      }),
    );

  it.each([
    {
      angle: 0,
      torque: -394.95,
      at: 6.558e-3,
      crest: 237.534,
      stop: 0.334854,
      full: 0.656714,
      heat: 2.65011,
      all: 3.66283,
    },
    {
      angle: Math.PI / 2,
      torque: -123.323,
      at: 1.917e-3,
      crest: 137.807,
      stop: 0.394593,
      full: 0.716453,
      heat: 2.95508,
      all: 3.9678,
    },
  ])(
    'gives the torque, crest, times and heats of the 3 hp machine at $angle rad',
    ({ angle, torque, at, crest, stop, full, heat, all }) => {
      const { metrics, run } = swap(3, angle, 1.3);
      expectClose(metrics.plugMinimumTorque?.value, torque, SIX_DIGITS);
      expectClose(metrics.plugMinimumTorque?.time, at, 0, 1e-6);
      expect(metrics.plugPeakCurrent?.phase).toBe('C');
      expectClose(metrics.plugPeakCurrent?.value, crest, SIX_DIGITS);
      expectClose(metrics.stopTimeFromTouch?.value, stop, 0, 1e-6);
      expectClose(metrics.reversalTime?.value, full, 0, 1e-6);
      expectClose(metrics.plugRotorHeatMultiple?.value, heat, SIX_DIGITS);
      // The table counts up to synchronous speed; what our figure leaves out is the last 5 % of the run-up: 0.05² and little more.
      const end = run.steps.at(-1)!.y1[run.circuit.index.rotorHeat]!;
      expectClose(end / (0.5 * MACHINE_3_HP.inertia * SYNCHRONOUS ** 2), all, SIX_DIGITS);
      expectClose(metrics.reversalRotorHeatMultiple?.value, all - 0.05 ** 2, 0, 5e-4);
    },
  );

  it('gives the torque, crest, times and heats of the 50 hp machine at a supply angle of zero', () => {
    const { metrics } = swap(50, 0, 1.2);
    expectClose(metrics.plugMinimumTorque?.value, -4866.63, SIX_DIGITS);
    expectClose(metrics.plugMaximumTorque?.value, 13.593, 1e-4);
    expectClose(metrics.plugPeakCurrent?.value, 1560.303, SIX_DIGITS);
    expectClose(metrics.stopTimeFromTouch?.value, 0.6884, 0, 1e-6);
    expectClose(metrics.reversalTime?.value, 1.165505, 0, 1e-6);
    expectClose(metrics.plugStatorHeat?.value, 32370.87, 1e-6);
    expectClose(metrics.plugRotorHeat?.value, 81069.41, 1e-6);
  });
});

describe('ideal opening, dead time, reclosing in reverse (table computed with scipy)', () => {
  it('gives the residual voltage, torque and current of the 50 hp machine after 20 ms at angle zero', () => {
    const reclose = (angle: number) =>
      runPhaseVariableModel(
        scenarioOf({
          title: '',
          machine: MACHINE_50_HP,
          lineVoltage: 460,
          angle,
          initial: 'runningForward',
          starter: { ...IDEAL, changeoverDelay: 0.02 },
          actions: [{ at: 0, do: 'startReverse' }],
          endTime: 0.17,
        }),
      );
    // The table's residual EMF is that of rotation alone; the terminal voltage holds the decay of the flux as well,
    // which adds 1/(ω·T) at right angles (T = 0.15569 s, the open-circuit time constant in the same table).
    const decay = 1 / (OMEGA * 0.15569);
    // Turning the supply forward by φ turns the reversed supply back by φ and the residual voltage on by φ.
    const lead = reclose(0).metrics.residualAngle?.value ?? Number.NaN;
    const { metrics, run } = reclose((lead + Math.atan(decay)) / 2);
    expectClose(metrics.residualAngle?.value, -Math.atan(decay), 0, 1e-8);
    expectClose((metrics.residualVoltage?.value ?? Number.NaN) / Math.hypot(1, decay), 0.8402, 0, 5e-5);
    expectClose(metrics.plugMinimumTorque?.value, -4206.14, SIX_DIGITS);
    const size = (y: Float64Array) => (2 / 3) * (y[0]! ** 2 + y[1]! ** 2 + y[2]! ** 2);
    const largest = runReader(run).extreme(
      0.02,
      0.17,
      { value: size, rate: (y, f) => (4 / 3) * (y[0]! * f[0]! + y[1]! * f[1]! + y[2]! * f[2]!) },
      1,
    );
    expectClose(Math.sqrt(largest?.value ?? Number.NaN), 1513.56, SIX_DIGITS);
  });
});

describe('locked rotor', () => {
  const locked = { inertia: 0, torques: [{ kind: 'friction', torque: 0, breakaway: 1e6 }] } as const;

  it('gives the first crest and the torque extremes of the matrix exponential (3 hp, supply angle 90°)', () => {
    const { metrics } = runPhaseVariableModel(
      scenarioOf({
        title: '',
        angle: Math.PI / 2,
        load: locked,
        starter: IDEAL,
        actions: [{ at: 0, do: 'startForward' }],
        endTime: 0.1,
      }),
    );
    expectClose(metrics.startPeakCurrent?.value, 105.094, SIX_DIGITS);
    expectClose(metrics.startPeakCurrent?.time, 6.317e-3, 0, 1e-6);
    expectClose(metrics.startMaximumTorque?.value, 134.749, SIX_DIGITS);
    expectClose(metrics.startMinimumTorque?.value, -24.65, 3e-5);
  });

  it('clears one pole at its zero and the other two at √3/2 of the crest a quarter period later', () => {
    const OPEN = 3;
    const { run } = runPhaseVariableModel(
      scenarioOf({
        title: '',
        load: locked,
        starter: { ...IDEAL, poles: 'arcing' },
        actions: [
          { at: 0, do: 'startForward' },
          { at: OPEN, do: 'coast' },
        ],
        endTime: OPEN + 0.02,
      }),
      COARSE,
    );
    // The offset has decayed with 4.03 1/s for 3 s: 6e-6 of the crest is left; it shifts zeros by as many radians.
    const OFFSET = 1e-5;
    const rms = cycleRms(run, OPEN, 0);
    expectClose(rms, 65.739, 2e-5);
    expectClose(run.circuit.torque(runReader(run).stateAt(OPEN)), 52.972, 5e-5);
    const crest = Math.SQRT2 * rms;
    const poles = run.openings[0]!.poles;
    const cleared = poles.map((pole) => pole.clearedAt!).sort((a, b) => a - b);
    expectClose(cleared[1]! - cleared[0]!, 1 / 240, 0, OFFSET / OMEGA);
    expectClose(cleared[2], cleared[1]!, 0, 1e-12);
    const state = runReader(run).stateAt(cleared[0]!);
    const sizes = [0, 1, 2].map((k) => Math.abs(state[k]!)).sort((a, b) => a - b);
    expectClose(sizes[1], (Math.sqrt(3) / 2) * crest, OFFSET);
    expectClose(sizes[2], (Math.sqrt(3) / 2) * crest, OFFSET);
    // Arc charges by hand: the first pole breaks the end of a half wave, the others theirs and the two-pole current.
    const toZero = OMEGA * (cleared[0]! - OPEN);
    const charges = poles.map((pole) => pole.arcCharge).sort((a, b) => a - b);
    expectClose(charges[0], (crest / OMEGA) * (1 - Math.cos(toZero)), 1e-4);
    const others = [Math.PI / 3, (2 * Math.PI) / 3].map(
      (lag) => (crest / OMEGA) * (Math.abs(Math.cos(lag - toZero) - Math.cos(lag)) + Math.sqrt(3) / 2),
    );
    others.sort((a, b) => a - b);
    expectClose(charges[1], others[0]!, 1e-4);
    expectClose(charges[2], others[1]!, 1e-4);
  });
});

// I = V/|Z(s) + Z(2 − s)|, mean torque T(s) − T(2 − s) of the sequence currents: computed, not published.
describe('two poles at constant speed, 50 hp', () => {
  it.each([
    { slip: 1, current: 341.367, torque: 0, end: 3 },
    { slip: 0.05, current: 94.0438, torque: 177.9013, end: 1 },
    { slip: 1.5, current: 322.4454, torque: -159.9301, end: 1.5 },
  ])(
    'carry the current and the mean torque of the two sequence circuits at slip $slip',
    ({ slip, current, torque, end }) => {
      const HUGE = 1e8;
      const NEVER = 1e3;
      const { run } = runPhaseVariableModel(
        scenarioOf({
          title: '',
          machine: MACHINE_50_HP,
          lineVoltage: 460,
          load: { inertia: HUGE, torques: [] },
          starter: { ...IDEAL, poles: 'arcing', closingScatter: [NEVER, 0, 0] },
          actions: [{ at: 0, do: 'startForward' }],
          endTime: end,
        }),
        { ...COARSE, initialSpeed: SYNCHRONOUS * (1 - slip) },
      );
      const state = runReader(run).stateAt(end);
      expect(state[0]).toBe(0);
      expectClose(cycleRms(run, end, 1), current, 2e-6);
      expectClose(cycleRms(run, end, 2), current, 2e-6);
      // The torque swings at twice supply frequency: equally spaced values over a period have its exact mean.
      const SAMPLES = 12;
      let mean = 0;
      for (let k = 0; k < SAMPLES; k++) {
        mean += run.circuit.torque(runReader(run).stateAt(end - k / SAMPLES / 60)) / SAMPLES;
      }
      expectClose(mean, torque, 2e-6, 5e-4);
    },
  );
});

describe('no poles', () => {
  it('lets the terminal voltage decay with (Llr + Lm)/Rr while the shaft coasts without load', () => {
    const { run } = runPhaseVariableModel(
      scenarioOf({
        title: '',
        initial: 'runningForward',
        actions: [{ at: 0.01, do: 'coast' }],
        endTime: 0.25,
      }),
    );
    const size = (t: number) => {
      const point = runReader(run).pointAt(t, 'left');
      return terminalVector(run.circuit.terminalVoltages(point.y, point.f)).size;
    };
    // 3 hp: T = 26.884 Ω/377 rad/s/0.816 Ω = 0.08739 s.
    const T = (0.754 + 26.13) / OMEGA / 0.816;
    expectClose(size(0.2) / size(0.06), Math.exp(-0.14 / T), 1e-9);
  });
});

describe('the comparison runs', () => {
  it('include a first clearing by each of the three poles', () => {
    const first = COMPARISON_RUNS.slice(0, 3).map((scenario) => {
      const { events } = runPhaseVariableModel(
        { ...scenario, solver: { ...scenario.solver, endTime: 0.64 } },
        { tolerance: 1e-8 },
      );
      return events.find((event) => event.kind === 'poleClears')?.phase;
    });
    expect(first).toEqual(['A', 'B', 'C']);
  });

  it('do not depend on the step control: ten times coarser changes no figure by 2e-6', () => {
    const scenario = COMPARISON_RUNS[8]!;
    const fine = runPhaseVariableModel(scenario).metrics;
    const coarse = runPhaseVariableModel(scenario, COARSE).metrics;
    for (const [key, metric] of Object.entries(fine)) {
      if (metric.value === null || key === 'ledgerResidual') continue;
      expectClose(coarse[key]?.value, metric.value, 2e-6, 1e-9, key);
    }
    expect(fine.ledgerResidual?.value).toBeLessThan(1e-10);
  });
});
