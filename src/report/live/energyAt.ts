import { displayUnit, formatNumber } from '../formatQuantity.ts';
import type { Quantity } from '../palette.ts';
import type { Film, FilmEnergy } from './film.ts';
import { sampleBelow } from './sampleBelow.ts';

/** Where the energy has gone up to an instant, as one bar of several. */
export interface EnergyBar {
  readonly key: FilmEnergy['key'];
  readonly label: string;
  readonly quantity: Quantity;
  /** With unit. */
  readonly text: string;
  /** Size against the largest of all bars over the whole film, 0 … 1: bars grow as the run goes on. */
  readonly share: number;
  /** −1: given back, such as kinetic energy while the machine slows down. */
  readonly sign: 1 | 0 | -1;
}

/** A bar with its place in a drawing 100 wide, in which zero stays where it is over the whole film. */
export interface EnergyPictureBar extends EnergyBar {
  readonly x: number;
  readonly width: number;
}

/** The bars of an instant and where they begin. */
export interface EnergyPicture {
  readonly zeroX: number;
  readonly bars: readonly EnergyPictureBar[];
}

/** Less than this share of the largest is nothing: a bar thinner than its outline, and digits that only flicker. */
const VISIBLE = 1e-4;

/** Width of a bar's drawing, in its own units. */
const WIDTH = 100;

/** The energies of a film up to t, s. */
export function energyAt(film: Film, t: number): EnergyBar[] {
  const { low, high } = extentOf(film);
  const largest = Math.max(-low, high);
  const { label: unit } = displayUnit('J', { system: film.units });
  return valuesAt(film, t).map(({ row, value }) => {
    const shown = Math.abs(value) > VISIBLE * largest ? value : 0;
    return {
      key: row.key,
      label: row.label,
      quantity: row.quantity,
      text: `${formatNumber(shown)} ${unit}`,
      share: shown === 0 ? 0 : Math.abs(shown) / largest,
      sign: shown === 0 ? 0 : shown > 0 ? 1 : -1,
    };
  });
}

/** The bars of the energies up to t, s, to the right of zero where they have been taken, to the left where given back. */
export function energyPicture(film: Film, t: number): EnergyPicture {
  const { low, high } = extentOf(film);
  const span = high - low;
  const largest = Math.max(-low, high);
  const zeroX = span > 0 ? (WIDTH * -low) / span : 0;
  const bars = energyAt(film, t).map((bar) => {
    const width = span > 0 ? (WIDTH * bar.share * largest) / span : 0;
    return { ...bar, width, x: bar.sign < 0 ? zeroX - width : zeroX };
  });
  return { zeroX, bars };
}

function valuesAt({ energies }: Film, t: number): { readonly row: FilmEnergy; readonly value: number }[] {
  const { index, share } = sampleBelow(energies.t, t);
  return energies.rows.map((row) => {
    const from = row.values[index]!;
    return { row, value: share === 0 ? from : from + share * (row.values[index + 1]! - from) };
  });
}

/** Smallest and largest value of any row over the whole film, zero among them; found once per film. */
function extentOf(film: Film): { readonly low: number; readonly high: number } {
  const known = extents.get(film);
  if (known !== undefined) return known;
  let low = 0;
  let high = 0;
  for (const { values } of film.energies.rows)
    for (const value of values) {
      if (value < low) low = value;
      if (value > high) high = value;
    }
  const extent = { low, high };
  extents.set(film, extent);
  return extent;
}

/** A film never changes. */
const extents = new WeakMap<Film, { readonly low: number; readonly high: number }>();
