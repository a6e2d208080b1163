import type { FigureSpec } from '../figureSpec.ts';
import { drawnAxis } from '../svgAxis.ts';
import { textWidth } from '../svgLayout.ts';
import type { LaidOut } from './layoutFigure.ts';
import type { PaintedLayout } from './paintedLayout.ts';
import { ink, paintLine, paintText, smallSize } from './paintStyle.ts';
import type { Pen } from './pen.ts';

/** px between two ticks of the horizontal axis, and on a telephone. */
const TICK_SPACING = 90;
const NARROW_TICK_SPACING = 55;
/** Strokes and gaps of the line of an event, px, as in the static drawings. */
const MARK_DASH: readonly number[] = [4, 2];
/** Height of the sign of an event without words, px. */
const UNNAMED = 5;

/** Title and note above a picture that goes away alone. */
export function paintHeading(pen: Pen, { heading, style }: LaidOut): void {
  let y = 7;
  const line = 1.3 * style.textSize;
  for (const text of heading.title) {
    y += line;
    paintText(pen, style, text, 7, y - 3, { size: style.textSize, bold: true });
  }
  for (const text of heading.note) {
    y += line;
    paintText(pen, style, text, 7, y - 3, { fill: ink(style, 'muted') });
  }
}

/** Named stretches of the shared axis, behind everything else. */
export function paintBands(pen: Pen, spec: FigureSpec, { layout, style }: LaidOut): void {
  const plots = layout.plots.filter((_, i) => spec.panels[i]?.kind === 'lines');
  pen.fillStyle = ink(style, 'band');
  for (const { left, width } of visibleBands(spec, layout))
    for (const { top, bottom } of plots) pen.fillRect(left, top, width, bottom - top);
}

/** Names of the stretches that are wide enough for theirs, once, over the rules of the first panel of curves. */
export function paintBandNames(pen: Pen, spec: FigureSpec, { layout, style }: LaidOut): void {
  const first = layout.plots.find((_, i) => spec.panels[i]?.kind === 'lines');
  if (first === undefined) return;
  const size = 0.85 * style.textSize;
  for (const { label, left, width } of visibleBands(spec, layout)) {
    if (textWidth(label, size) > width) continue;
    const look = { align: 'center', size, fill: ink(style, 'muted') } as const;
    paintText(pen, style, label, left + width / 2, first.top + style.textSize, look);
  }
}

/** A stretch as far as it is visible, px. */
interface VisibleBand {
  readonly label: string;
  readonly left: number;
  readonly width: number;
}

function visibleBands(spec: FigureSpec, layout: PaintedLayout): VisibleBand[] {
  return spec.bands
    .map(({ x0, x1, label }) => {
      const left = Math.max(layout.left, layout.pxAt(x0));
      return { label, left, width: Math.min(layout.right, layout.pxAt(x1)) - left };
    })
    .filter(({ width }) => width > 0);
}

/** The shared axis below the panels. */
export function paintSharedAxis(pen: Pen, spec: FigureSpec, { layout, style }: LaidOut): void {
  const { left, right, bottom, span } = layout;
  const small = smallSize(style);
  const spacing = style.narrow ? NARROW_TICK_SPACING : TICK_SPACING;
  const count = Math.max(3, Math.round((right - left) / spacing));
  const axis = drawnAxis({ label: spec.x.label, domain: span }, [left, right], count);
  for (const { value, text } of axis.ticks) {
    const at = axis.at(value);
    paintLine(pen, [at, bottom], [at, bottom + 5], { stroke: ink(style, 'zero') });
    paintText(pen, style, text.replace('-', '−'), at, bottom + 7 + small, {
      align: 'center',
      fill: ink(style, 'muted'),
    });
  }
  paintLine(pen, [left, bottom], [right, bottom], { stroke: ink(style, 'zero') });
  paintText(pen, style, spec.x.label, (left + right) / 2, bottom + 9 + small + 1.2 * style.textSize, {
    align: 'center',
    size: style.textSize,
  });
}

/** Lines where something discrete happens, with words above; a short sign where there was no room for words. */
export function paintMarks(pen: Pen, { layout, style, marks, markRow }: LaidOut): void {
  const look = { stroke: ink(style, 'zero'), width: 0.9, dash: MARK_DASH };
  const base = (row: number) => layout.top - 7 - row * markRow;
  for (const { x, row } of marks.named)
    paintLine(pen, [x, base(row) - style.textSize + 3], [x, layout.bottom], look);
  for (const x of marks.unnamed)
    paintLine(pen, [x, layout.top - UNNAMED], [x, layout.top], { stroke: ink(style, 'zero'), width: 1.5 });
  for (const { x, row, end, label } of marks.named)
    paintText(pen, style, label, end ? x - 4 : x + 4, base(row), {
      align: end ? 'end' : 'start',
      halo: true,
    });
}
