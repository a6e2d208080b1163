import type { FigureSpec } from '../../src/report/figureSpec.ts';

declare global {
  /** Draws a figure below the cell of a notebook that calls it. */
  function show(figure: FigureSpec): void;
}
