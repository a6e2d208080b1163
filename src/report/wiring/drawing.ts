/** A place on the sheet, px: x to the right, y downwards. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A conductor: horizontal and vertical pieces. It ends in connections; it only passes over what it crosses. */
export interface Wire {
  readonly points: readonly Point[];
  /** Main conductors are drawn thicker than those of the control circuit. */
  readonly power: boolean;
}

/** A device's symbol, drawn around its own origin. */
export interface PlacedSymbol {
  /** Elements in the symbol's own axes, see `SymbolArt`. */
  readonly art: string;
  readonly at: Point;
  /** Turned so that what ran downwards runs to the right. */
  readonly turned?: true;
  /** Where conductors meet it, on the sheet, in the order of its terminals. */
  readonly ends: readonly Point[];
  /** What it is, for programs that read the drawing: attributes `data-…`. */
  readonly data: Readonly<Record<string, string>>;
  readonly power: boolean;
}

/** A line of text. */
export interface PlacedText {
  readonly text: string;
  readonly x: number;
  /** Baseline. */
  readonly y: number;
  /** px */
  readonly size: number;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly bold?: true;
  /** Instead of `text` as a whole: its pieces, some underlined. Together they are `text`. */
  readonly pieces?: readonly { readonly text: string; readonly underlined: boolean }[];
}

/** What a part of the sheet consists of. */
export interface Drawing {
  readonly wires: readonly Wire[];
  readonly symbols: readonly PlacedSymbol[];
  readonly texts: readonly PlacedText[];
}

/** Puts parts of a sheet together. */
export function together(parts: readonly Drawing[]): Drawing {
  return {
    wires: parts.flatMap((part) => part.wires),
    symbols: parts.flatMap((part) => part.symbols),
    texts: parts.flatMap((part) => part.texts),
  };
}

/** A conductor through points given as x, y, x, y, … */
export function wire(power: boolean, ...coordinates: readonly number[]): Wire {
  const points: Point[] = [];
  for (let i = 0; i + 1 < coordinates.length; i += 2)
    points.push({ x: coordinates[i]!, y: coordinates[i + 1]! });
  return { points, power };
}

/** A part with conductors alone. */
export function wiresOnly(...wires: readonly Wire[]): Drawing {
  return { wires, symbols: [], texts: [] };
}
