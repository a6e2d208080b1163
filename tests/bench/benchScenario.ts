import type { Scenario } from '../../src/scenario/scenario.ts';

const OMEGA = 2 * Math.PI * 60;

/** Plug stop of the 50 hp machine: Krause, Analysis of Electric Machinery, 50 hp machine; inertia of rotor and load together three times the rotor's. */
export function benchScenario(
  relativeTolerance: number,
  endTime: number,
  frame: 'auto' | 'stationary',
): Scenario {
  return {
    schemaVersion: 1,
    title: 'Benchmark',
    description: '',
    supply: { lineVoltage: 460, frequency: 60, angle: 0, sourceResistance: 0, sourceInductance: 0 },
    machine: {
      connection: 'star',
      polePairs: 2,
      Rs: 0.087,
      Lls: 0.302 / OMEGA,
      Lm: 13.08 / OMEGA,
      cages: [{ Rr: 0.228, Llr: 0.302 / OMEGA }],
      inertia: 1.662,
      rated: { power: 37_285, current: null, torque: null, speed: null },
    },
    load: { inertia: 2 * 1.662, torques: [] },
    starter: {
      closingTime: 0.02,
      openingTime: 0.01,
      closingScatter: [0, 0, 0],
      openingScatter: [0, 0, 0],
      changeoverDelay: 0.02,
      changeoverGivenAs: 'delay',
      poles: 'arcing',
      minimumArcingTime: 0,
      exchangedPhases: 'BC',
      zeroSpeedSwitch: null,
    },
    initial: 'rest',
    actions: [
      { at: 0, do: 'startForward' },
      { at: 1.49, do: 'plug' },
    ],
    solver: { relativeTolerance, endTime, maxSteps: 1_000_000, frame },
  };
}
