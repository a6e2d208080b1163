import type { RunEvent, Trajectory } from '../simulate/trajectory.ts';
import { findClosings } from './closings.ts';
import type { Contactor } from './contactIntervals.ts';
import type { Band } from './figureSpec.ts';

/** An instant worth a word, s. */
export interface TimedMark {
  readonly t: number;
  readonly label: string;
}

/** More marks than this cannot be told apart in one figure; the table of events has them all. */
const MOST_MARKS = 12;

/**
 * The instants a figure of the window [t0, t1] s names: contactors closing and parting, resistors,
 * winding connection and lost phases, rest, the switch.
 *
 * @param detail few: what a first page needs; usual: figures of seconds; all: also the last extinction of each
 * contactor, which only a figure of milliseconds separates from the parting
 */
export function timedMarks(
  trajectory: Trajectory,
  t0: number,
  t1: number,
  detail: 'few' | 'usual' | 'all',
): TimedMark[] {
  if (detail === 'few') return fewMarks(trajectory);
  const marks: TimedMark[] = [];
  for (const closing of findClosings(trajectory)) {
    const purpose = { start: 'start: ', plug: 'plug: ', reclose: '' }[closing.kind];
    marks.push({ t: closing.touch, label: `${purpose}${closing.contactor} contactor closes` });
  }
  for (const contactor of ['forward', 'reverse'] as const) {
    for (const opening of openings(trajectory, contactor)) {
      marks.push({ t: opening.parted, label: `${contactor} contacts part` });
      if (detail === 'all' && opening.cleared !== null) {
        marks.push({ t: opening.cleared, label: `${contactor} poles clear` });
      }
    }
  }
  for (const event of trajectory.events) {
    if (event.kind === 'switchOpens') marks.push({ t: event.t, label: 'zero-speed switch opens' });
    if (event.kind === 'shortCircuit') marks.push({ t: event.t, label: 'short circuit between phases' });
    const label = changeLabel(event, detail);
    if (label !== null) marks.push({ t: event.t, label });
  }
  marks.push(...restMarks(trajectory));
  const inside = marks.filter((mark) => mark.t >= t0 && mark.t <= t1).sort((a, b) => a.t - b.t);
  // Half of the marks would mislead: rather the closings of the whole window.
  return inside.length > MOST_MARKS
    ? fewMarks(trajectory).filter((mark) => mark.t >= t0 && mark.t <= t1)
    : inside;
}

/** Words for a change in the circuit that is no opening or closing of the two contactors; null for all others. */
function changeLabel(event: RunEvent, detail: 'usual' | 'all'): string | null {
  switch (event.kind) {
    case 'bypassCloses':
      return 'line resistors bypassed';
    case 'bypassOpens':
      return 'line resistors in';
    case 'rotorStep':
    case 'windingReconnected':
      return event.text;
    case 'brakeSets':
      return 'brake sets';
    case 'brakeReleases':
      return 'brake lets go';
    case 'injectionBegins':
      return 'direct current on';
    case 'injectionEnds':
      return 'direct current off';
    case 'phaseLost':
      return `supply phase ${event.phase} lost`;
    case 'phaseClears':
      return detail === 'all' ? `lost phase ${event.phase} clears` : null;
    default:
      return null;
  }
}

function fewMarks(trajectory: Trajectory): TimedMark[] {
  const closings = findClosings(trajectory).map(
    (closing): TimedMark => ({ t: closing.touch, label: `${closing.kind}: ${closing.contactor} closes` }),
  );
  const lost = trajectory.events
    .filter((event) => event.kind === 'phaseLost')
    .map((event): TimedMark => ({ t: event.t, label: `phase ${event.phase} lost` }));
  const plugged = closings.findLast((mark) => mark.label.startsWith('plug'))?.t ?? trajectory.tStart;
  const rest = trajectory.events.find((event) => event.kind === 'zeroSpeed' && event.t > plugged);
  const zero = rest === undefined ? [] : [{ t: rest.t, label: 'zero speed' }];
  const marks = [...closings, ...lost, ...zero];
  return marks.sort((a, b) => a.t - b.t).slice(0, MOST_MARKS);
}

/** The first passage of zero is the stop; a later one after which friction holds the shaft is the standstill. */
function restMarks(trajectory: Trajectory): TimedMark[] {
  const { events } = trajectory;
  return events
    .filter((event) => event.kind === 'zeroSpeed')
    .map((event, i) => {
      const held = events.some((other) => other.kind === 'shaftHeld' && other.t === event.t);
      return { t: event.t, label: i > 0 && held ? 'shaft held at rest' : 'zero speed' };
    });
}

/** Stretches of the window in which one or more motor terminals carry no current, s. */
export function conductingBands(trajectory: Trajectory, t0: number, t1: number): Band[] {
  return trajectory.segments
    .filter((segment) => segment.kind !== 'three' && segment.t1 > t0 && segment.t0 < t1)
    .map((segment) => ({
      x0: Math.max(t0, segment.t0),
      x1: Math.min(t1, segment.t1),
      label: segment.kind === 'none' ? 'no current' : 'two phases',
    }))
    .reduce<Band[]>((joined, band) => {
      const last = joined.at(-1);
      if (last !== undefined && last.label === band.label && band.x0 <= last.x1) {
        joined[joined.length - 1] = { ...last, x1: band.x1 };
      } else joined.push(band);
      return joined;
    }, []);
}

/** First parting and last extinction of each opening of a contactor. */
function openings(
  trajectory: Trajectory,
  contactor: Contactor,
): { parted: number; cleared: number | null }[] {
  const found: { parted: number; cleared: number | null }[] = [];
  let current: { parted: number; cleared: number | null } | undefined;
  for (const event of trajectory.events) {
    if (event.contactor !== contactor) continue;
    if (event.kind === 'poleTouches') current = undefined;
    if (event.kind === 'poleParts' && current === undefined) {
      current = { parted: event.t, cleared: null };
      found.push(current);
    }
    if (event.kind === 'poleClears' && current !== undefined) current.cleared = event.t;
  }
  return found;
}
