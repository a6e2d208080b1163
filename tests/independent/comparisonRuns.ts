import type { ScenarioShape } from './scenarioShape.ts';

type Machine = ScenarioShape['machine'];
type Starter = ScenarioShape['starter'];

/** Ohms at 60 Hz to henries. */
const henry = (ohms: number) => ohms / (2 * Math.PI * 60);

/** Only the speed of the nameplate is given, in r/min; no figure compared depends on it. */
const ratedAt = (rpm: number) => ({
  current: null,
  torque: null,
  power: null,
  speed: (rpm * 2 * Math.PI) / 60,
});

/**
 * The 3 hp and 50 hp machines of P. C. Krause, O. Wasynczuk, S. D. Sudhoff, Analysis of Electric Machinery, table of
 * induction machine parameters (star, 4 poles, 60 Hz; 220 V and 460 V between lines).
 */
export const MACHINE_3_HP: Machine = {
  connection: 'star',
  polePairs: 2,
  Rs: 0.435,
  Lls: henry(0.754),
  Lm: henry(26.13),
  cages: [{ Rr: 0.816, Llr: henry(0.754) }],
  inertia: 0.089,
  rated: ratedAt(1710),
};

export const MACHINE_50_HP: Machine = {
  connection: 'star',
  polePairs: 2,
  Rs: 0.087,
  Lls: henry(0.302),
  Lm: henry(13.08),
  cages: [{ Rr: 0.228, Llr: henry(0.302) }],
  inertia: 1.662,
  rated: ratedAt(1705),
};

/** The 3 hp machine with its cage divided into a resistive outer and a deep inner one (invented values). */
export const MACHINE_TWO_CAGES: Machine = {
  ...MACHINE_3_HP,
  cages: [
    { Rr: 1.9, Llr: henry(0.55) },
    { Rr: 1.1, Llr: henry(1.6) },
  ],
};

export const STARTER: Starter = {
  closingTime: 0.018,
  openingTime: 0.012,
  closingScatter: [0, 0, 0],
  openingScatter: [0, 0, 0],
  changeoverDelay: 0.03,
  changeoverGivenAs: 'delay',
  poles: 'arcing',
  minimumArcingTime: 0,
  exchangedPhases: 'BC',
  zeroSpeedSwitch: { dropOutSpeed: 6, pickUpSpeed: 12, delay: 0.004 },
};

/** What differs from the run that `scenarioOf` makes of nothing. */
export interface Parts {
  readonly title: string;
  readonly lineVoltage?: number;
  readonly angle?: number;
  readonly source?: { readonly resistance: number; readonly inductance: number };
  readonly cable?: { readonly resistance: number; readonly inductance: number };
  readonly machine?: Machine;
  readonly load?: ScenarioShape['load'];
  readonly starter?: Partial<Starter>;
  readonly initial?: ScenarioShape['initial'];
  readonly actions: ScenarioShape['actions'];
  readonly endTime: number;
}

/** A scenario from the parts that differ: 3 hp machine at 220 V, 60 Hz, no load, from rest. */
export function scenarioOf(parts: Parts): ScenarioShape {
  return {
    schemaVersion: 1,
    title: parts.title,
    description: '',
    supply: {
      lineVoltage: parts.lineVoltage ?? 220,
      frequency: 60,
      angle: parts.angle ?? 0,
      sourceResistance: parts.source?.resistance ?? 0,
      sourceInductance: parts.source?.inductance ?? 0,
      ...(parts.cable && { cable: parts.cable }),
    },
    machine: parts.machine ?? MACHINE_3_HP,
    load: parts.load ?? { inertia: 0, torques: [] },
    starter: { ...STARTER, ...parts.starter },
    initial: parts.initial ?? 'rest',
    actions: parts.actions,
    solver: { relativeTolerance: 1e-9, endTime: parts.endTime, maxSteps: 1_000_000, frame: 'auto' },
  };
}

const startThenPlug = (plugAt: number): ScenarioShape['actions'] => [
  { at: 0, do: 'startForward' },
  { at: plugAt, do: 'plug' },
];

/** Whole runs on which every metric of both formulations is compared. */
export const COMPARISON_RUNS: readonly ScenarioShape[] = [
  scenarioOf({
    title: 'no load, pole A clears first',
    angle: 0.4,
    actions: startThenPlug(0.603),
    endTime: 1.1,
  }),
  scenarioOf({
    title: 'no load, pole B clears first',
    actions: startThenPlug(0.6),
    endTime: 1.1,
  }),
  scenarioOf({
    title: 'no load, pole C clears first',
    actions: startThenPlug(0.606),
    endTime: 1.1,
  }),
  scenarioOf({
    title: 'fan and dry friction, held at standstill after the stop',
    angle: 0.9,
    load: {
      inertia: 0.05,
      torques: [
        { kind: 'friction', torque: 1.5, breakaway: 2.5 },
        { kind: 'fan', coefficient: 2.2e-4 },
        { kind: 'viscous', coefficient: 0.004 },
      ],
    },
    actions: startThenPlug(0.85),
    endTime: 1.5,
  }),
  scenarioOf({
    title: 'two cages',
    angle: 2.1,
    machine: MACHINE_TWO_CAGES,
    load: { inertia: 0, torques: [{ kind: 'friction', torque: 1, breakaway: 1.4 }] },
    actions: startThenPlug(0.55),
    endTime: 1.0,
  }),
  scenarioOf({
    title: 'source impedance',
    angle: 0.3,
    source: { resistance: 0.06, inductance: henry(0.11) },
    load: { inertia: 0, torques: [{ kind: 'viscous', coefficient: 0.03 }] },
    starter: { exchangedPhases: 'CA' },
    actions: startThenPlug(0.7),
    endTime: 1.3,
  }),
  scenarioOf({
    title: 'gravity load, lowering after the stop',
    load: {
      inertia: 0.02,
      torques: [
        { kind: 'gravity', torque: 3.5 },
        { kind: 'friction', torque: 0.8, breakaway: 1 },
      ],
    },
    actions: startThenPlug(0.8),
    endTime: 1.4,
  }),
  scenarioOf({
    title: 'full reversal without zero-speed switch, phases A and B exchanged',
    angle: 1.7,
    load: { inertia: 0, torques: [{ kind: 'fan', coefficient: 1.5e-4 }] },
    starter: { exchangedPhases: 'AB', zeroSpeedSwitch: null },
    actions: [
      { at: 0, do: 'startForward' },
      { at: 0.6, do: 'startReverse' },
    ],
    endTime: 1.5,
  }),
  scenarioOf({
    title: 'closing and opening scatter between poles, minimum arcing time',
    angle: 0.2,
    starter: {
      closingScatter: [0.0011, 0, 0.0023],
      openingScatter: [0.0008, 0.0017, 0],
      minimumArcingTime: 0.003,
    },
    load: { inertia: 0, torques: [{ kind: 'friction', torque: 1, breakaway: 1.2 }] },
    actions: startThenPlug(0.65),
    endTime: 1.15,
  }),
  scenarioOf({
    title: 'started in reverse and plugged forward, phases A and B exchanged',
    angle: 2.6,
    load: {
      inertia: 0.01,
      torques: [
        { kind: 'fan', coefficient: 2e-4 },
        { kind: 'friction', torque: 0.5, breakaway: 0.7 },
      ],
    },
    starter: { exchangedPhases: 'AB' },
    actions: [
      { at: 0, do: 'startReverse' },
      { at: 0.62, do: 'plug' },
    ],
    endTime: 1.15,
  }),
  scenarioOf({
    title: '50 hp running at t = 0 under load',
    lineVoltage: 460,
    machine: MACHINE_50_HP,
    load: {
      inertia: 0.4,
      torques: [
        { kind: 'friction', torque: 20, breakaway: 30 },
        { kind: 'fan', coefficient: 3e-3 },
      ],
    },
    initial: 'runningForward',
    starter: { exchangedPhases: 'CA' },
    actions: [{ at: 0.0137, do: 'plug' }],
    endTime: 1,
  }),
];
