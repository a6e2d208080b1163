import type { Span } from './zoom.ts';

/** An upright rectangle, px. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Where a panel is painted. */
export interface PaintedPlot extends Box {
  /** What its vertical axis spans, in its unit; null where it has none. */
  readonly domain: readonly [number, number] | null;
}

/** Where everything of a painted figure stands, and the way back from a place to a value. Lengths in px. */
export interface PaintedLayout extends Box {
  readonly width: number;
  readonly height: number;
  /** Visible stretch of the shared axis, in its unit. */
  readonly span: Span;
  /** The stretch that can be shown. */
  readonly whole: Span;
  /** One per panel of the figure, in its order. */
  readonly plots: readonly PaintedPlot[];
  /** px of a value of the shared axis, also beyond the edges. */
  pxAt(x: number): number;
  /** Value of the shared axis at px, at most as far as is visible. */
  xAt(px: number): number;
  /** Height of a value in a panel, px; NaN where it has no axis. */
  pyAt(panel: number, y: number): number;
  /** Index of the panel at a height, px; −1 between panels. */
  panelAt(py: number): number;
}
