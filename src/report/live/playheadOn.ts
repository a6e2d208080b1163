import type { Playhead } from './playhead.ts';
import type { RunView } from './runView.ts';

/** How slowly a run is looked at first: what matters lasts 10 ms, here a second. */
export const FIRST_SLOWNESS = 1 / 100;

/** A playhead before there is a run. */
export const AT_REST: Playhead = { t: 0, playing: false, slowness: FIRST_SLOWNESS };

/**
 * Where the playhead stands on a run that takes another one's place.
 *
 * @param fresh another scenario: looked at where it matters most; a changed one stays at its instant
 * @param playing whether the pictures move on
 */
export function playheadOn(view: RunView, before: Playhead, fresh: boolean, playing: boolean): Playhead {
  const { tStart, tEnd } = view.film;
  const t = fresh ? view.focus : Math.min(Math.max(before.t, tStart), tEnd);
  return { ...before, t, playing };
}

/** A playhead that begins to move; from the end it begins again. */
export function started(playhead: Playhead, { film }: RunView): Playhead {
  return { ...playhead, t: playhead.t >= film.tEnd ? film.tStart : playhead.t, playing: true };
}

/** The playhead at rest at the end of a run. */
export function atEnd(playhead: Playhead, { film }: RunView): Playhead {
  return { ...playhead, t: film.tEnd, playing: false };
}
