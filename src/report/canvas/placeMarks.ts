import type { EventMark } from '../figureSpec.ts';
import { type PlacedLabel, placeLabels, textWidth } from '../svgLayout.ts';

/** Marks of the visible stretch: those with words in their places, and where the others stand, px. */
export interface PlacedMarks {
  readonly named: readonly PlacedLabel[];
  /** There was no room for their words. */
  readonly unnamed: readonly number[];
}

/** Room for the words of marks, px. */
export interface MarkRoom {
  readonly left: number;
  /** Right edge that no word may pass. */
  readonly right: number;
  /** Rows above each other at most. */
  readonly rows: number;
  readonly textSize: number;
}

/**
 * Puts marks in rows so that no words overlap. Where there is room for some only, the earlier ones keep their words; a shorter
 * stretch has room for more.
 *
 * @param marks of the visible stretch, in order
 * @param pxAt px of a value of the shared axis
 */
export function placeMarks(
  marks: readonly EventMark[],
  pxAt: (x: number) => number,
  { left, right, rows, textSize }: MarkRoom,
): PlacedMarks {
  let kept: { readonly x: number; readonly label: string }[] = [];
  let named: readonly PlacedLabel[] = [];
  const unnamed: number[] = [];
  for (const mark of marks) {
    const wanted = [...kept, { x: pxAt(mark.x), label: mark.label }];
    const placed = placeLabels(wanted, right, textSize);
    const fits = placed.every(
      (one) => one.row < rows && (!one.end || one.x - textWidth(one.label, textSize) >= left),
    );
    if (fits) {
      kept = wanted;
      named = placed;
    } else unnamed.push(pxAt(mark.x));
  }
  return { named, unnamed };
}
