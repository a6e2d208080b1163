import type { BarsPanel } from '../figureSpec.ts';
import type { PaintedLayout } from './paintedLayout.ts';
import { colour, ink, type PaintStyle, paintLine, paintText } from './paintStyle.ts';
import type { Pen } from './pen.ts';

/** Labelled bars from zero; the shared axis is the value. */
export function paintBars(
  pen: Pen,
  style: PaintStyle,
  panel: BarsPanel,
  layout: PaintedLayout,
  index: number,
): void {
  const plot = layout.plots[index]!;
  const zero = layout.pxAt(0);
  const height = (plot.bottom - plot.top) / Math.max(1, panel.rows.length);
  const size = style.textSize;
  panel.rows.forEach((row, i) => {
    const top = plot.top + i * height + 1.15 * size;
    const end = layout.pxAt(row.value);
    paintText(pen, style, row.label, plot.left, top - 0.3 * size, { size });
    pen.fillStyle = colour(style, row.quantity);
    pen.fillRect(Math.min(zero, end), top, Math.max(1, Math.abs(end - zero)), size);
    paintText(pen, style, row.text, Math.max(zero, end) + 6, top + 0.85 * size, { size, bold: true });
    paintLine(pen, [zero, top - 2], [zero, top + size + 2], { stroke: ink(style, 'zero'), width: 1.2 });
  });
}
