import type { FilmFeed } from './film.ts';

/** Not connected to anything: before a run's first feed. */
const UNFED: FilmFeed = { t: 0, sequence: 0, conducting: 0 };

/** What the terminals are connected to at t, s. */
export function feedAt(feeds: readonly FilmFeed[], t: number): FilmFeed {
  return feeds.findLast((feed) => feed.t <= t) ?? feeds[0] ?? UNFED;
}
