import type { FigureSpec, LinesPanel } from '../figureSpec.ts';
import type { Quantity } from '../palette.ts';
import type { Film, FilmColumn } from './film.ts';

const PANELS: readonly {
  readonly label: string;
  readonly series: readonly (readonly [FilmColumn, string, Quantity])[];
}[] = [
  {
    label: 'Flux linkage, crest (Wb)',
    series: [
      ['psiAlpha', 'stator, along phase A', 'electrical'],
      ['psiBeta', 'stator, across', 'electrical'],
      ['psiRAlpha', 'rotor, along phase A', 'speed'],
      ['psiRBeta', 'rotor, across', 'speed'],
    ],
  },
  {
    label: 'Terminal voltage, crest (V)',
    series: [
      ['uAlpha', 'along phase A', 'voltage'],
      ['uBeta', 'across', 'voltage'],
    ],
  },
  { label: 'Shaft position (rad)', series: [['position', 'shaft', 'speed']] },
];

/** What the picture of the field is drawn from, over the whole run: space vectors in axes at rest, along phase A and across it. */
export function fluxesOverTime(film: Film): FigureSpec {
  const { columns } = film;
  return {
    id: 'field',
    title: 'Fluxes and voltage in the machine',
    note: '',
    description: '',
    x: { label: 'Time (s)', domain: [film.tStart, film.tEnd] },
    panels: PANELS.map(
      ({ label, series }): LinesPanel => ({
        kind: 'lines',
        weight: 1,
        y: { label, domain: [-1, 1] },
        series: series.map(([column, name, quantity]) => ({
          form: 'line',
          label: name,
          quantity,
          dash: 'solid',
          x: columns.t,
          y: columns[column],
        })),
        references: [],
        points: [],
      }),
    ),
    marks: [],
    bands: [],
  };
}
