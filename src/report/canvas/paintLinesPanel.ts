import { wrapToWidth } from '../displayWidth.ts';
import type { FigureSpec, LinesPanel } from '../figureSpec.ts';
import { drawnAxis } from '../svgAxis.ts';
import { columnsIn, spreadPositions, textWidth } from '../svgLayout.ts';
import { BEHIND_DASH, paintCurves } from './paintCurves.ts';
import type { PaintedLayout, PaintedPlot } from './paintedLayout.ts';
import { paintPoints } from './paintPoints.ts';
import { colour, dashLengths, ink, type PaintStyle, paintLine, paintText, smallSize } from './paintStyle.ts';
import type { Pen } from './pen.ts';
import { firstFrom, neverFalls } from './samples.ts';
import { samePanel } from './visibleDomain.ts';

/** px between two horizontal tick marks of a vertical axis. */
const TICK_SPACING = 34;
/** Strokes and gaps of a line at a rated value, px, as in the static drawings. */
const RATED_DASH: readonly number[] = [1, 3];
/** Piece of line before a direct label, px. */
const SWATCH = 14;
const NARROW_SWATCH = 9;
/** Words beside the sample of the compared run's curves. */
const BEHIND_NAME = 'pinned run';

/** A name beside a panel and the line it belongs to. */
interface Named {
  readonly label: string;
  /** px */
  readonly at: number;
  readonly stroke: string;
  readonly dash: readonly number[];
  readonly width: number;
}

/** Curves with their axis, zero line, rated lines, direct labels and marked points. */
export function paintLinesPanel(
  pen: Pen,
  style: PaintStyle,
  spec: FigureSpec,
  behind: FigureSpec | null | undefined,
  layout: PaintedLayout,
  index: number,
): void {
  const panel = spec.panels[index];
  const plot = layout.plots[index]!;
  if (panel?.kind !== 'lines' || plot.domain === null) return;
  const other = samePanel(panel, behind);
  paintAxis(pen, style, panel, plot);
  const rated = panel.references.filter(({ y }) => y >= plot.domain![0] && y <= plot.domain![1]);
  for (const { y } of rated) {
    const at = layout.pyAt(index, y);
    paintLine(pen, [plot.left, at], [plot.right, at], { stroke: ink(style, 'muted'), dash: RATED_DASH });
  }
  paintCurves(pen, style, panel, other, layout, index);
  paintName(pen, style, panel, plot, other !== undefined && isFirst(spec, index));
  const named = [
    ...curveNames(style, panel, layout, index),
    ...(style.narrow ? [] : rated)
      .filter(({ label }) => label !== '')
      .map(({ label, y }): Named => {
        const at = layout.pyAt(index, y);
        return { label, at, stroke: ink(style, 'muted'), dash: RATED_DASH, width: 1 };
      }),
  ];
  paintNames(pen, style, named, plot);
  if (style.narrow)
    for (const { label, y } of rated)
      paintText(pen, style, label, plot.right - 3, layout.pyAt(index, y) - 3, {
        align: 'end',
        fill: ink(style, 'muted'),
        halo: true,
      });
  paintPoints(pen, style, panel.points, layout, index);
}

function isFirst(spec: FigureSpec, index: number): boolean {
  return spec.panels.findIndex((panel) => panel.kind === 'lines') === index;
}

function paintAxis(pen: Pen, style: PaintStyle, panel: LinesPanel, plot: PaintedPlot): void {
  const count = Math.max(2, Math.round((plot.bottom - plot.top) / TICK_SPACING));
  const axis = drawnAxis({ label: panel.y.label, domain: plot.domain! }, [plot.bottom, plot.top], count);
  const small = smallSize(style);
  for (const { value, text } of axis.ticks) {
    const at = axis.at(value);
    const isZero = value === 0;
    paintLine(pen, [plot.left, at], [plot.right, at], {
      stroke: ink(style, isZero ? 'zero' : 'rule'),
      width: isZero ? 1.2 : 0.8,
    });
    paintText(pen, style, text.replace('-', '−'), plot.left - 7, at + 0.35 * small, {
      align: 'end',
      fill: ink(style, 'muted'),
    });
  }
}

/** Name of the axis above the panel, and once in a figure what the pale curves are. */
function paintName(
  pen: Pen,
  style: PaintStyle,
  panel: LinesPanel,
  plot: PaintedPlot,
  namesBehind: boolean,
): void {
  const y = plot.top - 0.45 * style.textSize;
  const [name = ''] = wrapToWidth(panel.y.label, columnsIn(plot.right - plot.left + 60, style.textSize));
  paintText(pen, style, name, plot.left, y, { size: style.textSize, bold: true, halo: true });
  if (!namesBehind) return;
  const small = smallSize(style);
  const left = plot.right - textWidth(BEHIND_NAME, small) - 2 * SWATCH;
  const line = panel.series[0];
  pen.globalAlpha = 0.6;
  paintLine(pen, [left, y - 4], [left + 1.7 * SWATCH, y - 4], {
    stroke: line === undefined ? ink(style, 'ink') : colour(style, line.quantity),
    width: 1.4,
    dash: BEHIND_DASH,
  });
  pen.globalAlpha = 1;
  paintText(pen, style, BEHIND_NAME, left + 2 * SWATCH, y, { halo: true });
}

function curveNames(style: PaintStyle, panel: LinesPanel, layout: PaintedLayout, index: number): Named[] {
  const [low, high] = layout.plots[index]!.domain!;
  return panel.series
    .filter(({ label }) => label !== '')
    .map((series): Named => {
      const ys = series.form === 'line' ? [series.y] : [series.low, series.high];
      const ends = ys.map((y) => lastVisible(series.x, y, layout.span[1]));
      const end = ends.reduce((sum, value) => sum + value, 0) / ends.length;
      return {
        label: series.label,
        at: layout.pyAt(index, Math.min(high, Math.max(low, end))),
        stroke: colour(style, series.quantity),
        dash: series.form === 'line' ? dashLengths(series.dash) : [],
        width: series.form === 'line' ? 1.8 : 6,
      };
    });
}

/** The value at the right edge, or the last one of a curve that ends before it; 0 where there is none. */
function lastVisible(x: Float64Array, y: Float64Array, edge: number): number {
  const end = neverFalls(x) ? firstFrom(x, edge) : x.length - 1;
  for (let i = Math.min(end, y.length - 1); i >= 0; i -= 1) if (Number.isFinite(y[i]!)) return y[i]!;
  return 0;
}

function paintNames(pen: Pen, style: PaintStyle, named: readonly Named[], plot: PaintedPlot): void {
  const small = smallSize(style);
  const places = spreadPositions(
    named.map(({ at }) => at),
    small + 2,
    plot.top + 4,
    plot.bottom - 4,
  );
  const swatch = style.narrow ? NARROW_SWATCH : SWATCH;
  const left = plot.right + 6;
  named.forEach(({ label, stroke, dash, width }, i) => {
    const at = places[i]!;
    paintLine(pen, [left, at], [left + swatch, at], { stroke, dash, width });
    paintText(pen, style, label, left + swatch + 4, at + 0.35 * small);
  });
}
