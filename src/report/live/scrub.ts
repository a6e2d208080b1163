import type { Film } from './film.ts';

/** Positions of a slider over a run: enough that a pixel of any screen is several. */
export const SCRUB_STEPS = 10_000;

/** Ends of a run. */
type Run = Pick<Film, 'tStart' | 'tEnd'>;

/** Position of a slider at t, s: whole, 0 … `SCRUB_STEPS`; outside the run at its end. */
export function scrubPosition({ tStart, tEnd }: Run, t: number): number {
  const share = tEnd > tStart ? (t - tStart) / (tEnd - tStart) : 0;
  return Math.round(SCRUB_STEPS * Math.min(Math.max(share, 0), 1));
}

/** The instant that a position of the slider stands for, s. */
export function scrubTime({ tStart, tEnd }: Run, position: number): number {
  return tStart + (tEnd - tStart) * (position / SCRUB_STEPS);
}

/** Where the events of a film stand along the slider, in its positions, each place once. */
export function scrubMarks(film: Film): number[] {
  return [...new Set(film.events.map(({ t }) => scrubPosition(film, t)))];
}
