import type { ControlCircuit } from '../../starter/control/controlCircuit.ts';
import { type Drawing, type PlacedText, type Point, together, wire } from './drawing.ts';
import { joinedPieces } from './joinedPieces.ts';
import type { ControlLayout } from './layoutControl.ts';
import type { SlotPoint } from './layoutNetwork.ts';
import { placeCoil, REFERENCE_ROW, referencesBelow, referencesBeside } from './placeCoil.ts';
import { placeContact } from './placeContact.ts';
import { FONT, type SymbolSet } from './symbolSet.ts';

/** Where and how large slots are on the sheet. */
export interface Grid {
  readonly symbols: SymbolSet;
  /** Place of slot (0, 0) of the layout, px. */
  readonly origin: Point;
  /** Length of a slot along the current, px. */
  readonly slot: number;
  /** Distance of path `v` from the first one, px. */
  readonly across: (v: number) => number;
}

/** Place of a slot point on the sheet: IEC paths run downwards, North American lines to the right. */
export function onSheet({ symbols, origin, slot, across }: Grid, { u, v }: SlotPoint): Point {
  return symbols === 'iec'
    ? { x: origin.x + across(v), y: origin.y + u * slot }
    : { x: origin.x + u * slot, y: origin.y + across(v) };
}

/** Draws a control circuit between its rails, with designations, marks and numbers of the paths. */
export function placeControl(circuit: ControlCircuit, layout: ControlLayout, grid: Grid): Drawing {
  const half = grid.slot / 2;
  const middle = ({ u, v }: SlotPoint) => onSheet(grid, { u: u + 0.5, v });
  const contacts = layout.contacts.map((one) =>
    placeContact(one.contact, middle(one), half, circuit, grid.symbols),
  );
  const coils = layout.coils.map((one) => placeCoil(one.circuit, middle(one), half, grid.symbols));
  const wires = joinedPieces(layout.wires.map(([from, to]) => [onSheet(grid, from), onSheet(grid, to)]));
  return together([
    {
      wires: wires.map(([from, to]) => wire(false, from.x, from.y, to.x, to.y)),
      symbols: [],
      texts: numbers(layout, grid),
    },
    ...contacts,
    ...coils,
    references(layout, grid),
  ]);
}

/** Height of the longest list under a coil, px. */
export function referencesHeight({ coils }: ControlCircuit, layout: ControlLayout): number {
  const rows = coils.map((coil) => referencesBelow(coil, layout, 0, 0).texts.length);
  return Math.max(...rows) * REFERENCE_ROW;
}

function references(layout: ControlLayout, grid: Grid): Drawing {
  const parts = layout.coils.map(({ circuit, u, v }): Drawing => {
    const { x, y } = onSheet(grid, { u: u + 1, v });
    if (grid.symbols === 'iec') return referencesBelow(circuit, layout, x, y + 8);
    const text = referencesBeside(circuit, layout, { x: x + 10, y: y + 4 });
    return { wires: [], symbols: [], texts: text === null ? [] : [text] };
  });
  return together(parts);
}

function numbers(layout: ControlLayout, grid: Grid): readonly PlacedText[] {
  const rail = onSheet(grid, layout.supply);
  return layout.paths.map((v, i) => {
    const { x, y } = onSheet(grid, { u: 0, v });
    return grid.symbols === 'iec'
      ? { text: String(i + 1), x, y: rail.y - 12, size: FONT.mark, anchor: 'middle' }
      : { text: String(i + 1), x: rail.x - 10, y: y + 4, size: FONT.mark, anchor: 'end' };
  });
}
