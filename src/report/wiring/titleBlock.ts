import { cutToWidth } from '../displayWidth.ts';
import { columnsIn } from '../svgLayout.ts';
import type { Drawing, PlacedSymbol, PlacedText } from './drawing.ts';
import { stroke } from './strokes.ts';
import { FONT, type SymbolSet } from './symbolSet.ts';
import { WIRING_CAUTION } from './wiringWords.ts';

/** Distance of the notes' lines, px. */
const ROW = 14;
/** Height that title, scenario and symbols need, px. */
const TITLE_HEIGHT = 58;

/** What stands in the title block. */
export interface TitleBlock {
  readonly scheme: string;
  readonly scenario: string | null;
  readonly symbols: SymbolSet;
  readonly notes: readonly string[];
  readonly width: number;
  readonly height: number;
  /** Distance of the frame from the edge of the sheet, px. */
  readonly frame: number;
}

/** Share of the width that the title takes. */
const TITLE_SHARE = 0.46;

const SYMBOL_WORDS: Readonly<Record<SymbolSet, string>> = {
  iec: 'Symbols: IEC 60617',
  us: 'Symbols: North American practice',
};

/** Height of the strip at the foot of the sheet, px. */
export function titleBlockHeight(notes: readonly string[]): number {
  return Math.max(TITLE_HEIGHT, 8 + ROW * (notes.length + 1));
}

/** Frame of the sheet, title and notes at its foot. */
export function placeTitleBlock(block: TitleBlock): Drawing {
  const { width, height, frame } = block;
  const right = width - frame;
  const bottom = height - frame;
  const top = bottom - titleBlockHeight(block.notes);
  const split = Math.round(frame + TITLE_SHARE * (right - frame));
  const lines: PlacedSymbol = {
    art:
      stroke(`M${frame},${frame} L${right},${frame} L${right},${bottom} L${frame},${bottom} Z`) +
      stroke(`M${frame},${top} L${right},${top}`) +
      stroke(`M${split},${top} L${split},${bottom}`),
    at: { x: 0, y: 0 },
    ends: [],
    data: { symbol: 'frame' },
    power: false,
  };
  const small = { size: FONT.note, anchor: 'start' } as const;
  const shortened = (text: string, from: number, to: number, size: number) =>
    cutToWidth(text, columnsIn(to - from - 16, size));
  const title: PlacedText[] = [
    {
      text: shortened(block.scheme, frame, split, FONT.title * 1.1),
      x: frame + 8,
      y: top + 21,
      size: FONT.title,
      anchor: 'start',
      bold: true,
    },
    ...(block.scenario === null
      ? []
      : [{ text: shortened(block.scenario, frame, split, FONT.note), x: frame + 8, y: top + 37, ...small }]),
    { text: SYMBOL_WORDS[block.symbols], x: frame + 8, y: top + 52, ...small },
  ];
  const rows = [...block.notes, WIRING_CAUTION].map(
    (text, i): PlacedText => ({
      text: shortened(text, split, right, FONT.note),
      x: split + 8,
      y: top + 15 + ROW * i,
      ...small,
    }),
  );
  return { wires: [], symbols: [lines], texts: [...title, ...rows] };
}
