import type { FigureSpec } from '../figureSpec.ts';
import type { PaintOptions } from './layoutFigure.ts';
import type { PaintedLayout } from './paintedLayout.ts';
import type { Span } from './zoom.ts';

/** Size of text of a picture that goes away, px, and the least width that gives it the form of a page. */
const TEXT = 13;
const LEAST_WIDTH = 760;
/** Height added for title and note, px. */
const HEADING = 70;

/** How a picture is painted that is saved: light, with its title, as wide as a page at least. */
export function printOptions(
  layout: PaintedLayout,
  span: Span | null,
  behind: FigureSpec | null,
): PaintOptions {
  return {
    width: Math.max(LEAST_WIDTH, layout.width),
    height: layout.height + HEADING,
    theme: 'light',
    textSize: TEXT,
    span,
    behind,
    heading: true,
  };
}

/** Own pixels of a saved picture to one px of its layout: sharp on paper. */
export const PRINT_RATIO = 2;

/** How the bars of the energies are painted that are saved. */
export const ENERGY_PRINT: PaintOptions = {
  width: LEAST_WIDTH,
  height: 420,
  theme: 'light',
  textSize: TEXT,
  span: null,
  behind: null,
  heading: true,
};
