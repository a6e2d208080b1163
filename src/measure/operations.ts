import type { Action } from '../scenario/scenario.ts';
import type { RunEvent, Trajectory } from '../simulate/trajectory.ts';
import { type ContactorName, opposite } from '../starter/starter.ts';

/** Below this fraction of synchronous speed a start in the other direction is a start, not a reversal. */
const TURNING_FRACTION = 0.01;

/** The first start of a run: from its action to the reversing action, or to the end. */
export interface StartOperation {
  /** s */
  readonly from: number;
  readonly to: number;
  readonly direction: 1 | -1;
  /** First touch that completes a circuit, s; null when none did. */
  readonly touch: number | null;
}

/** The first action that opposes rotation: a plug, or a start against the direction of rotation. */
export interface ReversalOperation {
  /** Instant of the command, s. */
  readonly command: number;
  readonly to: number;
  readonly outgoing: ContactorName;
  readonly incoming: ContactorName;
  /** Direction of rotation at the command. */
  readonly direction: 1 | -1;
  /** First parting of the outgoing contactor's poles, s; null when none parted in this run. */
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
  /** Reversing actions after the first: in the trace, but without figures of their own. */
  readonly furtherReversals: number;
}

/** Finds the first start and the first reversal of a run. */
export function operationsOf(trajectory: Trajectory): Operations {
  const { scenario } = trajectory;
  const done = scenario.actions.filter((action) => action.at < trajectory.tEnd);
  const reversing = done.filter((action) => opposesRotation(trajectory, action));
  const [reversingAction] = reversing;
  const startAction = done.find(
    (action) => (action.do === 'startForward' || action.do === 'startReverse') && action !== reversingAction,
  );
  const startBeforeReversal =
    startAction !== undefined && startAction.at < (reversingAction?.at ?? Number.POSITIVE_INFINITY);
  return {
    start:
      scenario.initial === 'rest' && startBeforeReversal
        ? startOperation(trajectory, startAction, reversingAction)
        : null,
    reversal: reversingAction === undefined ? null : reversalOperation(trajectory, reversingAction),
    furtherReversals: Math.max(0, reversing.length - 1),
  };
}

function opposesRotation(trajectory: Trajectory, action: Action): boolean {
  const { supply, machine } = trajectory.scenario;
  const synchronous = (2 * Math.PI * supply.frequency) / machine.polePairs;
  const speed = trajectory.at(action.at, 'left').speed / synchronous;
  switch (action.do) {
    case 'plug':
      return Math.abs(speed) > TURNING_FRACTION;
    case 'startForward':
      return speed < -TURNING_FRACTION;
    case 'startReverse':
      return speed > TURNING_FRACTION;
    case 'coast':
      return false;
  }
}

function startOperation(
  trajectory: Trajectory,
  action: Action,
  reversal: Action | undefined,
): StartOperation {
  const direction = action.do === 'startForward' ? 1 : -1;
  const to = reversal?.at ?? trajectory.tEnd;
  const touch = completingTouch(trajectory, direction === 1 ? 'forward' : 'reverse', action.at);
  return { from: action.at, to, direction, touch: touch !== null && touch < to ? touch : null };
}

function reversalOperation(trajectory: Trajectory, action: Action): ReversalOperation {
  const direction = trajectory.at(action.at, 'left').speed > 0 ? 1 : -1;
  const outgoing: ContactorName = direction === 1 ? 'forward' : 'reverse';
  const incoming = opposite(outgoing);
  const after = (match: (event: RunEvent) => boolean): number | null =>
    trajectory.events.find((event) => event.t >= action.at && match(event))?.t ?? null;
  const touch = completingTouch(trajectory, incoming, action.at);
  const releasedBySwitch = trajectory.events.find(
    (event) => event.kind === 'switchOpens' && touch !== null && event.t >= touch,
  );
  return {
    command: action.at,
    to: trajectory.tEnd,
    outgoing,
    incoming,
    direction,
    parting: after((event) => event.kind === 'poleParts' && event.contactor === outgoing),
    touch,
    zero: after((event) => event.kind === 'zeroSpeed' && event.t > action.at),
    switchOpening: action.do === 'plug' ? (releasedBySwitch?.t ?? null) : null,
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
