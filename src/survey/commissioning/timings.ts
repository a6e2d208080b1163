import { crossings } from '../../measure/crossing.ts';
import type { Direction } from '../../starter/starter.ts';
import { type BenchRun, CONTACTORS, closed, signOf } from './run.ts';
import type { Timing } from './test.ts';

/** Share of the steady speed at which a start counts as over. */
const FULL = 0.95;

/** From the decisive instant to 95 % of the steady speed in a direction. */
export function timeToSpeed(direction: Direction): Timing {
  return {
    words: `to full speed ${direction}`,
    of: (run) => timeToShare(run, run.test.mark, direction, FULL),
  };
}

/** From the decisive instant to the first standstill. */
export function timeToStandstill(): Timing {
  return { words: 'to standstill', of: (run) => timeOf(run, run.test.mark, 'zeroSpeed') };
}

/** From the decisive instant until both contactors are out for good: a contactor that brakes goes in once more before. */
export function timeToOut(): Timing {
  return {
    words: 'until both contactors are out',
    of: (run) => {
      const from = run.test.mark;
      const ends = CONTACTORS.flatMap((one) => closed(run, one)).map(({ to }) => to);
      const last = Math.max(from, ...ends);
      return Number.isFinite(last) ? last - from : null;
    },
  };
}

/** Seconds from an instant until the speed reaches a share of the steady speed; null: not in this run. */
export function timeToShare(run: BenchRun, from: number, direction: Direction, share: number): number | null {
  const steady = run.steady[direction];
  if (steady === null) return null;
  // An overhauling load may drive the machine the other way from the start on.
  const way = signOf(direction) === 1 ? 'up' : 'down';
  const level = share * signOf(direction) * Math.abs(steady);
  const [first] = crossings(run.quadrature, 'speed', level, way, from, run.trajectory.tEnd);
  return first === undefined ? null : first - from;
}

/** Seconds from an instant until the speed has fallen to a share of what it was; null: not in this run. */
export function timeToSlow(run: BenchRun, from: number, share: number): number | null {
  const level = share * run.trajectory.at(from, 'left').speed;
  const way = level >= 0 ? 'down' : 'up';
  const [first] = crossings(run.quadrature, 'speed', level, way, from, run.trajectory.tEnd);
  return first === undefined ? null : first - from;
}

/** Seconds from an instant to the first event of a kind; null: none in this run. */
export function timeOf(
  { trajectory }: BenchRun,
  from: number,
  kind: BenchRun['trajectory']['events'][number]['kind'],
): number | null {
  const event = trajectory.events.find((one) => one.t > from && one.kind === kind);
  return event === undefined ? null : event.t - from;
}

/** What is left between the last arc's end and the touch of the other contactor's poles. */
export function arcMargin(): Timing {
  return {
    words: 'from the last arc to the touch',
    of: ({ trajectory, test }) => {
      if (trajectory.shortCircuit !== null) return null;
      const later = trajectory.events.filter(({ t }) => t >= test.mark);
      const touch = later.find(({ kind }) => kind === 'poleTouches');
      const before = trajectory.events.filter(
        (event) => event.kind === 'poleClears' && touch !== undefined && event.t <= touch.t,
      );
      const cleared = before.findLast((event) => event.contactor !== touch?.contactor);
      return touch === undefined || cleared === undefined ? null : touch.t - cleared.t;
    },
  };
}
