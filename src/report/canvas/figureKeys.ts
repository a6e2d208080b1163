import { type Span, zoomed } from './zoom.ts';

/** What a key asks of a picture: the cursor somewhere else, or another stretch. */
export type KeyWish =
  | { readonly kind: 'seek'; readonly x: number }
  | { readonly kind: 'span'; readonly span: Span | null };

/** A key that was pressed on a picture, and how the picture stands. */
export interface KeyStroke {
  /** Its name as browsers give it. */
  readonly key: string;
  readonly shift: boolean;
  /** Where the cursor stands, and what it moves along, in one unit. */
  readonly cursor: number;
  readonly range: Span;
  /** Visible stretch; null: the whole. */
  readonly span: Span | null;
  readonly whole: Span;
}

/** One stroke of an arrow key, as a share of the visible stretch; ten times that with shift. */
const STEP = 1 / 200;
const SHIFTED = 10;
/** How much one stroke of plus enlarges. */
const FACTOR = 2;

/**
 * Arrows move the cursor by a two-hundredth of what is visible, with shift or as page keys by ten times as much; home and end go to the
 * edges of what is visible, plus and minus enlarge and reduce about the cursor, escape shows all. null: the key is not the picture's.
 */
export function keyWish({ key, shift, cursor, range, span, whole }: KeyStroke): KeyWish | null {
  const [from, to] = span ?? range;
  const step = STEP * (to - from) * (shift ? SHIFTED : 1);
  const seek = (x: number): KeyWish => ({ kind: 'seek', x: Math.min(range[1], Math.max(range[0], x)) });
  switch (key) {
    case 'ArrowRight':
    case 'ArrowUp':
      return seek(cursor + step);
    case 'ArrowLeft':
    case 'ArrowDown':
      return seek(cursor - step);
    case 'PageUp':
      return seek(cursor + SHIFTED * STEP * (to - from));
    case 'PageDown':
      return seek(cursor - SHIFTED * STEP * (to - from));
    case 'Home':
      return seek(from);
    case 'End':
      return seek(to);
    case '+':
    case '=':
      return { kind: 'span', span: zoomed(span, whole, FACTOR, cursor) };
    case '-':
    case '_':
      return { kind: 'span', span: zoomed(span, whole, 1 / FACTOR, cursor) };
    case 'Escape':
      return { kind: 'span', span: null };
    default:
      return null;
  }
}

/** How much a turn of a wheel enlarges: a tenth for a usual notch of 100 px, reducing towards the hand. */
export function wheelFactor(deltaY: number): number {
  return 1.1 ** (-deltaY / 100);
}
