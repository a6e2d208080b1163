import { crossings } from '../../measure/crossing.ts';
import type { Quadrature } from '../../measure/quadrature.ts';
import type { RunResult } from '../../measure/result.ts';
import { UP_TO_SPEED } from '../../measure/startMetrics.ts';
import type { ActionKind } from '../../scenario/scenario.ts';
import { steadySpeed } from '../../shaft/steadySpeed.ts';
import { isSuccessful } from '../../simulate/status.ts';
import type { RunEventKind } from '../../simulate/trajectory.ts';
import { endOfStop, stopKind } from '../stop/stopKind.ts';

/** When a run starts and stops the motor, s. */
export interface OperationWindows {
  /** From the first touch that completes a circuit until the speed has settled. */
  readonly start: Window;
  readonly stop: Window;
  /** Sequence of the start: +1 forward. */
  readonly direction: 1 | -1;
  readonly stopKind: 'coast' | 'braking' | 'reversal';
  /** First instant of zero speed in the stop; null: the run does not contain it. */
  readonly zero: number | null;
}

/** A stretch of a run, s. */
export interface Window {
  readonly from: number;
  readonly to: number;
}

/**
 * A start has ended at this fraction of the steady speed; the rest of the run-up adds below 1 ‰ of the rotor's heat, and what
 * follows counts as running. Where the next action comes before it, the start ends there if the motor was up to speed.
 */
const SETTLED_FRACTION = 0.99;

/** Start and stop of a run; words where it lacks one. */
export function operationWindows(result: RunResult, quadrature: Quadrature): OperationWindows | string {
  const { operations, usable, status } = result;
  if (!usable)
    return `the run cannot be used: ${isSuccessful(status) ? 'its energy balance does not close' : status.message}`;
  if (operations.start === null || operations.start.touch === null)
    return 'the run has no start from rest, so the heat of a start is missing';
  const { touch, to, direction } = operations.start;
  const startEnd = settled(result, quadrature, direction, touch, to);
  if (startEnd === null) return `the start does not come up to speed by ${seconds(to)}`;
  const stop =
    operations.reversal === null ? unpluggedStop(result, startEnd) : reversedStop(result, quadrature);
  return typeof stop === 'string' ? stop : { start: { from: touch, to: startEnd }, direction, ...stop };
}

type Stop = Pick<OperationWindows, 'stop' | 'stopKind' | 'zero'>;

/** Plugging to rest, or a reversal that goes on in the other direction. */
function reversedStop(result: RunResult, quadrature: Quadrature): Stop | string {
  const { operations, trajectory } = result;
  const { command, touch, to, direction, switchOpening } = operations.reversal!;
  const until = endOfStop(result);
  const zero =
    trajectory.events.find(({ kind, t }) => kind === 'zeroSpeed' && t > command && t <= until)?.t ?? null;
  if (stopKind(result) === 'reversal') {
    const end = settled(result, quadrature, direction === 1 ? -1 : 1, zero ?? touch ?? command, to);
    if (zero === null || end === null) return `the reversal does not come up to speed by ${seconds(to)}`;
    return { stop: { from: command, to: end }, stopKind: 'reversal', zero };
  }
  if (zero === null && switchOpening === null) return `the motor is not braked to rest by ${seconds(until)}`;
  // The last poles may clear on either side of zero speed; without current only the bearings heat.
  const cleared = trajectory.events.findLast(
    ({ kind, t }) => kind === 'poleClears' && t >= command && t <= until,
  );
  const end = Math.max(zero ?? command, cleared?.t ?? command);
  return { stop: { from: command, to: end }, stopKind: 'braking', zero };
}

/** Coasting, a mechanical brake, direct current: to rest, or to the end of the run where that comes first. */
function unpluggedStop({ trajectory }: RunResult, startEnd: number): Stop | string {
  const command = trajectory.commands.find(({ at, do: what }) => at >= startEnd && UNPLUGGED.includes(what));
  if (command === undefined) return 'the run has no stop, so the heat of a stop is missing';
  const zero = trajectory.events.find(({ kind, t }) => kind === 'zeroSpeed' && t > command.at)?.t ?? null;
  const coasts = command.do === 'coast';
  if (zero === null && !coasts) return `the motor is not braked to rest by ${seconds(trajectory.tEnd)}`;
  // Direct current may flow on at rest.
  const current = trajectory.events.findLast(
    ({ kind, t }) => CURRENT_ENDS.includes(kind) && t > command.at,
  )?.t;
  const end = Math.max(zero ?? trajectory.tEnd, current ?? command.at);
  return { stop: { from: command.at, to: end }, stopKind: coasts ? 'coast' : 'braking', zero };
}

const UNPLUGGED: readonly ActionKind[] = ['coast', 'brake', 'injectDc'];
const CURRENT_ENDS: readonly RunEventKind[] = ['poleClears', 'injectionIsGone'];

/** When the speed has settled in [from, to], s; null where the motor does not come up to speed. */
function settled(
  { scenario }: RunResult,
  quadrature: Quadrature,
  direction: 1 | -1,
  from: number,
  to: number,
): number | null {
  const target = steadySpeed(scenario, direction);
  if (target === null) return null;
  const way = target > 0 ? 'up' : 'down';
  const [reached] = crossings(quadrature, 'speed', SETTLED_FRACTION * target, way, from, to);
  if (reached !== undefined) return reached;
  const [upToSpeed] = crossings(quadrature, 'speed', UP_TO_SPEED * target, way, from, to);
  return upToSpeed === undefined ? null : to;
}

/** An instant in words. */
function seconds(t: number): string {
  return `${Number(t.toPrecision(4))} s`;
}
