import { circuitOf } from '../machine/circuit.ts';
import { type Inserted, NOTHING_INSERTED } from '../machine/inserted.ts';
import { steadyState, steadyStateOf } from '../machine/steadyState.ts';
import type { RunResult } from '../measure/result.ts';
import { steadyTorqueAt } from '../shaft/steadySpeed.ts';
import { type Closing, findPlugging } from './closings.ts';
import { computeExtent, keepExtremes, paddedDomain, pick } from './envelope.ts';
import type { FigureSpec, PointMark, Series } from './figureSpec.ts';
import { displayUnit, formatNumber, formatQuantity } from './formatQuantity.ts';
import { worstTorqueKey } from './keyNumbers.ts';
import { insertedWords, steadyCircuits } from './steadyCircuits.ts';
import { type FigureOptions, MOST_POINTS } from './timeFigure.ts';
import { readTraces, type Traces } from './traces.ts';

/** Points of each steady-state curve: the pull-out bend of a slip of 0.02 still gets ten of them. */
const CURVE_POINTS = 481;
/** Of a picture that follows a moving hand. */
const DRAFT_CURVE_POINTS = 121;
/** Speeds beyond synchronous speed that the curves cover, as a share of it. */
const BEYOND = 0.08;

/**
 * The torque–speed plane: what the machine really does, over what the equivalent circuit gives in the steady state
 * with either phase sequence, and over the load.
 */
export function torqueSpeedFigure(result: RunResult, options: FigureOptions): FigureSpec {
  const { trajectory, scenario } = result;
  const torqueUnit = displayUnit('N·m', { system: options.units });
  const speedUnit = displayUnit('rad/s', { system: options.units });
  const synchronous = (2 * Math.PI * scenario.supply.frequency) / scenario.machine.polePairs;
  const { tStart, tEnd } = trajectory;
  const traces = readTraces(trajectory, tStart, tEnd, options.units, options.density);
  const reach = computeExtent(traces.speed);
  const sync = synchronous * speedUnit.perSi;
  const reverses = reach[0] < -0.3 * sync;
  const domain: [number, number] = [
    Math.min(reverses ? -(1 + BEYOND) * sync : -0.25 * sync, 1.05 * reach[0]),
    Math.max((1 + BEYOND) * sync, 1.05 * reach[1]),
  ];
  const count = options.density === undefined ? CURVE_POINTS : DRAFT_CURVE_POINTS;
  const speeds = Float64Array.from(
    { length: count },
    (_, i) => domain[0] + ((domain[1] - domain[0]) * i) / (count - 1),
  );
  const steady = steadyCircuits(trajectory).map(({ sequence, inserted }) => ({
    form: 'line' as const,
    label: `steady, ${sequence === 1 ? 'forward' : 'reverse'}${insertedWords(inserted)}`,
    quantity: 'steadyTorque' as const,
    dash: sequence === 1 ? ('dash' as const) : ('dashdot' as const),
    x: speeds,
    y: steadyCurve(result, speeds, sequence, inserted, speedUnit.perSi, torqueUnit.perSi),
  }));
  const kept = keepExtremes(traces.torque, MOST_POINTS);
  const points = [...pointMarks(result, options), ...circuitMarks(result, options)];
  const series: Series[] = [
    ...steady,
    {
      form: 'line',
      label: 'this run',
      quantity: 'torque',
      dash: 'solid',
      x: pick(traces.speed, kept),
      y: pick(traces.torque, kept),
    },
    ...loadSeries(result, traces, kept, options),
  ];
  const extent = computeExtent(
    traces.torque,
    ...steady.map((curve) => curve.y),
    points.map((point) => point.y),
  );
  return {
    id: 'torque-speed',
    title: torqueSpeedTitle(result, findPlugging(trajectory)),
    note: 'Broken lines: steady state of the equivalent circuit with the forward and with the reverse phase sequence. Full line: the run itself; it leaves the steady curves wherever flux is trapped or carries an offset.',
    description:
      'Air-gap torque against speed: the run over the steady-state curves of both phase sequences.',
    x: { label: `Speed (${speedUnit.label})`, domain },
    panels: [
      {
        kind: 'lines',
        weight: 4,
        y: { label: `Air-gap torque (${torqueUnit.label})`, domain: paddedDomain(extent) },
        series,
        references: [{ y: result.rated.torque * torqueUnit.perSi, label: 'rated' }],
        points,
      },
    ],
    marks: [
      { x: sync, label: 'synchronous speed' },
      { x: 0, label: 'rest' },
      ...(reverses ? [{ x: -sync, label: 'synchronous speed, reverse' }] : []),
    ].sort((a, b) => a.x - b.x),
    bands: [],
  };
}

/**
 * Steady-state air-gap torque at a shaft speed (rad/s), N·m, positive forward, with the forward (1) or the reverse
 * (−1) phase sequence applied: T(s) with s = (ω_s − ω)/ω_s, or −T(s') with s' = (ω_s + ω)/ω_s.
 *
 * @param inserted resistors and winding connection
 */
export function sequenceTorque(
  result: RunResult,
  speed: number,
  sequence: 1 | -1,
  inserted: Inserted = NOTHING_INSERTED,
): number {
  const { supply, machine } = result.scenario;
  const synchronous = (2 * Math.PI * supply.frequency) / machine.polePairs;
  return (
    sequence * steadyState(machine, supply, (synchronous - sequence * speed) / synchronous, inserted).torque
  );
}

/** That torque at many speeds, both in displayed units. */
function steadyCurve(
  { scenario: { machine, supply } }: RunResult,
  speeds: Float64Array,
  sequence: 1 | -1,
  inserted: Inserted,
  speedPerSi: number,
  torquePerSi: number,
): Float64Array {
  const circuit = circuitOf(machine, supply, inserted);
  const synchronous = (2 * Math.PI * supply.frequency) / machine.polePairs;
  return speeds.map((speed) => {
    const slip = (synchronous - (sequence * speed) / speedPerSi) / synchronous;
    return sequence * steadyStateOf(circuit, supply, slip).torque * torquePerSi;
  });
}

function loadSeries(
  result: RunResult,
  traces: Traces,
  kept: readonly number[] | null,
  options: FigureOptions,
): Series[] {
  if (result.scenario.load.torques.length === 0) return [];
  // Behind an elastic coupling the load's torque does not act on the motor at once: its line at constant speed.
  if (result.scenario.load.coupling !== undefined) return [steadyLoad(result, traces, options)];
  return [
    {
      form: 'line',
      label: 'load',
      quantity: 'loadTorque',
      dash: 'dot',
      x: pick(traces.speed, kept),
      y: pick(traces.loadTorque, kept),
    },
  ];
}

/** Speeds at which the curves of one sequence are named, as shares of synchronous speed: one after the other. */
const NAMED_FROM = 0.12;
const NAMED_STEP = 0.17;

/** Names on the steady curves themselves where one sequence has several circuits: at their ends they lie too close. */
function circuitMarks(result: RunResult, options: FigureOptions): PointMark[] {
  const torque = displayUnit('N·m', { system: options.units }).perSi;
  const shown = displayUnit('rad/s', { system: options.units }).perSi;
  const { supply, machine } = result.scenario;
  const synchronous = (2 * Math.PI * supply.frequency) / machine.polePairs;
  const circuits = steadyCircuits(result.trajectory);
  return ([1, -1] as const).flatMap((sequence) => {
    const own = circuits.filter((circuit) => circuit.sequence === sequence);
    if (own.length < 2) return [];
    return own.map(({ inserted }, i): PointMark => {
      const speed = (NAMED_FROM + NAMED_STEP * i) * synchronous;
      return {
        x: speed * shown,
        y: sequenceTorque(result, speed, sequence, inserted) * torque,
        label: insertedWords(inserted).replace(/^, /u, '') || 'as built',
        quantity: 'steadyTorque',
      };
    });
  });
}

/** The torque that would hold each speed of the run against the load, with gear and the motor's own losses. */
function steadyLoad({ trajectory }: RunResult, traces: Traces, options: FigureOptions): Series {
  const torque = displayUnit('N·m', { system: options.units }).perSi;
  const speed = displayUnit('rad/s', { system: options.units }).perSi;
  const [low, high] = computeExtent(traces.speed);
  const x = Float64Array.from(
    { length: CURVE_POINTS },
    (_, i) => low + ((high - low) * i) / (CURVE_POINTS - 1),
  );
  const y = x.map((shown) => steadyTorqueAt(trajectory.shaft, shown / speed, shown < 0 ? -1 : 1) * torque);
  return { form: 'line', label: 'load, steady', quantity: 'loadTorque', dash: 'dot', x, y };
}

function pointMarks(result: RunResult, options: FigureOptions): PointMark[] {
  const torque = displayUnit('N·m', { system: options.units }).perSi;
  const speed = displayUnit('rad/s', { system: options.units }).perSi;
  const { trajectory } = result;
  const mark = (t: number, label: string): PointMark => {
    const point = trajectory.at(t);
    return { x: point.speed * speed, y: point.torque * torque, label, quantity: 'torque' };
  };
  const marks: PointMark[] = [];
  const key = worstTorqueKey(result.metrics);
  const worst = key === null ? undefined : result.metrics[key];
  if (worst?.value != null && worst.time !== undefined) {
    const label = formatQuantity(worst.value, 'N·m', { system: options.units });
    marks.push({ ...mark(worst.time, label), y: worst.value * torque });
  }
  const plugging = findPlugging(trajectory);
  if (plugging !== undefined) marks.push(mark(plugging.parting ?? plugging.touch, 'plug'));
  const zero = trajectory.events.find(
    (event) => event.kind === 'zeroSpeed' && event.t > (plugging?.touch ?? 0),
  );
  if (zero !== undefined) marks.push(mark(zero.t, 'zero speed'));
  return marks;
}

function torqueSpeedTitle(result: RunResult, plugging: Closing | undefined): string {
  const plain = 'What the machine does in the torque–speed plane';
  const key = worstTorqueKey(result.metrics);
  const worst = key === null ? undefined : result.metrics[key];
  if (worst?.value == null || worst.time === undefined) return plain;
  const contactor = key?.startsWith('plug') && plugging !== undefined ? plugging.contactor : 'forward';
  const speed = result.trajectory.at(worst.time).speed;
  const { segments } = result.trajectory;
  const inserted = segments.findLast((segment) => segment.t0 <= worst.time!)?.inserted;
  const steady = sequenceTorque(result, speed, contactor === 'forward' ? 1 : -1, inserted);
  const ratio = worst.value / steady;
  if (!Number.isFinite(ratio) || ratio < 1) return plain;
  return `The worst torque is ${formatNumber(ratio)} times what the steady-state curve gives at the same speed`;
}
