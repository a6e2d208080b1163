import { MACHINE_3_HP, MACHINE_TWO_CAGES, type Parts, scenarioOf } from './comparisonRuns.ts';
import type { ScenarioShape } from './scenarioShape.ts';

/** Ohms at 60 Hz to henries. */
const henry = (ohms: number) => ohms / (2 * Math.PI * 60);

/** The 3 hp machine with a third of its inertia: whole runs in half a second. Elements are invented but of ordinary size. */
const LIGHT: ScenarioShape['machine'] = { ...MACHINE_3_HP, inertia: 0.03 };
const DELTA: ScenarioShape['machine'] = { ...LIGHT, connection: 'delta' };

const CORE = { R: 260, L: henry(40) };
/** At rated flux (0.48 Wb) a little beyond the knee. */
const MAIN = [
  { current: 5, flux: 0.345 },
  { current: 8, flux: 0.46 },
  { current: 14, flux: 0.55 },
  { current: 30, flux: 0.63 },
];
/** Saturates at four times rated current. */
const LEAKAGE = { stator: { current: 40, remaining: 0.6 }, cages: [{ current: 30, remaining: 0.5 }] };
const FRICTION = { kind: 'friction', torque: 1, breakaway: 1.4 } as const;

/** Start, plug at 0.22 s, end at 0.5 s. */
const run = (parts: Partial<Parts> & { readonly title: string }): ScenarioShape =>
  scenarioOf({
    machine: LIGHT,
    actions: [
      { at: 0, do: 'startForward' },
      { at: 0.22, do: 'plug' },
    ],
    endTime: 0.5,
    load: { inertia: 0, torques: [FRICTION] },
    ...parts,
  });

/** Whole runs with elements of the real machine, its lines and its shaft, on which every metric of both formulations is compared. */
export const ELEMENT_RUNS: readonly ScenarioShape[] = [
  run({ title: 'iron loss', angle: 0.3, machine: { ...LIGHT, core: CORE } }),
  run({ title: 'saturation of the main flux', angle: 1.1, machine: { ...LIGHT, mainSaturation: MAIN } }),
  run({
    title: 'saturation of the leakage fluxes',
    angle: 0.7,
    machine: { ...LIGHT, leakageSaturation: LEAKAGE },
  }),
  run({
    title: 'cable, resistors in the lines until they are bypassed',
    angle: 2.2,
    cable: { resistance: 0.08, inductance: henry(0.03) },
    starter: {
      lineResistors: { resistance: 0.9, closingTime: 0.015, openingTime: 0.008, bypassAfter: 0.05 },
    },
  }),
  run({
    title: 'resistors at the slip rings',
    angle: 1.5,
    machine: {
      ...LIGHT,
      rotorResistors: {
        starting: [
          { resistance: 2.5, duration: 0.06 },
          { resistance: 0.8, duration: 0.05 },
        ],
        plugging: 3,
      },
    },
  }),
  run({
    title: 'delta machine plugged in star, winding A from terminal A to B',
    angle: 0.6,
    machine: DELTA,
    starter: { plugConnection: 'star', windingOrder: 'AB', changeoverDelay: 0.035 },
    endTime: 0.75,
  }),
  run({
    title: 'delta machine plugged in star, winding A from terminal A to C, with saturation and iron loss',
    angle: 2.9,
    machine: { ...DELTA, mainSaturation: MAIN, leakageSaturation: LEAKAGE, core: CORE },
    starter: { plugConnection: 'star', windingOrder: 'AC', changeoverDelay: 0.035 },
    endTime: 0.75,
  }),
  run({
    title: 'supply phase lost while plugging',
    angle: 0.9,
    starter: { faults: [{ kind: 'lostPhase', phase: 'B', from: 0.33 }] },
  }),
  run({
    title: 'supply phase lost while starting',
    angle: 1.9,
    starter: { faults: [{ kind: 'lostPhase', phase: 'C', from: 0.1 }], minimumArcingTime: 0.002 },
  }),
  run({
    title: 'common pole of the forward contactor welded',
    angle: 0.1,
    starter: { faults: [{ kind: 'weldedPole', contactor: 'forward', pole: 'A' }] },
  }),
  run({
    title: 'pole of the reversing contactor dead, scatter',
    angle: 2.4,
    starter: {
      faults: [{ kind: 'deadPole', contactor: 'reverse', pole: 'B' }],
      closingScatter: [0, 0.0013, 0.0009],
      openingScatter: [0.0007, 0, 0.0016],
    },
  }),
  run({
    title: 'gear with losses, hoist',
    angle: 1.3,
    load: {
      inertia: 0.6,
      gear: { ratio: 8, efficiency: 0.85, backwardEfficiency: 0.7 },
      torques: [
        { kind: 'gravity', torque: 18 },
        { kind: 'friction', torque: 6, breakaway: 30 },
      ],
    },
    endTime: 0.55,
  }),
  run({
    title: 'two masses with play and a gear',
    angle: 2,
    load: {
      inertia: 0.3,
      gear: { ratio: 4, efficiency: 0.9, backwardEfficiency: 0.8 },
      coupling: { stiffness: 900, damping: 0.6, backlash: 0.02 },
      torques: [{ kind: 'friction', torque: 4, breakaway: 5 }],
    },
    endTime: 0.5,
  }),
  run({
    title: 'bearings, windage, constant power and tables',
    angle: 0.8,
    machine: { ...LIGHT, mechanicalLoss: { friction: 0.3, windage: 4e-6 } },
    load: {
      inertia: 0.004,
      torques: [
        { kind: 'constantPower', power: 150, baseSpeed: 60 },
        {
          kind: 'table',
          mirrored: true,
          points: [
            { speed: 0, torque: 1.2 },
            { speed: 40, torque: 0.5 },
            { speed: 150, torque: 1.6 },
          ],
        },
        {
          kind: 'table',
          mirrored: false,
          points: [
            { speed: -50, torque: -0.3 },
            { speed: 20, torque: 0.1 },
            { speed: 190, torque: 0.8 },
          ],
        },
      ],
    },
  }),
  run({
    title: 'ideal poles: delta machine with saturation and iron loss running at t = 0, plugged in star',
    angle: 2,
    machine: { ...DELTA, mainSaturation: MAIN, leakageSaturation: LEAKAGE, core: CORE },
    starter: { poles: 'ideal', plugConnection: 'star', openingScatter: [0.002, 0, 0.001] },
    initial: 'runningForward',
    load: {
      inertia: 0.2,
      gear: { ratio: 5, efficiency: 0.9, backwardEfficiency: 0.8 },
      coupling: { stiffness: 800, damping: 0.5, backlash: 0.01 },
      torques: [{ kind: 'friction', torque: 8, breakaway: 10 }],
    },
    actions: [{ at: 0.011, do: 'plug' }],
    endTime: 0.4,
  }),
  run({
    title: 'full reversal with everything at once',
    angle: 1.6,
    source: { resistance: 0.04, inductance: henry(0.06) },
    cable: { resistance: 0.05, inductance: henry(0.02) },
    machine: {
      ...MACHINE_TWO_CAGES,
      inertia: 0.03,
      mainSaturation: MAIN,
      leakageSaturation: { ...LEAKAGE, cages: [null, { current: 30, remaining: 0.5 }] },
      core: CORE,
      mechanicalLoss: { friction: 0.2, windage: 4e-6 },
    },
    load: {
      inertia: 0.1,
      gear: { ratio: 3, efficiency: 0.9, backwardEfficiency: 0.8 },
      coupling: { stiffness: 700, damping: 0.5, backlash: 0 },
      torques: [
        { kind: 'fan', coefficient: 2e-3 },
        { kind: 'friction', torque: 2, breakaway: 3 },
      ],
    },
    starter: {
      zeroSpeedSwitch: null,
      lineResistors: { resistance: 0.3, closingTime: 0.012, openingTime: 0.008, bypassAfter: 0.1 },
    },
    endTime: 0.65,
  }),
];
