import type { PhaseName } from '../scenario/scenario.ts';
import type { RunEvent, RunEventKind, Trajectory } from '../simulate/trajectory.ts';
import type { StateInterval } from './figureSpec.ts';

/** One of the two contactors. */
export type Contactor = 'forward' | 'reverse';

/** The phases in the order of the rows. */
export const PHASES: readonly PhaseName[] = ['A', 'B', 'C'];

/**
 * When one pole of a contactor was closed or arcing, s. A pole whose first event is a parting was closed from the
 * start of the run; a pole still closed or arcing at the end is so up to the end.
 */
export function poleIntervals(
  trajectory: Trajectory,
  contactor: Contactor,
  phase: PhaseName,
): StateInterval[] {
  const own = trajectory.events.filter((event) => event.contactor === contactor && event.phase === phase);
  const relevant = own.filter((event) => POLE_KINDS.has(event.kind));
  const { initial } = trajectory.scenario;
  const runsFromStart =
    (initial === 'runningForward' && contactor === 'forward') ||
    (initial === 'runningReverse' && contactor === 'reverse');
  return intervals(relevant, trajectory, runsFromStart ? 'closed' : 'open');
}

/** When the zero-speed switch's contact was closed, s. */
export function switchIntervals(trajectory: Trajectory): StateInterval[] {
  const relevant = trajectory.events.filter(
    (event) => event.kind === 'switchCloses' || event.kind === 'switchOpens',
  );
  return intervals(relevant, trajectory, relevant[0]?.kind === 'switchOpens' ? 'closed' : 'open');
}

/** When the contactor that bypasses the line resistors was closed, s: all three poles at once, without arcs of its own. */
export function bypassIntervals(trajectory: Trajectory): StateInterval[] {
  const relevant = trajectory.events.filter(
    (event) => event.kind === 'bypassCloses' || event.kind === 'bypassOpens',
  );
  const closedAtFirst = trajectory.scenario.initial !== 'rest';
  return intervals(relevant, trajectory, closedAtFirst ? 'closed' : 'open');
}

/** When a supply phase was there, s, and until when its current went on after it was lost. */
export function supplyIntervals(trajectory: Trajectory, phase: PhaseName): StateInterval[] {
  const relevant = trajectory.events.filter(
    (event) =>
      event.kind === 'supplyReturns' ||
      (event.phase === phase && (event.kind === 'phaseLost' || event.kind === 'phaseClears')),
  );
  return intervals(relevant, trajectory, 'closed');
}

/** Joins intervals of one state that touch or overlap. */
export function joinIntervals(intervals: readonly StateInterval[]): StateInterval[] {
  const joined: StateInterval[] = [];
  for (const interval of intervals.toSorted((a, b) => a.x0 - b.x0)) {
    const last = joined.at(-1);
    if (last !== undefined && interval.x0 <= last.x1) {
      joined[joined.length - 1] = { ...last, x1: Math.max(last.x1, interval.x1) };
    } else joined.push(interval);
  }
  return joined;
}

const POLE_KINDS: ReadonlySet<RunEventKind> = new Set(['poleTouches', 'poleParts', 'poleClears']);

type State = 'open' | 'closed' | 'arcing';

const STATE_AFTER: Partial<Record<RunEventKind, State>> = {
  poleTouches: 'closed',
  poleParts: 'arcing',
  poleClears: 'open',
  switchCloses: 'closed',
  switchOpens: 'open',
  bypassCloses: 'closed',
  bypassOpens: 'open',
  phaseLost: 'arcing',
  phaseClears: 'open',
  supplyReturns: 'closed',
};

function intervals(events: readonly RunEvent[], trajectory: Trajectory, initial: State): StateInterval[] {
  const found: StateInterval[] = [];
  let state = initial;
  let since = trajectory.tStart;
  const leave = (t: number) => {
    if (state !== 'open' && t > since) found.push({ x0: since, x1: t, state });
  };
  for (const event of events) {
    leave(event.t);
    state = STATE_AFTER[event.kind] ?? state;
    since = event.t;
  }
  leave(trajectory.tEnd);
  return found;
}
