import { cutToWidth, wrapToWidth } from '../displayWidth.ts';
import type { FigureSpec, PanelSpec, StateRow } from '../figureSpec.ts';
import type { Theme } from '../palette.ts';
import { columnsIn, textWidth } from '../svgLayout.ts';
import { sideLabels, sideLabelWidth } from '../svgPanels.ts';
import type { Box, PaintedLayout, PaintedPlot } from './paintedLayout.ts';
import { type PaintStyle, paintStyle, smallSize } from './paintStyle.ts';
import { type PlacedMarks, placeMarks } from './placeMarks.ts';
import { samePanel, visibleDomain, wholeDomain } from './visibleDomain.ts';
import { clamped, type Span } from './zoom.ts';

/** How a figure is painted. */
export interface PaintOptions {
  /** px of the layout */
  readonly width: number;
  readonly height: number;
  readonly theme: Theme;
  /** px */
  readonly textSize: number;
  /** Visible stretch of the shared axis, in its unit; null: all. */
  readonly span: Span | null;
  /** The run that this one is compared with: its curves are painted thin and pale behind those of the same quantity. */
  readonly behind?: FigureSpec | null;
  /** Rows kept for the words of events, so that the panels stay where they are while a hand drags; as many as are needed where absent. */
  readonly markRows?: number;
  /** Title and note above, for a picture that goes away alone. */
  readonly heading?: boolean;
}

/** A figure laid out, with all that painting it needs. */
export interface LaidOut {
  readonly layout: PaintedLayout;
  readonly style: PaintStyle;
  readonly marks: PlacedMarks;
  readonly markRow: number;
  readonly heading: Heading;
}

/** Lines above the figure. */
export interface Heading {
  readonly title: readonly string[];
  readonly note: readonly string[];
  /** px */
  readonly height: number;
}

/** Most rows of event words where no number is asked for, and the share of the height that they may take. */
const MOST_MARK_ROWS = 5;
const MARKS_SHARE = 0.15;
/** Below the lowest panel for ticks and the name of the axis, in sizes of text. */
const FOOT = 3.4;
/** Above a panel of curves for the name of its axis, in sizes of text. */
const HEAD = 1.75;
/** A row of states, in sizes of text, and the share of the height that all of them may take. */
const ROW = 1.25;
const ROWS_SHARE = 0.24;
/** Columns of the widest tick, such as "−1200". */
const TICK_COLUMNS = 5;
/** Names of rows may take this share of the width. */
const NAMES_SHARE = 0.2;
/** From ticks and names of rows to the panel, and between panels, px. */
const GAP = 7;
/** A panel of curves is never lower, px. */
const LEAST_PANEL = 16;
/** How much wider bold text is. */
const BOLD = 1.1;

/** Lays a figure out on an area of fixed size. */
export function layoutFigure(spec: FigureSpec, options: PaintOptions): LaidOut {
  const { width, height } = options;
  const style = paintStyle(options.theme, options.textSize, width);
  const whole = wholeDomain(spec, options.behind);
  const zoom = clamped(options.span, whole);
  const span = zoom ?? whole;
  const left = leftMargin(spec.panels, width, style);
  const right = width - rightMargin(spec, style);
  const unit = (right - left) / (span[1] - span[0]);
  const pxAt = (x: number) => left + (x - span[0]) * unit;
  const heading = headingOf(spec, options, style);
  const markRow = Math.round(style.textSize * ROW);
  const mostRows = Math.min(
    options.markRows ?? MOST_MARK_ROWS,
    Math.max(1, Math.floor((MARKS_SHARE * height) / markRow)),
  );
  const marks = placeMarks(
    spec.marks.filter((mark) => mark.x >= span[0] && mark.x <= span[1]),
    pxAt,
    { left: 2, right: width - 4, rows: mostRows, textSize: smallSize(style) },
  );
  const rows =
    options.markRows !== undefined ? mostRows : Math.max(0, ...marks.named.map((mark) => mark.row + 1));
  const top = heading.height + rows * markRow + (rows > 0 ? GAP : 0);
  const boxes = panelBoxes(spec.panels, { left, right, top, bottom: height - FOOT * style.textSize }, style);
  const plots = spec.panels.map((panel, i): PaintedPlot => {
    const box = boxes[i]!;
    if (panel.kind !== 'lines') return { ...box, domain: null };
    return { ...box, domain: visibleDomain(panel, samePanel(panel, options.behind), zoom) };
  });
  const layout: PaintedLayout = {
    width,
    height,
    left,
    right,
    top,
    bottom: plots.at(-1)?.bottom ?? top,
    span,
    whole,
    plots,
    pxAt,
    xAt: (px) => span[0] + (Math.min(right, Math.max(left, px)) - left) / unit,
    pyAt: (panel, y) => {
      const { domain, top: upper, bottom } = plots[panel]!;
      return domain === null
        ? Number.NaN
        : bottom - ((y - domain[0]) / (domain[1] - domain[0])) * (bottom - upper);
    },
    panelAt: (py) => plots.findIndex((plot) => py >= plot.top && py <= plot.bottom),
  };
  return { layout, style, marks, markRow, heading };
}

/** The name of a row that fits into a width, px. */
export function rowName(row: StateRow, room: number, fontSize: number): string {
  if (textWidth(row.label, fontSize) <= room) return row.label;
  return cutToWidth(row.short ?? row.label, columnsIn(room, fontSize));
}

function leftMargin(panels: readonly PanelSpec[], width: number, style: PaintStyle): number {
  const small = smallSize(style);
  const ticks = textWidth('0'.repeat(TICK_COLUMNS), small);
  const names = panels.flatMap((panel) =>
    panel.kind === 'states' ? panel.rows.filter((row) => row.heading !== true) : [],
  );
  const widest = Math.max(0, ...names.map((row) => textWidth(row.label, small)));
  const bars = panels.some((panel) => panel.kind === 'bars');
  return bars ? GAP : Math.round(Math.max(ticks, Math.min(widest, NAMES_SHARE * width)) + GAP + 2);
}

function rightMargin(spec: FigureSpec, style: PaintStyle): number {
  if (spec.panels.some((panel) => panel.kind === 'bars')) return Math.round(7 * style.textSize);
  const labels = spec.panels.flatMap((panel) =>
    panel.kind !== 'lines'
      ? []
      : style.narrow
        ? panel.series.map((series) => series.label)
        : sideLabels(panel),
  );
  // On a telephone the rated lines are named in the panel.
  return Math.round(
    style.narrow
      ? 22 + Math.max(0, ...labels.map((label) => textWidth(label, smallSize(style))))
      : sideLabelWidth(labels, smallSize(style)),
  );
}

function headingOf(spec: FigureSpec, options: PaintOptions, style: PaintStyle): Heading {
  if (options.heading !== true) return { title: [], note: [], height: 2 };
  const room = options.width - 2 * GAP;
  const title = wrapToWidth(spec.title, columnsIn(room, BOLD * style.textSize));
  const note = spec.note === '' ? [] : wrapToWidth(spec.note, columnsIn(room, smallSize(style)));
  const lines = title.length + note.length;
  return { title, note, height: lines * style.textSize * 1.3 + 2 * GAP };
}

function panelBoxes(panels: readonly PanelSpec[], area: Box, style: PaintStyle): Box[] {
  const height = area.bottom - area.top;
  const rows = panels.reduce((sum, panel) => sum + (panel.kind === 'states' ? panel.rows.length : 0), 0);
  const row = Math.min(style.textSize * ROW, (ROWS_SHARE * height) / Math.max(1, rows));
  const barRow = 2.6 * style.textSize;
  const head = HEAD * style.textSize;
  const fixed = panels.reduce((sum, panel) => {
    if (panel.kind === 'lines') return sum + head;
    return sum + panel.rows.length * (panel.kind === 'states' ? row : barRow);
  }, 0);
  const weights = panels.reduce((sum, panel) => sum + (panel.kind === 'lines' ? panel.weight : 0), 0);
  const share = (height - fixed) / Math.max(1e-9, weights);
  let at = area.top;
  return panels.map((panel) => {
    if (panel.kind === 'lines') at += head;
    const own =
      panel.kind === 'lines'
        ? Math.max(LEAST_PANEL, share * panel.weight)
        : panel.rows.length * (panel.kind === 'states' ? row : barRow);
    const box = { left: area.left, right: area.right, top: at, bottom: at + own };
    at = box.bottom;
    return box;
  });
}
