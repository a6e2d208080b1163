import type { Edit } from '../../scenario/edit/edit.ts';
import type { Film } from './film.ts';

/** How much longer a run lasts when time is let pass, s. */
export const PASSING_TIME = 1;

/**
 * The change that lets a run last longer by `PASSING_TIME`.
 *
 * @param asked until when it was last asked to last while the run of that is not there yet, s; null: nothing was asked
 */
export function letPass(
  { tEnd }: Pick<Film, 'tEnd'>,
  asked: number | null,
): Extract<Edit, { kind: 'endTime' }> & {
  readonly value: number;
} {
  return { kind: 'endTime', value: (asked ?? tEnd) + PASSING_TIME };
}
