import type { FigureSpec, LinesPanel } from '../figureSpec.ts';
import { displayUnit } from '../formatQuantity.ts';
import { energyAt } from './energyAt.ts';
import type { Film } from './film.ts';
import { sampleBelow } from './sampleBelow.ts';

/** Share of the drawing left free beyond the longest bar. */
const MARGIN = 0.08;

/** The bars of an instant t, s, as a figure to be saved. */
export function energySpec(film: Film, t: number): FigureSpec {
  const { label: unit } = displayUnit('J', { system: film.units });
  const bars = energyAt(film, t);
  const values = bars.map(({ key }) => valueAt(film, key, t));
  const least = Math.min(0, ...values);
  const most = Math.max(0, ...values);
  const margin = MARGIN * (most - least || 1);
  return {
    id: 'energy-at',
    title: `Where the energy has gone up to ${t.toFixed(4)} s`,
    note: 'From the start of the run. What comes in is the sum of all the others; left of zero is given back.',
    description: bars.map(({ label, text }) => `${label} ${text}`).join('; '),
    x: { label: `Energy (${unit})`, domain: [least - (least < 0 ? margin : 0), most + margin] },
    panels: [
      {
        kind: 'bars',
        rows: bars.map(({ label, text, quantity }, i) => ({ label, text, quantity, value: values[i]! })),
      },
    ],
    marks: [],
    bands: [],
  };
}

/** The same energies over the whole run, for a table of numbers. */
export function energiesOverTime(film: Film): FigureSpec {
  const { label: unit } = displayUnit('J', { system: film.units });
  const { t, rows } = film.energies;
  const panel: LinesPanel = {
    kind: 'lines',
    weight: 1,
    y: { label: `Energy (${unit})`, domain: [0, 1] },
    series: rows.map(({ label, quantity, values }) => ({
      form: 'line',
      label,
      quantity,
      dash: 'solid',
      x: t,
      y: values,
    })),
    references: [],
    points: [],
  };
  return {
    id: 'energies',
    title: 'Where the energy has gone',
    note: '',
    description: '',
    x: { label: 'Time (s)', domain: [film.tStart, film.tEnd] },
    panels: [panel],
    marks: [],
    bands: [],
  };
}

function valueAt(film: Film, key: string, t: number): number {
  const row = film.energies.rows.find((one) => one.key === key);
  return row === undefined ? 0 : interpolated(film.energies.t, row.values, t);
}

/** On straight lines between the instants; at its ends outside them. */
function interpolated(instants: Float64Array, values: Float64Array, t: number): number {
  const { index, share } = sampleBelow(instants, t);
  const from = values[index]!;
  return share === 0 ? from : from + share * (values[index + 1]! - from);
}
