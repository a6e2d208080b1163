import type { RunResult } from '../../../src/measure/result.ts';
import type { Estimation } from '../../../src/scenario/nameplate.ts';
import type { Scenario } from '../../../src/scenario/scenario.ts';
import type { PlugBands } from '../../../src/survey/plugBands.ts';
import { fakeMetrics, fakeRun, fakeScenario } from './fakeRun.ts';

/** The made-up scenario with every element a scenario can have. The numbers mean nothing. */
export function fullScenario(): Scenario {
  const plain = fakeScenario();
  return {
    ...plain,
    supply: { ...plain.supply, cable: { resistance: 0.012, inductance: 3e-5 } },
    machine: {
      ...plain.machine,
      connection: 'delta',
      mainSaturation: [
        { current: 12, flux: 0.7 },
        { current: 30, flux: 1.1 },
      ],
      leakageSaturation: { stator: { current: 220, remaining: 0.6 }, cages: [null] },
      core: { R: 95, L: 0.012 },
      mechanicalLoss: { friction: 1.2, windage: 4e-4 },
      rotorResistors: {
        starting: [
          { resistance: 0.5, duration: 0.6 },
          { resistance: 0.2, duration: 0.4 },
        ],
        plugging: 0.9,
      },
    },
    load: {
      inertia: 12,
      gear: { ratio: 4, efficiency: 0.96, backwardEfficiency: 0.94 },
      coupling: { stiffness: 25000, damping: 14, backlash: 0.005 },
      torques: [
        ...plain.load.torques,
        { kind: 'constantPower', power: 6000, baseSpeed: 20 },
        {
          kind: 'table',
          mirrored: true,
          points: [
            { speed: 0, torque: 10 },
            { speed: 30, torque: 40 },
          ],
        },
      ],
    },
    starter: {
      ...plain.starter,
      lineResistors: { resistance: 0.7, closingTime: 0.021, openingTime: 0.013, bypassAfter: 0.25 },
      plugConnection: 'star',
      windingOrder: 'AC',
      faults: [
        { kind: 'lostPhase', phase: 'A', from: 0.8 },
        { kind: 'weldedPole', contactor: 'forward', pole: 'B' },
        { kind: 'deadPole', contactor: 'reverse', pole: 'C' },
      ],
    },
  };
}

/** The made-up run with an elastic coupling and the figures that belong to it. */
export function elasticRun(): RunResult {
  const plain = fakeScenario();
  const { coupling } = fullScenario().load;
  const scenario: Scenario = { ...plain, load: { ...plain.load, coupling: coupling! } };
  const metrics = fakeMetrics();
  return fakeRun({
    scenario,
    metrics: {
      ...metrics,
      plugCouplingTorque: {
        definition: 'Largest torque in the coupling.',
        value: -812,
        unit: 'N·m',
        time: 1.575,
        multiple: { value: -3.46, of: 'torque at rated output' },
      },
      torsionalFrequency: { definition: 'Natural frequency.', value: 21.5, unit: 'Hz' },
    },
  });
}

/** An estimation with given items, one from a table, one assumed, a limit that is kept, and one that nothing was aimed at. */
export function fakeEstimation(): Estimation {
  const item = (name: string, unit: string, target: number, reproduced: number, source: string) => ({
    name,
    unit,
    target,
    reproduced,
    kind: 'value' as const,
    error: (reproduced - target) / target,
    source,
  });
  return {
    from: 'nameplate',
    items: [
      item('rated current', 'A', 62.8, 62.9, 'given'),
      item('efficiency', '1', 0.92, 0.9201, 'given'),
      item('locked-rotor torque', 'N·m', 400, 388, 'IEC 60034-12, design N'),
      item('breakdown torque', 'N·m', 610, 612, 'assumed: typical'),
      {
        ...item('locked-rotor apparent power', 'VA', 400000, 371000, 'IEC 60034-12, design N'),
        kind: 'most',
        error: null,
      },
      {
        name: 'locked-rotor power factor',
        unit: '1',
        target: null,
        kind: 'value',
        reproduced: 0.41,
        error: null,
        source: 'not stated',
      },
    ],
    misfit: 0.0174,
    remarks: ['The inertia was not stated.'],
  };
}

/** Ranges of two key numbers and of one other figure. */
export function fakeBands(): PlugBands {
  const from = { lowFrom: 'slip 20 % below', highFrom: 'locked-rotor current 20 % above' };
  return {
    members: 9,
    sentence: 'Locked-rotor current and slip were varied.',
    bands: [
      { key: 'plugPeakCurrent', low: 1180, high: 1630, ...from },
      { key: 'plugMinimumTorque', low: -4000, high: -2900, ...from },
      { key: 'plugI2tA', low: 41000, high: 52000, ...from },
    ],
  };
}
