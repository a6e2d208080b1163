import { steadyState } from '../machine/steadyState.ts';
import type { RunResult } from '../measure/result.ts';
import { type Closing, findPlugging } from './closings.ts';
import { computeExtent, keepExtremes, paddedDomain, pick } from './envelope.ts';
import type { FigureSpec, PointMark, Series } from './figureSpec.ts';
import { displayUnit, formatNumber, formatQuantity } from './formatQuantity.ts';
import { worstTorqueKey } from './keyNumbers.ts';
import { type FigureOptions, MOST_POINTS } from './timeFigure.ts';
import { readTraces, type Traces } from './traces.ts';

/** Points of each steady-state curve: the pull-out bend of a slip of 0.02 still gets ten of them. */
const CURVE_POINTS = 481;
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
  const traces = readTraces(trajectory, trajectory.tStart, trajectory.tEnd, options.units);
  const reach = computeExtent(traces.speed);
  const sync = synchronous * speedUnit.perSi;
  const reverses = reach[0] < -0.3 * sync;
  const domain: [number, number] = [
    Math.min(reverses ? -(1 + BEYOND) * sync : -0.25 * sync, 1.05 * reach[0]),
    Math.max((1 + BEYOND) * sync, 1.05 * reach[1]),
  ];
  const speeds = Float64Array.from(
    { length: CURVE_POINTS },
    (_, i) => domain[0] + ((domain[1] - domain[0]) * i) / (CURVE_POINTS - 1),
  );
  const curve = (sequence: 1 | -1) =>
    speeds.map((speed) => sequenceTorque(result, speed / speedUnit.perSi, sequence) * torqueUnit.perSi);
  const forward = curve(1);
  const reverse = curve(-1);
  const kept = keepExtremes(traces.torque, MOST_POINTS);
  const points = pointMarks(result, options);
  const series: Series[] = [
    {
      form: 'line',
      label: 'steady, forward',
      quantity: 'steadyTorque',
      dash: 'dash',
      x: speeds,
      y: forward,
    },
    {
      form: 'line',
      label: 'steady, reverse',
      quantity: 'steadyTorque',
      dash: 'dashdot',
      x: speeds,
      y: reverse,
    },
    {
      form: 'line',
      label: 'this run',
      quantity: 'torque',
      dash: 'solid',
      x: pick(traces.speed, kept),
      y: pick(traces.torque, kept),
    },
    ...loadSeries(result, traces, kept),
  ];
  const extent = computeExtent(
    traces.torque,
    forward,
    reverse,
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
 */
export function sequenceTorque(result: RunResult, speed: number, sequence: 1 | -1): number {
  const { supply, machine } = result.scenario;
  const synchronous = (2 * Math.PI * supply.frequency) / machine.polePairs;
  return sequence * steadyState(machine, supply, (synchronous - sequence * speed) / synchronous).torque;
}

function loadSeries(result: RunResult, traces: Traces, kept: readonly number[] | null): Series[] {
  if (result.scenario.load.torques.length === 0) return [];
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
  const steady = sequenceTorque(result, speed, contactor === 'forward' ? 1 : -1);
  const ratio = worst.value / steady;
  if (!Number.isFinite(ratio) || ratio < 1) return plain;
  return `The worst torque is ${formatNumber(ratio)} times what the steady-state curve gives at the same speed`;
}
