import type { Edit } from '../../scenario/edit/edit.ts';
import type { Film } from './film.ts';

/** How much longer a run lasts when time is let pass, s. */
export const PASSING_TIME = 1;

/** The change that lets a run last longer by `PASSING_TIME`. */
export function letPass({ tEnd }: Pick<Film, 'tEnd'>): Edit {
  return { kind: 'endTime', value: tEnd + PASSING_TIME };
}
