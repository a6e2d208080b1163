import type { Command } from '../scenario/scenario.ts';
import type { Trajectory } from '../simulate/trajectory.ts';
import { type ContactorName, opposite } from '../starter/starter.ts';

/** Below this fraction of synchronous speed a start in the other direction is a start, not a reversal. */
const TURNING_FRACTION = 0.01;

/** The first start of a run: from its action to the next one, or to the end. */
export interface StartOperation {
  /** Instant of the action, s. */
  readonly from: number;
  /** Instant of the next action, or end of the run, s. */
  readonly to: number;
  /** 1: forward; −1: reverse. */
  readonly direction: 1 | -1;
  /** First touch that completes a circuit, s; null when none did. */
  readonly touch: number | null;
}

/**
 * The first action that opposes rotation: a plug, or a start against the direction of rotation; from its command to the
 * next action, or to the end.
 */
export interface ReversalOperation {
  /** Instant of the command, s. */
  readonly command: number;
  /** Instant of the next action, or end of the run, s. */
  readonly to: number;
  readonly outgoing: ContactorName;
  readonly incoming: ContactorName;
  /** Direction of rotation at the command: 1 forward, −1 reverse. */
  readonly direction: 1 | -1;
  /** First parting of the outgoing contactor's poles since it last closed, s; null when none parted. */
  readonly parting: number | null;
  /** First touch of the incoming contactor that completes a circuit, s. */
  readonly touch: number | null;
  /** First passage through zero speed after the command, s. */
  readonly zero: number | null;
  /** Opening of the zero-speed switch that ends the plugging, s. */
  readonly switchOpening: number | null;
}

/** Operations that the metrics refer to. */
export interface Operations {
  readonly start: StartOperation | null;
  readonly reversal: ReversalOperation | null;
  /** Number of other actions: in the trace, but without figures of their own. */
  readonly otherActions: number;
}

/** Finds the first start and the first reversal of a run. */
export function operationsOf(trajectory: Trajectory): Operations {
  const { scenario } = trajectory;
  const done = trajectory.commands.filter((action) => action.at <= trajectory.tEnd);
  const reversing = done.filter((action) => opposesRotation(trajectory, action));
  const [reversingAction] = reversing;
  const startAction = done.find((action) => action.do === 'startForward' || action.do === 'startReverse');
  const starts =
    scenario.initial === 'rest' && startAction !== undefined && startAction !== reversingAction
      ? startOperation(trajectory, startAction)
      : null;
  const reversal = reversingAction === undefined ? null : reversalOperation(trajectory, reversingAction);
  const plugs = done.filter((action) => refused(trajectory, action));
  const counted = [startAction?.at, reversingAction?.at, ...plugs.map((action) => action.at)];
  return {
    start: starts,
    reversal,
    otherActions: done.filter((action) => !counted.includes(action.at)).length,
  };
}

/**
 * A plug on a turning shaft, or a start against the rotation that the other contactor has caused. A load that turns the
 * shaft by itself (a hoist before its first start) is no reversal.
 */
function opposesRotation(trajectory: Trajectory, action: Command): boolean {
  const { supply, machine, initial } = trajectory.scenario;
  const synchronous = (2 * Math.PI * supply.frequency) / machine.polePairs;
  const speed = trajectory.at(action.at, 'left').speed / synchronous;
  const hasRun = (contactor: ContactorName) =>
    initial === (contactor === 'forward' ? 'runningForward' : 'runningReverse') ||
    trajectory.events.some(
      (event) => event.kind === 'poleTouches' && event.contactor === contactor && event.t <= action.at,
    );
  switch (action.do) {
    case 'plug':
      return Math.abs(speed) > TURNING_FRACTION && !refused(trajectory, action);
    case 'startForward':
      return speed < -TURNING_FRACTION && hasRun('reverse');
    case 'startReverse':
      return speed > TURNING_FRACTION && hasRun('forward');
    case 'coast':
    case 'brake':
    case 'injectDc':
      return false;
  }
}

/** True when a plug came to nothing: the zero-speed switch had not picked up, or nothing was in. */
function refused(trajectory: Trajectory, action: Command): boolean {
  if (action.do !== 'plug') return false;
  const to = trajectory.commands.find((other) => other.at > action.at)?.at ?? trajectory.tEnd;
  return trajectory.events.some(
    (event) => event.kind === 'plugRefused' && event.t >= action.at && event.t <= to,
  );
}

/** Time of the next action that comes to something, or the end of the run, s. */
function nextAction(trajectory: Trajectory, action: Command): number {
  const next = trajectory.commands.find((other) => other.at > action.at && !refused(trajectory, other));
  return Math.min(next?.at ?? Number.POSITIVE_INFINITY, trajectory.tEnd);
}

function startOperation(trajectory: Trajectory, action: Command): StartOperation {
  const direction = action.do === 'startForward' ? 1 : -1;
  const to = nextAction(trajectory, action);
  const touch = completingTouch(trajectory, direction === 1 ? 'forward' : 'reverse', action.at);
  return { from: action.at, to, direction, touch: touch !== null && touch < to ? touch : null };
}

function reversalOperation(trajectory: Trajectory, action: Command): ReversalOperation {
  const { events } = trajectory;
  const to = nextAction(trajectory, action);
  const direction = trajectory.at(action.at, 'left').speed > 0 ? 1 : -1;
  const outgoing: ContactorName = direction === 1 ? 'forward' : 'reverse';
  const incoming = opposite(outgoing);
  const completed = completingTouch(trajectory, incoming, action.at);
  const touch = completed !== null && completed <= to ? completed : null;
  const until = touch ?? trajectory.shortCircuit?.t ?? to;
  // The outgoing contactor may have parted before the command (coasting): count from when it last closed.
  const lastClosed = events.findLast(
    (event) => event.kind === 'poleTouches' && event.contactor === outgoing && event.t <= until,
  );
  const parting = events.find(
    (event) =>
      event.kind === 'poleParts' &&
      event.contactor === outgoing &&
      event.t >= (lastClosed?.t ?? trajectory.tStart) &&
      event.t <= until,
  );
  const zero = events.find((event) => event.kind === 'zeroSpeed' && event.t > action.at && event.t <= to);
  const opening = events.find(
    (event) => event.kind === 'switchOpens' && touch !== null && event.t >= touch && event.t <= to,
  );
  return {
    command: action.at,
    to,
    outgoing,
    incoming,
    direction,
    parting: parting?.t ?? null,
    touch,
    zero: zero?.t ?? null,
    switchOpening: action.do === 'plug' ? (opening?.t ?? null) : null,
  };
}

/** First instant from `t` on at which a contactor's touching poles leave at least two terminals connected. */
function completingTouch(trajectory: Trajectory, contactor: ContactorName, t: number): number | null {
  for (const event of trajectory.events) {
    if (event.t < t || event.kind !== 'poleTouches' || event.contactor !== contactor) continue;
    const segment = trajectory.segments.find((candidate) => candidate.t0 === event.t);
    if (segment !== undefined && segment.kind !== 'none') return event.t;
  }
  return null;
}
