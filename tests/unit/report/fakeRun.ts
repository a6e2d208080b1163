import { circuitOf } from '../../../src/machine/circuit.ts';
import { NOTHING_INSERTED } from '../../../src/machine/inserted.ts';
import { noPoles } from '../../../src/machine/noPoles.ts';
import { METRIC_KEYS, type Metric, type MetricKey, type Metrics } from '../../../src/measure/metric.ts';
import type { RunResult } from '../../../src/measure/result.ts';
import type { PhaseName, Scenario } from '../../../src/scenario/scenario.ts';
import { initialShaft } from '../../../src/shaft/initialShaft.ts';
import { loadCoefficients } from '../../../src/shaft/loadTorque.ts';
import { shaftOf } from '../../../src/shaft/shaft.ts';
import { shaftPowers } from '../../../src/shaft/shaftPowers.ts';
import type { Segment } from '../../../src/simulate/segment.ts';
import { stateSize } from '../../../src/simulate/segment.ts';
import { isSuccessful } from '../../../src/simulate/status.ts';
import {
  evenInstants,
  type Point,
  type RunEvent,
  type RunEventKind,
  type Trajectory,
} from '../../../src/simulate/trajectory.ts';

/**
 * A run made of closed formulas with the shapes of a real one (start, plug, stop by switch), so that the report can
 * be tested without integrating anything. The numbers mean nothing; no test reads physics from them.
 */
export const TOUCH = 0.025;
export const PARTING = 1.5;
export const REVERSE = 1.545;
export const ZERO = 1.98;
export const END = 2.25;
const OMEGA = 2 * Math.PI * 60;
const TOP = 187.2;

export function fakeScenario(title = 'Tilting table of a foundry, 37 kW'): Scenario {
  return {
    schemaVersion: 1,
    title,
    description: 'Invented for tests.',
    supply: { lineVoltage: 460, frequency: 60, angle: 0, sourceResistance: 0.004, sourceInductance: 5e-5 },
    machine: {
      connection: 'star',
      polePairs: 2,
      Rs: 0.087,
      Lls: 0.302 / OMEGA,
      Lm: 13.08 / OMEGA,
      cages: [{ Rr: 0.228, Llr: 0.302 / OMEGA }],
      inertia: 1.662,
      rated: { current: null, torque: null, power: 37285, speed: 178.5 },
    },
    load: { inertia: 0.8, torques: [{ kind: 'friction', torque: 30, breakaway: 35 }] },
    starter: {
      closingTime: 0.025,
      openingTime: 0.01,
      closingScatter: [0, 0, 0],
      openingScatter: [0, 0, 0],
      changeoverDelay: 0.03,
      changeoverGivenAs: 'delay',
      poles: 'arcing',
      minimumArcingTime: 0,
      exchangedPhases: 'BC',
      zeroSpeedSwitch: { dropOutSpeed: 8, pickUpSpeed: 20, delay: 0.01 },
    },
    initial: 'rest',
    actions: [
      { at: 0, do: 'startForward' },
      { at: 1.49, do: 'plug' },
    ],
    solver: { relativeTolerance: 1e-8, endTime: 'auto', maxSteps: 200000, frame: 'auto' },
  };
}

function pole(
  t: number,
  kind: RunEventKind,
  contactor: 'forward' | 'reverse',
  phase: PhaseName,
): Omit<RunEvent, 'speed'> {
  const verb = { poleTouches: 'touches', poleParts: 'parts', poleClears: 'clears at its current zero' }[
    kind as 'poleParts'
  ];
  return { t, kind, contactor, phase, text: `${contactor} pole ${phase} ${verb}` };
}

const UNMEASURED: readonly Omit<RunEvent, 'speed'>[] = [
  { t: 0, kind: 'action', text: 'start forward' },
  ...(['A', 'B', 'C'] as const).map((phase) => pole(TOUCH, 'poleTouches', 'forward', phase)),
  { t: 0.12, kind: 'switchCloses', text: 'zero-speed switch closes' },
  { t: 1.49, kind: 'action', text: 'plug' },
  ...(['A', 'B', 'C'] as const).map((phase) => pole(PARTING, 'poleParts', 'forward', phase)),
  pole(1.5023, 'poleClears', 'forward', 'B'),
  pole(1.5061, 'poleClears', 'forward', 'A'),
  pole(1.5061, 'poleClears', 'forward', 'C'),
  ...(['A', 'B', 'C'] as const).map((phase) => pole(REVERSE, 'poleTouches', 'reverse', phase)),
  { t: 1.955, kind: 'switchOpens', text: 'zero-speed switch opens' },
  ...(['A', 'B', 'C'] as const).map((phase) => pole(1.965, 'poleParts', 'reverse', phase)),
  pole(1.9671, 'poleClears', 'reverse', 'C'),
  pole(1.9713, 'poleClears', 'reverse', 'A'),
  pole(1.9713, 'poleClears', 'reverse', 'B'),
  { t: ZERO, kind: 'zeroSpeed', text: 'the shaft comes to rest' },
];

/** Nothing that reads these events looks at their speed. */
export const FAKE_EVENTS: readonly RunEvent[] = UNMEASURED.map((event) => ({ ...event, speed: 0 }));

function pointAt(t: number): Point {
  const speed =
    t < TOUCH
      ? 0
      : t < REVERSE
        ? TOP / (1 + Math.exp(-(t - 0.32) / 0.06))
        : t < ZERO
          ? TOP * (1 - ((t - REVERSE) / (ZERO - REVERSE)) ** 1.1)
          : 0;
  const live = (t >= TOUCH && t < 1.5061) || (t >= REVERSE && t < 1.9713);
  const since = t < REVERSE ? t - TOUCH : t - REVERSE;
  const sign = t < REVERSE ? 1 : -1;
  const slip = (sign * (188.5 - sign * speed)) / 188.5;
  const crest = live ? 30 + 560 * Math.min(1, Math.abs(slip) / 0.5) * (t < REVERSE ? 1 : 1.2) : 0;
  const offset = live ? (t < REVERSE ? 300 : 800) * Math.exp(-since / 0.02) : 0;
  const current = (k: number) =>
    crest * Math.cos(OMEGA * t * sign - k * 2.0944) -
    offset * Math.cos(OMEGA * (sign < 0 ? REVERSE : TOUCH) - k * 2.0944);
  const mean = live ? sign * 640 * ((2 * Math.abs(slip) * 0.38) / (slip * slip + 0.144)) : 0;
  const swing = live ? (t < REVERSE ? 900 : -3300) * Math.exp(-since / 0.025) * Math.sin(OMEGA * since) : 0;
  const voltage = live ? 0.97 * 375.6 : t < TOUCH || t > 1.9 ? 0 : 360 * Math.exp(-(t - 1.5061) / 0.155);
  return {
    t,
    iA: current(0),
    iB: current(1),
    iC: current(2),
    torque: mean + swing * (live ? 1 - Math.exp(-since / 0.002) : 0),
    loadTorque: speed > 0 ? 30 : 0,
    couplingTorque: live ? 0.4 * mean + 300 * Math.exp(-since / 0.15) * Math.sin(120 * since) : 0,
    loadSpeed: 0.99 * speed,
    speed,
    position: speed * 0.3,
    uAlpha: voltage * Math.cos(OMEGA * t),
    uBeta: sign * voltage * Math.sin(OMEGA * t),
    psiAlpha: 0,
    psiBeta: 0,
    psiRAlpha: 0,
    psiRBeta: 0,
  };
}

const COLUMNS = Object.keys(pointAt(0)) as (keyof Point)[];

const SPANS: readonly Pick<Segment, 't0' | 't1' | 'kind' | 'openPhase' | 'frame'>[] = [
  { t0: 0, t1: TOUCH, kind: 'none', openPhase: null, frame: 'rotor' },
  { t0: TOUCH, t1: 1.5023, kind: 'three', openPhase: null, frame: 'synchronous' },
  { t0: 1.5023, t1: 1.5061, kind: 'two', openPhase: 'B', frame: 'stationary' },
  { t0: 1.5061, t1: REVERSE, kind: 'none', openPhase: null, frame: 'rotor' },
  { t0: REVERSE, t1: 1.9671, kind: 'three', openPhase: null, frame: 'synchronous' },
  { t0: 1.9671, t1: 1.9713, kind: 'two', openPhase: 'C', frame: 'stationary' },
  { t0: 1.9713, t1: END, kind: 'none', openPhase: null, frame: 'rotor' },
];

export function fakeTrajectory(scenario: Scenario): Trajectory {
  const circuit = circuitOf(scenario.machine, scenario.supply);
  const model = noPoles(circuit);
  const shaft = shaftOf(scenario);
  const mode = initialShaft(shaft, 0).mode;
  const fixed = {
    held: false,
    position0: 0,
    steps: [],
    model,
    circuit,
    inserted: NOTHING_INSERTED,
    shaft,
    mode,
    load: loadCoefficients(shaft, mode),
    powers: shaftPowers(shaft, mode, loadCoefficients(shaft, mode)),
    size: stateSize(model, shaft),
  };
  return {
    scenario,
    status: { code: 'finished', time: END, message: 'Everything the actions asked for has happened.' },
    tStart: 0,
    tEnd: END,
    segments: SPANS.map((span) => ({ ...span, ...fixed })),
    events: FAKE_EVENTS,
    stats: { evaluations: 48213, steps: 612 },
    shaft,
    shortCircuit: null,
    interruptionLoss: 0,
    channels: [],
    thermal: null,
    commands: [
      { at: 0, do: 'startForward' },
      { at: 1.49, do: 'plug' },
    ],
    at: (t, side) => pointAt(side === 'left' ? t - 1e-12 : t),
    sample: (t0, t1, count) => sampledAt(evenInstants(t0, t1, count)),
    sampleAt: sampledAt,
  };
}

function sampledAt(instants: Float64Array): Record<keyof Point, Float64Array> {
  const points = Array.from(instants, pointAt);
  return Object.fromEntries(
    COLUMNS.map((name) => [name, Float64Array.from(points, (point) => point[name])]),
  ) as Record<keyof Point, Float64Array>;
}

const KNOWN: Partial<Record<MetricKey, Omit<Metric, 'definition'>>> = {
  startPeakCurrent: {
    value: 858.2,
    unit: 'A',
    time: 0.0335,
    phase: 'A',
    multiple: { value: 9.66, of: 'rated crest current' },
  },
  startMaximumTorque: {
    value: 1412,
    unit: 'N·m',
    time: 0.0297,
    multiple: { value: 6.02, of: 'rated torque' },
  },
  startMinimumTorque: {
    value: -310,
    unit: 'N·m',
    time: 0.0379,
    multiple: { value: -1.32, of: 'rated torque' },
  },
  startTime: { value: 0.512, unit: 's', time: 0.537 },
  startRotorHeat: { value: 49310, unit: 'J' },
  startRotorHeatMultiple: { value: 1.13, unit: '1' },
  plugPeakCurrent: {
    value: 1402.3,
    unit: 'A',
    time: 1.5529,
    phase: 'C',
    multiple: { value: 15.79, of: 'rated crest current' },
  },
  plugWorstCycleCurrent: {
    value: 612,
    unit: 'A',
    time: 1.548,
    phase: 'C',
    multiple: { value: 9.74, of: 'rated current' },
  },
  plugMinimumTorque: {
    value: -3420.6,
    unit: 'N·m',
    time: 1.5486,
    multiple: { value: -14.58, of: 'rated torque' },
  },
  plugMaximumTorque: { value: 1010, unit: 'N·m', time: 1.5575, multiple: { value: 4.3, of: 'rated torque' } },
  partingToTouch: { value: 0.045, unit: 's' },
  extinctionToTouch: { value: 0.0389, unit: 's' },
  residualVoltage: { value: 0.74, unit: '1', time: REVERSE },
  residualAngle: { value: 2.1, unit: 'rad', time: REVERSE },
  stopTimeFromParting: { value: ZERO - PARTING, unit: 's', time: ZERO },
  stopTimeFromTouch: { value: ZERO - REVERSE, unit: 's', time: ZERO },
  stopRevolutions: { value: 7.31, unit: '1' },
  plugRotorHeat: { value: 118400, unit: 'J' },
  plugRotorHeatMultiple: { value: 2.74, unit: '1' },
  plugToStartHeatRatio: { value: 2.4, unit: '1' },
  lowestTerminalVoltage: {
    value: 411.2,
    unit: 'V',
    time: 1.551,
    multiple: { value: 0.894, of: 'supply voltage' },
  },
  runPoleAClearingTime: { value: 0.0061, unit: 's', phase: 'A' },
  ledgerResidual: { value: 3.2e-9, unit: '1' },
};

export function fakeMetrics(): Metrics {
  return Object.fromEntries(
    METRIC_KEYS.map((key): [MetricKey, Metric] => [
      key,
      {
        definition: `What ${key} is, in words.`,
        ...(KNOWN[key] ?? { value: null, unit: '1', missing: 'not in this made-up run' }),
      },
    ]),
  ) as Record<MetricKey, Metric>;
}

export function fakeRun(overrides: Partial<RunResult> = {}): RunResult {
  const scenario = overrides.scenario ?? fakeScenario();
  const trajectory = fakeTrajectory(scenario);
  return {
    scenario,
    status: trajectory.status,
    trajectory,
    metrics: fakeMetrics(),
    ledger: {
      electricalIn: 289500,
      sourceLoss: 4100,
      cableLoss: 0,
      lineResistorLoss: 0,
      statorLoss: 99300,
      rotorLoss: [167700],
      rotorResistorLoss: 0,
      ironLoss: 0,
      magneticChange: 0,
      interruptionLoss: 0,
      airGapWork: 18400,
      kineticChange: 0,
      twistChange: 0,
      frictionLoss: 18400,
      windageLoss: 0,
      loadWork: 0,
      gearLoss: 0,
      couplingLoss: 0,
      throughput: 307900,
      residual: 3.2e-9,
    },
    operations: {
      start: { from: 0, to: PARTING - 0.01, direction: 1, touch: TOUCH },
      reversal: {
        command: PARTING - 0.01,
        to: trajectory.tEnd,
        outgoing: 'forward',
        incoming: 'reverse',
        direction: 1,
        parting: PARTING,
        touch: REVERSE,
        zero: null,
        switchOpening: null,
      },
      otherActions: 0,
    },
    usable: isSuccessful(overrides.status ?? trajectory.status),
    rated: {
      current: 62.8,
      torque: 234.6,
      speed: 178.5,
      slip: 0.0528,
      currentOrigin: 'circuitAtRatedPower',
      torqueOrigin: 'circuitAtRatedPower',
    },
    controlFindings: [],
    warnings: [],
    ...overrides,
  };
}
