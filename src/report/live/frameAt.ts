import type { Film, FilmColumn, FilmColumns } from './film.ts';
import type { Frame } from './frame.ts';
import { sampleBelow } from './sampleBelow.ts';

/** A film at t, s: on straight lines between its samples; before and after the run what it was at that end. */
export function frameAt(film: Film, t: number): Frame {
  const { columns } = film;
  const { index, share } = sampleBelow(columns.t, t);
  const frame = {} as Record<FilmColumn, number>;
  for (const name of Object.keys(columns) as (keyof FilmColumns)[]) {
    const column = columns[name];
    const from = column[index]!;
    frame[name] = share === 0 ? from : from + share * (column[index + 1]! - from);
  }
  return frame;
}
