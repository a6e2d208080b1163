import type { Trajectory } from '../../simulate/trajectory.ts';
import type { ContactorName } from '../../starter/starter.ts';
import { channelValue } from './channelValue.ts';
import type { FilmFeed } from './film.ts';

/** Poles through which a contactor must carry current for its phase sequence to be at the motor: two make a circuit. */
const POLES_OF_A_CIRCUIT = 2;

/** What the terminals are connected to from when on. */
export function filmFeeds(trajectory: Trajectory): FilmFeed[] {
  const feeds: FilmFeed[] = [];
  for (const segment of trajectory.segments) {
    const conducting = { three: 3, two: 2, none: 0 } as const;
    const feed: FilmFeed = {
      t: segment.t0,
      sequence: segment.kind === 'none' ? 0 : sequenceAt(trajectory, segment.t0),
      conducting: conducting[segment.kind],
    };
    const last = feeds.at(-1);
    if (last?.sequence === feed.sequence && last.conducting === feed.conducting) continue;
    // A segment of no duration is overtaken by the next one.
    if (last?.t === feed.t) feeds.pop();
    feeds.push(feed);
  }
  return feeds;
}

/** By the poles: with direct current in two leads none of them conducts. */
function sequenceAt(trajectory: Trajectory, t: number): FilmFeed['sequence'] {
  const carries = (contactor: ContactorName) =>
    trajectory.channels.filter(
      ({ of, changes }) =>
        of.kind === 'pole' && of.contactor === contactor && channelValue(changes, t) !== 'open',
    ).length >= POLES_OF_A_CIRCUIT;
  if (carries('forward')) return 1;
  return carries('reverse') ? -1 : 0;
}
