import { type CoilCircuit, DESIGNATIONS } from '../../starter/control/controlCircuit.ts';
import { crossReferences, hasMainContacts } from './crossReferences.ts';
import type { Drawing, PlacedSymbol, PlacedText, Point } from './drawing.ts';
import { type CoilKind, iecCoil } from './iecDevice.ts';
import type { ControlLayout } from './layoutControl.ts';
import { stroke } from './strokes.ts';
import { designationText, FONT, type SymbolSet } from './symbolSet.ts';
import { usCoil } from './usDevice.ts';

/** Distance of the rows of a list under a coil, px. */
export const REFERENCE_ROW = 13;

/** A coil with designation and terminal marks A1, A2. */
export function placeCoil(circuit: CoilCircuit, at: Point, half: number, symbols: SymbolSet): Drawing {
  const kind = coilKind(circuit);
  const iec = symbols === 'iec';
  const { x, y } = at;
  const designation = designationText(DESIGNATIONS[circuit.coil], symbols);
  const boxed = kind === 'onDelay' || kind === 'offDelay';
  const texts: readonly PlacedText[] = iec
    ? [
        { text: designation, x: x - (boxed ? 29 : 20), y: y + 4, size: FONT.designation, anchor: 'end' },
        { text: 'A1', x: x + 5, y: y - 15, size: FONT.mark, anchor: 'start' },
        { text: 'A2', x: x + 5, y: y + 22, size: FONT.mark, anchor: 'start' },
      ]
    : [
        {
          text: designation,
          x,
          y: y + (kind === 'solenoid' ? -12 : 4),
          size: FONT.designation,
          anchor: 'middle',
        },
        { text: 'A1', x: x - 18, y: y + 13, size: FONT.mark, anchor: 'end' },
        { text: 'A2', x: x + 18, y: y + 13, size: FONT.mark, anchor: 'start' },
      ];
  return {
    wires: [],
    symbols: [
      {
        art: iec ? iecCoil(kind, half) : usCoil(kind, half),
        at,
        ends: iec
          ? [
              { x, y: y - half },
              { x, y: y + half },
            ]
          : [
              { x: x - half, y },
              { x: x + half, y },
            ],
        data: { symbol: 'coil', device: circuit.coil },
        power: false,
      },
    ],
    texts,
  };
}

/** What stands under a coil of the IEC drawing: its time, then each of its contacts with the path it stands in. */
export function referencesBelow(
  circuit: CoilCircuit,
  layout: ControlLayout,
  x: number,
  top: number,
): Drawing {
  const symbols: PlacedSymbol[] = [];
  const texts: PlacedText[] = [];
  let y = top;
  const row = (text: string, left: number) => {
    y += REFERENCE_ROW;
    texts.push({ text, x: left, y, size: FONT.mark, anchor: 'start' });
  };
  // Whether it is late to pick up or to release shows in its symbol.
  if (circuit.delay !== undefined) row(timeWords(circuit.delay.time), x - 30);
  if (circuit.coil === 'lockout') row(`locks -${DESIGNATIONS.switchForward}`, x - 30);
  const contacts = crossReferences(layout, circuit.coil);
  for (const { kind, terminals, path } of contacts) {
    row(`${terminals} /${path}`, x - 15);
    symbols.push(listMark(kind, { x: x - 30, y: y - 3.5 }));
  }
  if (hasMainContacts(circuit.coil)) row('1-2, 3-4, 5-6', x - 30);
  return { wires: [], symbols, texts };
}

/** What stands beside a coil of the North American drawing: lines of its contacts, those of break contacts underlined. */
export function referencesBeside(circuit: CoilCircuit, layout: ControlLayout, at: Point): PlacedText | null {
  const delay = delayWords(circuit);
  const head = [
    ...(delay === null ? [] : [`${delay} `]),
    ...(circuit.coil === 'lockout' ? [`locks ${DESIGNATIONS.switchForward} `] : []),
  ].join('');
  const contacts = crossReferences(layout, circuit.coil);
  const numbers = contacts.flatMap(({ kind, path }, i) => [
    { text: String(path), underlined: kind === 'break' },
    { text: i === contacts.length - 1 ? '' : ', ', underlined: false },
  ]);
  const open = contacts.length === 0 ? '' : '(';
  const close = contacts.length === 0 ? '' : ')';
  const pieces = [
    { text: `${head}${open}`, underlined: false },
    ...numbers,
    { text: close, underlined: false },
  ].filter(({ text }) => text !== '');
  const text = pieces.map((piece) => piece.text).join('');
  if (text.trim() === '') return null;
  return { text, pieces, x: at.x, y: at.y, size: FONT.mark, anchor: 'start' };
}

function coilKind(circuit: CoilCircuit): CoilKind {
  return circuit.coil === 'lockout' ? 'solenoid' : (circuit.delay?.kind ?? 'relay');
}

function delayWords({ delay }: CoilCircuit): string | null {
  if (delay === undefined) return null;
  return `${delay.kind === 'onDelay' ? 'on' : 'off'}-delay ${timeWords(delay.time)}`;
}

function listMark(kind: 'make' | 'break', at: Point): PlacedSymbol {
  const art =
    kind === 'make'
      ? stroke('M0,0 L3,0 L8,-4') + stroke('M9,0 L12,0')
      : stroke('M0,0 L3,0 L10,-3') + stroke('M9,-4.5 L9,0 L12,0');
  return { art, at, ends: [], data: { symbol: 'listMark', kind }, power: false };
}

/** A setting as on the timer: no more digits than were stated. */
function timeWords(time: number): string {
  return `${Number(time.toPrecision(3))} s`;
}
