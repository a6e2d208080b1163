import type { FilmColumn } from './film.ts';

/** One instant of a film: every column's value there, in the film's units. */
export type Frame = Readonly<Record<FilmColumn, number>>;
