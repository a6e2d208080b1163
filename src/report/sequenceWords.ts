import type { RunResult } from '../measure/result.ts';
import type { RunEventKind, Trajectory } from '../simulate/trajectory.ts';
import { eventSentence } from './eventSentence.ts';
import type { StateRow } from './figureSpec.ts';
import { motionSentence } from './findings.ts';
import { formatInstant, formatQuantity, type UnitSystem } from './formatQuantity.ts';
import { type BrakingEndWindow, brakingEndWindow, type ChangeoverWindow } from './sequenceWindows.ts';

const DECISIVE: ReadonlySet<RunEventKind> = new Set(['overloadTrips', 'emergencyStopPressed', 'supplyLost']);

/**
 * Title of a whole run's chart: its first trip, emergency stop or loss of the supply, or else the end of braking by the
 * zero-speed switch, or else what the shaft does.
 */
export function runTitle(result: RunResult, units: UnitSystem): string {
  const { events } = result.trajectory;
  const event = events.find(({ kind }) => DECISIVE.has(kind)) ?? brakingEndWindow(result.trajectory)?.release;
  if (event === undefined) return motionSentence(result, units).replace(/\.$/u, '');
  // The instant is not torn apart where the title is broken into lines.
  const at = `t = ${formatInstant(event.t)}`.replaceAll(' ', '\u00A0');
  return `${capitalised(eventSentence(event, units))}, ${at}`;
}

/** Title of a change-over: how long it took, and by how much the arcs were out before. */
export function changeoverTitle(run: Trajectory, window: ChangeoverWindow, units: UnitSystem): string {
  const { release, closing, trigger, from, to } = window;
  if (closing === null)
    return `${capitalised(eventSentence(trigger ?? release, units))}: the last pole is without current ${milliseconds(to - from)} later`;
  const { contactor, touch, cleared } = closing;
  const closes = `${capitalised(contactor)} contactor closes ${milliseconds(touch - release.t)} after the ${release.contactor} coil drops`;
  if (run.shortCircuit !== null && run.shortCircuit.t <= to)
    return `${closes}, onto contacts that still conduct: short circuit`;
  return cleared === null || cleared < release.t
    ? closes
    : `${closes}, ${milliseconds(touch - cleared)} after the last arc is out`;
}

/** Title of the end of braking: why the coil drops, and what the machine does then. */
export function brakingEndTitle({ release, zero, from, to }: BrakingEndWindow, units: UnitSystem): string {
  const then =
    zero === null
      ? `the last arc is out ${milliseconds(to - from)} later`
      : `zero speed ${milliseconds(zero - from)} later`;
  return `${capitalised(eventSentence(release, units))}, ${then}`;
}

/** Of a chattering contact the text alternative names this many intervals. */
const MOST_IN_WORDS = 3;

/** The rows as text, for who does not see them; the table of events has every change. */
export function rowsInWords(rows: readonly StateRow[]): string {
  return rows
    .map((row) => {
      if (row.heading === true) return `${row.label}.`;
      if (row.intervals.length === 0) return `${row.label}: never.`;
      const named = row.intervals
        .slice(0, MOST_IN_WORDS)
        .map(({ state, x0, x1 }) => `${state} from ${formatInstant(x0)} to ${formatInstant(x1)}`);
      const more = row.intervals.length - named.length;
      return `${row.label}: ${named.join(', ')}${more > 0 ? `, and ${more} times more` : ''}.`;
    })
    .join(' ');
}

function milliseconds(span: number): string {
  return formatQuantity(span, 's', { system: 'SI', milli: true });
}

function capitalised(text: string): string {
  return `${text[0]?.toUpperCase() ?? ''}${text.slice(1)}`;
}
