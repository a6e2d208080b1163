import type { FigureSpec } from '../figureSpec.ts';
import type { Theme } from '../palette.ts';
import type { PaintedLayout } from './paintedLayout.ts';
import { colour, ink, type PaintStyle, paintLine } from './paintStyle.ts';
import type { Pen } from './pen.ts';
import { valueAt } from './samples.ts';
import type { Span } from './zoom.ts';

/** Radius of a dot on a curve and of the moving point, px. */
const DOT = 3.5;
const POINT = 6;
/** How much of the ground a chosen stretch takes away, share of one. */
const STRETCH_OPACITY = 0.15;

const styleOf = (theme: Theme): PaintStyle => ({ theme, textSize: 0, narrow: false });

/** Paints a line through all panels at a value of the shared axis, and a dot on each curve there. Nothing where it is out of sight. */
export function paintCursor(
  pen: Pen,
  layout: PaintedLayout,
  spec: FigureSpec,
  x: number,
  theme: Theme,
): void {
  if (!(x >= layout.span[0] && x <= layout.span[1])) return;
  const style = styleOf(theme);
  const px = layout.pxAt(x);
  paintLine(pen, [px, layout.top - 4], [px, layout.bottom + 5], { stroke: ink(style, 'ink'), width: 1.5 });
  spec.panels.forEach((panel, index) => {
    if (panel.kind !== 'lines') return;
    const { top, bottom } = layout.plots[index]!;
    for (const series of panel.series) {
      if (series.form !== 'line') continue;
      const py = layout.pyAt(index, valueAt(series.x, series.y, x));
      if (!(py >= top - 1 && py <= bottom + 1)) continue;
      paintDot(pen, style, px, py, DOT, colour(style, series.quantity));
    }
  });
}

/** The way that a moving point has come, in the figure's units. */
export interface Tail {
  readonly x: ArrayLike<number>;
  readonly y: ArrayLike<number>;
}

/**
 * Paints a moving point in the panel of curves of a plane, with the way it has come: thick, so that its direction is seen.
 */
export function paintPoint(
  pen: Pen,
  layout: PaintedLayout,
  spec: FigureSpec,
  x: number,
  y: number,
  tail: Tail,
  theme: Theme,
): void {
  const index = spec.panels.findIndex((panel) => panel.kind === 'lines');
  if (index < 0) return;
  const style = styleOf(theme);
  const { left, right, top, bottom } = layout.plots[index]!;
  pen.save();
  pen.beginPath();
  pen.rect(left, top, right - left, bottom - top);
  pen.clip();
  pen.beginPath();
  for (let i = 0; i < tail.x.length; i += 1)
    pen.lineTo(layout.pxAt(tail.x[i]!), layout.pyAt(index, tail.y[i]!));
  pen.lineTo(layout.pxAt(x), layout.pyAt(index, y));
  pen.setLineDash([]);
  pen.lineJoin = 'round';
  pen.lineCap = 'round';
  pen.strokeStyle = colour(style, 'torque');
  pen.lineWidth = 4;
  pen.stroke();
  pen.restore();
  const px = layout.pxAt(x);
  const py = layout.pyAt(index, y);
  if (px >= left && px <= right) paintDot(pen, style, px, py, POINT, colour(style, 'torque'));
}

/** Paints the stretch that a hand is choosing: what is left out is dimmed. */
export function paintStretch(pen: Pen, layout: PaintedLayout, [a, b]: Span, theme: Theme): void {
  const style = styleOf(theme);
  const from = layout.pxAt(Math.min(a, b));
  const to = layout.pxAt(Math.max(a, b));
  const height = layout.bottom - layout.top;
  pen.globalAlpha = STRETCH_OPACITY;
  pen.fillStyle = ink(style, 'ink');
  pen.fillRect(layout.left, layout.top, Math.max(0, from - layout.left), height);
  pen.fillRect(to, layout.top, Math.max(0, layout.right - to), height);
  pen.globalAlpha = 1;
  for (const x of [from, to])
    paintLine(pen, [x, layout.top], [x, layout.bottom], { stroke: ink(style, 'ink'), width: 1.5 });
}

function paintDot(pen: Pen, style: PaintStyle, x: number, y: number, radius: number, fill: string): void {
  pen.beginPath();
  pen.arc(x, y, radius, 0, 2 * Math.PI);
  pen.fillStyle = fill;
  pen.fill();
  pen.setLineDash([]);
  pen.strokeStyle = ink(style, 'ground');
  pen.lineWidth = 1.5;
  pen.stroke();
}
