import { displayWidth } from './displayWidth.ts';

/**
 * Width of a text column in em for layout without a font: wider than the average of common sans-serif faces, so that
 * a text that fits by this estimate fits on screen.
 */
const EM_PER_COLUMN = 0.57;

/** Estimated width of text at a font size, both in px. */
export function textWidth(text: string, fontSize: number): number {
  return displayWidth(text) * EM_PER_COLUMN * fontSize;
}

/** How many columns of text fit into a width, px. */
export function columnsIn(width: number, fontSize: number): number {
  return Math.max(8, Math.floor(width / (EM_PER_COLUMN * fontSize)));
}

/** A label on the rising line of an event: text from `x` rightwards, or leftwards where `end` is set. */
export interface PlacedLabel {
  readonly x: number;
  readonly label: string;
  /** 0 is the row next to the panels. */
  readonly row: number;
  readonly end: boolean;
}

/** Clear space between a label and the next line, px. */
const LABEL_GAP = 8;

/**
 * Puts event labels in rows above the panels so that no two overlap, none is cut at the right edge, and no event's
 * line, rising to its own label, crosses another label.
 *
 * @param marks ordered by x, px
 * @param right right edge no label may pass, px
 */
export function placeLabels(
  marks: readonly { readonly x: number; readonly label: string }[],
  right: number,
  fontSize: number,
): PlacedLabel[] {
  const placed: PlacedLabel[] = [];
  // From right to left: a label must stand above every line that rises within its own span.
  for (const mark of marks.toReversed()) {
    const width = textWidth(mark.label, fontSize) + LABEL_GAP;
    const end = mark.x + width > right;
    const from = end ? mark.x - width : mark.x;
    const to = end ? mark.x : mark.x + width;
    const crossed = placed.filter((other) => {
      const otherWidth = textWidth(other.label, fontSize) + LABEL_GAP;
      const otherFrom = other.end ? other.x - otherWidth : other.x;
      const otherTo = other.end ? other.x : other.x + otherWidth;
      return otherFrom <= to && otherTo >= from;
    });
    placed.push({ ...mark, end, row: Math.max(-1, ...crossed.map((other) => other.row)) + 1 });
  }
  return placed.toReversed();
}

/**
 * Moves label positions apart so that neighbours keep `gap`, staying near where they want to be and inside
 * [low, high].
 *
 * @param wanted positions, px, any order; the result has the same order
 */
export function spreadPositions(wanted: readonly number[], gap: number, low: number, high: number): number[] {
  const order = wanted.map((_, i) => i).sort((a, b) => wanted[a]! - wanted[b]!);
  const placed = wanted.map((value) => Math.min(high, Math.max(low, value)));
  let floor = low;
  for (const i of order) {
    placed[i] = Math.max(placed[i]!, floor);
    floor = placed[i]! + gap;
  }
  let ceiling = high;
  for (const i of order.toReversed()) {
    placed[i] = Math.min(placed[i]!, ceiling);
    ceiling = placed[i]! - gap;
  }
  return placed;
}
