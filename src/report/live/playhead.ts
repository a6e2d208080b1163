import type { Film } from './film.ts';

/** Where the moving pictures stand, and how fast they move. */
export interface Playhead {
  /** s of the run */
  readonly t: number;
  readonly playing: boolean;
  /** Seconds of the run in one second at the clock, one of `SLOWNESSES`. */
  readonly slowness: number;
}

/** How slowly a run can be looked at: seconds of the run in one second at the clock. What matters lasts 10 ms. */
export const SLOWNESSES: readonly number[] = [
  1,
  1 / 2,
  1 / 5,
  1 / 10,
  1 / 20,
  1 / 50,
  1 / 100,
  1 / 200,
  1 / 500,
];

/** A single step shows the next picture of a display that shows this many in a second, 1/s. */
const PICTURES_PER_SECOND = 60;

/**
 * The longest time between two pictures that counts, ms: a page that was hidden goes on where it was instead of leaping to the end
 * of the run.
 */
const LONGEST_BETWEEN_PICTURES = 100;

/** ms in one second. */
const MS_PER_S = 1000;

/** The playhead after a time at the clock, ms; at the end of the run, s, it stops. A resting one stays. */
export function advanced(playhead: Playhead, wallMs: number, end: number): Playhead {
  if (!playhead.playing) return playhead;
  const t = playhead.t + (wallMs / MS_PER_S) * playhead.slowness;
  return t >= end ? { ...playhead, t: end, playing: false } : { ...playhead, t };
}

/**
 * The playhead at a picture of a display.
 *
 * @param previousStamp of the picture before, ms; null: this is the first one, from which time counts
 * @param stamp of this picture, ms
 * @param end of the run, s
 */
export function advancedTo(
  playhead: Playhead,
  previousStamp: number | null,
  stamp: number,
  end: number,
): Playhead {
  const passed = previousStamp === null ? 0 : Math.max(0, stamp - previousStamp);
  return advanced(playhead, Math.min(passed, LONGEST_BETWEEN_PICTURES), end);
}

/** The playhead one picture on (1) or back (−1), at rest, within the run that ends at `end`, s. */
export function stepped(playhead: Playhead, direction: 1 | -1, end: number): Playhead {
  const t = playhead.t + (direction * playhead.slowness) / PICTURES_PER_SECOND;
  return { ...playhead, t: Math.min(Math.max(t, 0), end), playing: false };
}

/** Where a film has its next event after t, s; null: it has none. */
export function nextEvent(film: Film, t: number): number | null {
  return film.events.find((event) => event.t > t)?.t ?? null;
}

/** Where a film has its last event before t, s; null: it has none. */
export function previousEvent(film: Film, t: number): number | null {
  return film.events.findLast((event) => event.t < t)?.t ?? null;
}

/** "1/100 of real time"; "real time". */
export function slownessWords(slowness: number): string {
  return slowness === 1 ? 'real time' : `1/${Math.round(1 / slowness)} of real time`;
}
