import {
  allContacts,
  type ControlCircuit,
  DESIGNATIONS,
  DEVICE_WORDS,
  type Device,
} from '../../starter/control/controlCircuit.ts';
import { textWidth } from '../svgLayout.ts';
import { crossReferences } from './crossReferences.ts';
import type { Drawing, PlacedText } from './drawing.ts';
import type { ControlLayout } from './layoutControl.ts';
import { designationText, FONT, type SymbolSet } from './symbolSet.ts';

/** A line of the legend. */
export interface LegendEntry {
  /** As in the drawing: "-K1". */
  readonly designation: string;
  /** What it is; for devices without a coil also where their contacts stand. */
  readonly words: string;
}

/** Distance of the legend's lines, px. */
const ROW = 15;
/** Clear space between its columns, px. */
const GAP = 24;

/**
 * Every designation of the drawing with words, ordered by letter and number.
 *
 * @param others designations that no control circuit names
 */
export function legendEntries(
  circuit: ControlCircuit,
  layout: ControlLayout,
  others: readonly (readonly [string, string])[],
  symbols: SymbolSet,
): readonly LegendEntry[] {
  const coils = new Set<Device>(circuit.coils.map(({ coil }) => coil));
  const devices = [...new Set<Device>([...coils, ...allContacts(circuit).map(({ device }) => device)])];
  const words = new Map<string, string>(others);
  for (const designation of new Set(devices.map((device) => DESIGNATIONS[device]))) {
    const same = devices.filter((device) => DESIGNATIONS[device] === designation);
    // Contacts of both directions belong to one switch.
    const name = same.length > 1 ? DEVICE_WORDS[same[0]!].replace(/ \(.*\)$/u, '') : DEVICE_WORDS[same[0]!];
    const paths = same.flatMap((device) => (coils.has(device) ? [] : crossReferences(layout, device)));
    words.set(designation, paths.length === 0 ? name : `${name}: ${whereabouts(paths, symbols)}`);
  }
  return [...words]
    .sort(([a], [b]) => a.charCodeAt(0) - b.charCodeAt(0) || numberOf(a) - numberOf(b))
    .map(([designation, text]) => ({ designation: designationText(designation, symbols), words: text }));
}

/** The legend in as many columns as fit, its last line standing on `bottom`. */
export function placeLegend(
  entries: readonly LegendEntry[],
  left: number,
  width: number,
  bottom: number,
): Drawing {
  const { rows, column, indent } = shape(entries, width);
  const top = bottom - rows * ROW;
  const texts = entries.flatMap(({ designation, words }, i): PlacedText[] => {
    const x = left + Math.floor(i / rows) * column;
    const y = top + ((i % rows) + 1) * ROW - 4;
    const common = { y, size: FONT.note, anchor: 'start' } as const;
    return [
      { ...common, text: designation, x, bold: true },
      { ...common, text: words, x: x + indent },
    ];
  });
  return { wires: [], symbols: [], texts };
}

/** Height of the legend in columns over a width, px. */
export function legendHeight(entries: readonly LegendEntry[], width: number): number {
  return shape(entries, width).rows * ROW;
}

/** Width of the legend in one column, px. */
export function legendWidth(entries: readonly LegendEntry[]): number {
  return shape(entries, 0).column - GAP;
}

function shape(
  entries: readonly LegendEntry[],
  width: number,
): { readonly rows: number; readonly column: number; readonly indent: number } {
  const widest = (texts: readonly string[]) => Math.max(...texts.map((text) => textWidth(text, FONT.note)));
  const indent = widest(entries.map(({ designation }) => designation)) + 10;
  const natural = indent + widest(entries.map(({ words }) => words)) + GAP;
  const columns = Math.max(1, Math.floor((width + GAP) / natural));
  const rows = Math.ceil(entries.length / columns);
  return { rows, column: natural, indent };
}

function whereabouts(paths: readonly { readonly path: number }[], symbols: SymbolSet): string {
  const numbers = [...new Set(paths.map(({ path }) => path))].sort((a, b) => a - b);
  const noun = symbols === 'iec' ? 'path' : 'line';
  return `${noun}${numbers.length > 1 ? 's' : ''} ${numbers.join(', ')}`;
}

function numberOf(designation: string): number {
  return Number.parseInt(designation.slice(1), 10);
}
