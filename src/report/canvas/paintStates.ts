import type { RowState, StateInterval, StatesPanel } from '../figureSpec.ts';
import { rowName } from './layoutFigure.ts';
import type { PaintedLayout, PaintedPlot } from './paintedLayout.ts';
import { colour, ink, type PaintStyle, paintLine, paintText, smallSize } from './paintStyle.ts';
import type { Pen } from './pen.ts';

/** Height of the bar of a state as a share of its row: a pole's bar is thick, that of a device thin. */
const THICKNESS: Readonly<Record<RowState, number>> = { closed: 0.62, arcing: 0.62, on: 0.28 };
/** From the name of a row to the panel, px. */
const NAME_GAP = 7;
/** Left edge of a heading, px. */
const HEADING_LEFT = 4;
/** px between two lines of a hatching, along the row. */
const HATCH = 4;

/**
 * A row per contact or device: thick where a pole is closed, hatched and outlined where it is arcing, thin where a device is on,
 * nothing where it is open or off.
 */
export function paintStates(
  pen: Pen,
  style: PaintStyle,
  panel: StatesPanel,
  layout: PaintedLayout,
  index: number,
): void {
  const plot = layout.plots[index]!;
  const height = (plot.bottom - plot.top) / Math.max(1, panel.rows.length);
  // Low rows get small letters rather than letters over each other.
  const size = Math.min(smallSize(style), height);
  panel.rows.forEach((row, i) => {
    const middle = plot.top + (i + 0.5) * height;
    const base = middle + 0.35 * size;
    if (row.heading === true) {
      paintText(pen, style, row.label, HEADING_LEFT, base, { size, bold: true, halo: true });
      return;
    }
    const name = rowName(row, plot.left - NAME_GAP, size);
    paintText(pen, style, name, plot.left - NAME_GAP, base, {
      align: 'end',
      size,
      fill: ink(style, 'muted'),
    });
    paintLine(pen, [plot.left, middle], [plot.right, middle], { stroke: ink(style, 'rule'), width: 0.8 });
    for (const interval of row.intervals) paintInterval(pen, style, interval, layout, plot, middle, height);
  });
}

function paintInterval(
  pen: Pen,
  style: PaintStyle,
  { x0, x1, state }: StateInterval,
  layout: PaintedLayout,
  plot: PaintedPlot,
  middle: number,
  row: number,
): void {
  if (x1 < layout.span[0] || x0 > layout.span[1]) return;
  const left = Math.max(plot.left, layout.pxAt(x0));
  // An arc of a millisecond is still seen over the whole run.
  const width = Math.max(1, Math.min(plot.right, layout.pxAt(x1)) - left);
  const height = THICKNESS[state] * row;
  const top = middle - height / 2;
  if (state !== 'arcing') {
    pen.fillStyle = colour(style, 'contacts');
    pen.fillRect(left, top, width, height);
    return;
  }
  pen.save();
  pen.beginPath();
  pen.rect(left, top, width, height);
  pen.clip();
  pen.fillStyle = ink(style, 'ground');
  pen.fillRect(left, top, width, height);
  pen.beginPath();
  for (let x = left - height; x < left + width; x += HATCH) {
    pen.moveTo(x, top + height);
    pen.lineTo(x + height, top);
  }
  pen.setLineDash([]);
  pen.strokeStyle = ink(style, 'ink');
  pen.lineWidth = 1.2;
  pen.stroke();
  pen.restore();
  pen.setLineDash([]);
  pen.strokeStyle = ink(style, 'ink');
  pen.lineWidth = 0.8;
  pen.strokeRect(left, top, width, height);
}
