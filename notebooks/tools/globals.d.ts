import type { FigureSpec } from '../../src/report/figureSpec.ts';

declare global {
  /** Draws a figure below the cell of a notebook that calls it. */
  function show(figure: FigureSpec): void;
  /**
   * A scenario's text with one piece in place of another.
   *
   * @throws Error where the piece is not there: a reader has changed it, and what follows would speak of something else
   */
  function replaced(text: string, before: string, after: string): string;
}
