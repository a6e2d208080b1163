import type { Film, FilmColumn, FilmEnergy } from '../../../../src/report/live/film.ts';

/** Columns of a film as functions of time; what is left out is zero. */
export type FilmFunctions = Partial<Record<Exclude<FilmColumn, 't'>, (t: number) => number>>;

const NAMES: readonly Exclude<FilmColumn, 't'>[] = [
  'iA',
  'iB',
  'iC',
  'torque',
  'loadTorque',
  'couplingTorque',
  'speed',
  'loadSpeed',
  'voltage',
  'position',
  'uAlpha',
  'uBeta',
  'psiAlpha',
  'psiBeta',
  'psiRAlpha',
  'psiRBeta',
];

/** A film of known functions on [0, tEnd] s: 400 V, 50 Hz, two pairs of poles, flux base 1 Wb, 10 A and 50 N·m rated. */
export function fakeFilm(
  functions: FilmFunctions,
  tEnd: number,
  more: Partial<Film> = {},
  count = 401,
): Film {
  const t = Float64Array.from({ length: count }, (_, i) => (tEnd * i) / (count - 1));
  const columns = Object.fromEntries(NAMES.map((name) => [name, t.map(functions[name] ?? (() => 0))]));
  return {
    units: 'SI',
    tStart: 0,
    tEnd,
    columns: { t, ...columns } as unknown as Film['columns'],
    energies: { t: Float64Array.of(0, tEnd), rows: [] },
    channels: [],
    thermal: null,
    events: [],
    feeds: [{ t: 0, sequence: 1, conducting: 3 }],
    base: {
      currentCrest: 10,
      torque: 50,
      synchronousSpeed: 1500,
      lineVoltage: 400,
      voltageCrest: 300,
      flux: 1,
      polePairs: 2,
      frequency: 50,
    },
    ...more,
  };
}

/** An energy against the two ends of a run. */
export function energyRow(key: FilmEnergy['key'], ...values: readonly number[]): FilmEnergy {
  return { key, label: key, quantity: 'heat', values: Float64Array.from(values) };
}
