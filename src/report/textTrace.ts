import { computeEnvelope } from './envelope.ts';

/** Size and scale of a trace drawn in characters. */
export interface TextTraceOptions {
  /** Characters across. */
  readonly columns: number;
  /** Characters down. */
  readonly rows: number;
  /** Plain ASCII instead of braille dots. */
  readonly ascii: boolean;
}

/** Braille: 2 × 4 dots in a character; the bit of the dot at column x, row y of its cell. */
const DOT_BITS = [
  [0x01, 0x02, 0x04, 0x40],
  [0x08, 0x10, 0x20, 0x80],
] as const;
const BRAILLE_BLANK = 0x2800;

/** A drawing in text, top line first. */
export interface TextTrace {
  readonly lines: readonly string[];
  /** Line on which zero lies. */
  readonly zeroLine: number;
}

/**
 * Draws a trace in text: every column of dots is filled between the smallest and the largest value there, so no crest
 * is lost. Each line has `columns` characters.
 *
 * @param domain lowest and highest value drawn
 */
export function textTrace(
  x: Float64Array,
  y: Float64Array,
  domain: readonly [number, number],
  options: TextTraceOptions,
): TextTrace {
  const across = options.ascii ? 1 : 2;
  const down = options.ascii ? 1 : 4;
  const width = options.columns * across;
  const height = options.rows * down;
  const [low, high] = domain;
  const dotOf = (value: number) => {
    const place = Math.round(((high - value) / (high - low || 1)) * (height - 1));
    return Math.min(height - 1, Math.max(0, place));
  };
  const filled = Array.from({ length: height }, () => new Uint8Array(width));
  const envelope = computeEnvelope(x, y, width);
  const from = x[0] ?? 0;
  const span = (x.at(-1) ?? 1) - from || 1;
  for (let i = 0; i < envelope.x.length; i += 1) {
    const column = Math.min(width - 1, Math.floor(((envelope.x[i]! - from) / span) * width));
    const top = dotOf(envelope.high[i]!);
    const bottom = dotOf(envelope.low[i]!);
    for (let dot = top; dot <= bottom; dot += 1) filled[dot]![column] = 1;
  }
  const zero = dotOf(0);
  const lines = Array.from({ length: options.rows }, (_, row) =>
    Array.from({ length: options.columns }, (_, column) =>
      options.ascii ? asciiCell(filled, row, column, zero) : brailleCell(filled, row, column, zero),
    ).join(''),
  );
  return { lines, zeroLine: Math.floor(zero / down) };
}

function asciiCell(filled: readonly Uint8Array[], row: number, column: number, zero: number): string {
  if (filled[row]![column] === 1) return '#';
  return row === zero ? '-' : ' ';
}

function brailleCell(filled: readonly Uint8Array[], row: number, column: number, zero: number): string {
  let bits = 0;
  for (const dx of [0, 1] as const) {
    for (const dy of [0, 1, 2, 3] as const) {
      const dotRow = 4 * row + dy;
      const dotColumn = 2 * column + dx;
      // The zero line is every other dot, so that it is told apart from the trace.
      const onZero = dotRow === zero && dx === 0;
      if (filled[dotRow]![dotColumn] === 1 || onZero) bits |= DOT_BITS[dx][dy];
    }
  }
  return bits === 0 ? ' ' : String.fromCodePoint(BRAILLE_BLANK + bits);
}
