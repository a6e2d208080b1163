import type { RunEvent, Trajectory } from '../simulate/trajectory.ts';
import type { Contactor } from './contactIntervals.ts';

/** A contactor closing on the machine, with what went before. Times in s. */
export interface Closing {
  readonly contactor: Contactor;
  /** The touch that completes a circuit: the second pole's. */
  readonly touch: number;
  /** start: at rest; plug: against the direction of rotation; reclose: with it. */
  readonly kind: 'start' | 'plug' | 'reclose';
  /** First parting of the other contactor since the closing before, if it was that which ran. */
  readonly parting: number | null;
  /** Last extinction of the other contactor before the touch. */
  readonly cleared: number | null;
  /** Shaft speed at the parting, or at the touch where nothing parted, rad/s. */
  readonly speedBefore: number;
}

/** Below this share of synchronous speed a closing counts as a start from rest: only words depend on it. */
const REST_SHARE = 0.02;

/** All closings of a run in order of time, read from its events. */
export function findClosings(trajectory: Trajectory): Closing[] {
  const closings: Closing[] = [];
  const { supply, machine } = trajectory.scenario;
  const synchronous = (2 * Math.PI * supply.frequency) / machine.polePairs;
  let previous = Number.NEGATIVE_INFINITY;
  for (const group of touchGroups(trajectory.events)) {
    const first = group[0]!;
    const contactor = first.contactor ?? 'forward';
    const touch = (group[1] ?? first).t;
    const earlier = trajectory.events.filter(
      (event) => event.contactor !== contactor && event.t > previous && event.t <= touch,
    );
    const parting = earlier.find((event) => event.kind === 'poleParts')?.t ?? null;
    const cleared = earlier.findLast((event) => event.kind === 'poleClears')?.t ?? null;
    const speedAtTouch = trajectory.at(touch).speed;
    const along = contactor === 'forward' ? speedAtTouch : -speedAtTouch;
    const atRest = Math.abs(along) < REST_SHARE * synchronous;
    // A load that turns the shaft before the other contactor was ever in makes no plug of a start.
    const otherRan =
      trajectory.scenario.initial === (contactor === 'forward' ? 'runningReverse' : 'runningForward') ||
      trajectory.events.some(
        (event) => event.kind === 'poleTouches' && event.contactor !== contactor && event.t < touch,
      );
    const kind = atRest || (along < 0 && !otherRan) ? 'start' : along < 0 ? 'plug' : 'reclose';
    const speedBefore = parting === null ? speedAtTouch : trajectory.at(parting).speed;
    closings.push({ contactor, touch, kind, parting, cleared, speedBefore });
    previous = touch;
  }
  return closings;
}

/** The first plugging of a run, which is what its metrics describe; undefined when there is none. */
export function findPlugging(trajectory: Trajectory): Closing | undefined {
  return findClosings(trajectory).find((closing) => closing.kind === 'plug');
}

/** Touches of one contactor without a parting of its own between them. */
function touchGroups(events: readonly RunEvent[]): RunEvent[][] {
  const groups: RunEvent[][] = [];
  let open: RunEvent[] | undefined;
  for (const event of events) {
    if (event.kind === 'poleTouches') {
      if (open !== undefined && open[0]?.contactor === event.contactor) open.push(event);
      else {
        open = [event];
        groups.push(open);
      }
    } else if (event.kind === 'poleParts' && open !== undefined && open[0]?.contactor === event.contactor) {
      open = undefined;
    }
  }
  return groups;
}
