import type { BarsPanel, LinesPanel, Series, StateRow, StatesPanel } from './figureSpec.ts';
import { type DrawnAxis, drawnAxis } from './svgAxis.ts';
import { element, textElement } from './svgElement.ts';
import { spreadPositions, textWidth } from './svgLayout.ts';
import { type Scale, seriesPath } from './svgPaths.ts';
import { pointMarks } from './svgPoints.ts';
import { colour, dashArray, halo, ink, type SvgStyle } from './svgStyle.ts';

/** Where a panel is drawn, px. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Length of the piece of line before a direct label, px. */
const SWATCH = 14;
/** px between two horizontal tick marks of a vertical axis. */
const TICK_SPACING = 34;

/** Curves with their axis, zero line, reference lines, direct labels and marked points. */
export function linesPanel(panel: LinesPanel, box: Box, x: Scale, style: SvgStyle): string {
  const count = Math.max(4, Math.round((box.bottom - box.top) / TICK_SPACING));
  const axis = drawnAxis(panel.y, [box.bottom, box.top], count);
  const y = axis.at;
  const clip = `${style.id}-clip-${Math.round(box.top)}`;
  const parts = [
    element('clipPath', { id: clip }, rectangle(box, {})),
    verticalAxis(panel, box, axis, style),
    ...panel.references.map((reference) =>
      horizontalLine(box, y(reference.y), { stroke: ink(style, 'muted'), 'stroke-dasharray': '1 3' }),
    ),
  ];
  const curves = panel.series.map((series) => {
    const stroke = colour(style, series.quantity);
    const d = seriesPath(series, x, y);
    if (series.form === 'envelope') {
      return element('path', {
        d,
        fill: stroke,
        'fill-opacity': 0.85,
        stroke,
        'stroke-width': 1,
        'stroke-linejoin': 'round',
      });
    }
    return element('path', {
      d,
      fill: 'none',
      stroke,
      'stroke-width': 1.5,
      'stroke-linejoin': 'round',
      'stroke-dasharray': dashArray(series.dash),
    });
  });
  parts.push(element('g', { 'clip-path': `url(#${clip})` }, curves.join('')));
  parts.push(directLabels(panel, box, y, style));
  parts.push(pointMarks(panel.points, box, x, y, style));
  return parts.join('');
}

/** Labels a curve or reference line needs beside the panel. */
export function sideLabels(panel: LinesPanel): string[] {
  return [
    ...panel.series.filter(isNamedBeside).map((series) => series.label),
    ...panel.references.map((reference) => reference.label).filter((label) => label !== ''),
  ];
}

/** A line without a label is named by a point on it. */
function isNamedBeside({ label }: Series): boolean {
  return label !== '';
}

/** The least width of labels that is reckoned with, px: of short words the estimate is too rough. */
const LEAST_SIDE_LABEL = 48;

/** Width of the side margin these labels take, px. */
export function sideLabelWidth(labels: readonly string[], fontSize: number): number {
  return (
    SWATCH +
    10 +
    Math.max(labels.length > 0 ? LEAST_SIDE_LABEL : 0, ...labels.map((label) => textWidth(label, fontSize)))
  );
}

function verticalAxis(panel: LinesPanel, box: Box, { at: y, ticks }: DrawnAxis, style: SvgStyle): string {
  const small = { 'font-size': style.fontSize - 1, fill: ink(style, 'muted') };
  return [
    ...ticks.map(({ value, text }) =>
      horizontalLine(box, y(value), {
        stroke: ink(style, value === 0 ? 'zero' : 'rule'),
        'stroke-width': value === 0 ? 1.2 : text === '' ? 0.4 : 0.8,
      }),
    ),
    ...ticks
      .filter(({ text }) => text !== '')
      .map(({ value, text }) =>
        textElement(text, { x: box.left - 7, y: y(value) + 4, 'text-anchor': 'end', ...small }),
      ),
    textElement(panel.y.label, {
      x: box.left,
      y: box.top - 6,
      'font-size': style.fontSize,
      'font-weight': 600,
      fill: ink(style, 'ink'),
      ...halo(style),
    }),
  ].join('');
}

function directLabels(panel: LinesPanel, box: Box, y: Scale, style: SvgStyle): string {
  const entries = [
    ...panel.series.filter(isNamedBeside).map((series) => ({
      label: series.label,
      at: y(
        series.form === 'line'
          ? lastFinite(series.y)
          : (lastFinite(series.low) + lastFinite(series.high)) / 2,
      ),
      stroke: colour(style, series.quantity),
      dash: series.form === 'line' ? dashArray(series.dash) : undefined,
      width: series.form === 'line' ? 1.8 : 6,
    })),
    ...panel.references
      .filter((reference) => reference.label !== '')
      .map((reference) => ({
        label: reference.label,
        at: y(reference.y),
        stroke: ink(style, 'muted'),
        dash: '1 3',
        width: 1,
      })),
  ];
  const places = spreadPositions(
    entries.map((entry) => entry.at),
    style.fontSize + 1,
    box.top + 4,
    box.bottom - 4,
  );
  const left = box.right + 6;
  return entries
    .map((entry, i) => {
      const at = places[i]!;
      const swatch = element('line', {
        x1: left,
        x2: left + SWATCH,
        y1: at,
        y2: at,
        stroke: entry.stroke,
        'stroke-width': entry.width,
        'stroke-dasharray': entry.dash,
      });
      const text = textElement(entry.label, {
        x: left + SWATCH + 4,
        y: at + 4,
        'font-size': style.fontSize - 1,
        fill: ink(style, 'ink'),
      });
      return swatch + text;
    })
    .join('');
}

/** Height of one row of contacts or devices, px. */
export const STATE_ROW = 16;
/** Space above and below the bar of a state within its row, px: a pole's bar is thick, that of a device thin. */
const STATE_INSET = { closed: 3, arcing: 3, on: 6 } as const;
/** From the label of a row to the panel, px. */
const ROW_LABEL_GAP = 7;
/** Left edge of a heading, px from that of the drawing. */
const HEADING_LEFT = 8;

/**
 * A row per contact or device: thick where a pole is closed, hatched and outlined where it is arcing, thin where a device is on,
 * nothing where it is open or off.
 */
export function statesPanel(panel: StatesPanel, box: Box, x: Scale, style: SvgStyle): string {
  return panel.rows
    .map((row, i) => {
      const top = box.top + i * STATE_ROW;
      return row.heading === true ? rowHeading(row, top, style) : stateRow(row, top, box, x, style);
    })
    .join('');
}

function stateRow(row: StateRow, top: number, box: Box, x: Scale, style: SvgStyle): string {
  const fontSize = style.fontSize - 1;
  const room = box.left - ROW_LABEL_GAP;
  const label = textElement(textWidth(row.label, fontSize) <= room ? row.label : (row.short ?? row.label), {
    x: room,
    y: top + STATE_ROW / 2 + 4,
    'text-anchor': 'end',
    'font-size': fontSize,
    fill: ink(style, 'muted'),
  });
  const base = horizontalLine(box, top + STATE_ROW / 2, {
    stroke: ink(style, 'rule'),
    'stroke-width': 0.8,
  });
  const bars = row.intervals.map((interval) => {
    const left = x(interval.x0);
    const width = Math.max(1, x(interval.x1) - left);
    const inset = STATE_INSET[interval.state];
    const common = { x: left, y: top + inset, width, height: STATE_ROW - 2 * inset };
    return interval.state === 'arcing'
      ? element('rect', {
          ...common,
          fill: `url(#${style.id}-hatch)`,
          stroke: ink(style, 'ink'),
          'stroke-width': 0.8,
        })
      : element('rect', { ...common, fill: colour(style, 'contacts') });
  });
  return base + label + bars.join('');
}

function rowHeading(row: StateRow, top: number, style: SvgStyle): string {
  return textElement(row.label, {
    x: HEADING_LEFT,
    y: top + STATE_ROW / 2 + 4,
    'font-size': style.fontSize - 1,
    'font-weight': 600,
    fill: ink(style, 'ink'),
    ...halo(style),
  });
}

/** Height of one bar with its label above, px. */
export const BAR_ROW = 36;

/** Labelled bars from zero. */
export function barsPanel(panel: BarsPanel, box: Box, x: Scale, style: SvgStyle): string {
  const zero = x(0);
  const rows = panel.rows.map((row, i) => {
    const top = box.top + i * BAR_ROW;
    const end = x(row.value);
    const width = Math.max(1, Math.abs(end - zero));
    const base = {
      x1: zero,
      x2: zero,
      y1: top + 15,
      y2: top + 32,
      stroke: ink(style, 'zero'),
      'stroke-width': 1.2,
    };
    return [
      textElement(row.label, {
        x: box.left,
        y: top + 12,
        'font-size': style.fontSize,
        fill: ink(style, 'ink'),
      }),
      element('rect', {
        x: Math.min(zero, end),
        y: top + 17,
        width,
        height: 13,
        fill: colour(style, row.quantity),
      }),
      textElement(row.text, {
        x: Math.max(zero, end) + 6,
        y: top + 28,
        'font-size': style.fontSize,
        'font-weight': 600,
        fill: ink(style, 'ink'),
      }),
      element('line', base),
    ].join('');
  });
  return rows.join('');
}

function rectangle(box: Box, attributes: Record<string, string>): string {
  return element('rect', {
    x: box.left,
    y: box.top,
    width: box.right - box.left,
    height: box.bottom - box.top,
    ...attributes,
  });
}

function horizontalLine(box: Box, at: number, attributes: Record<string, string | number>): string {
  return element('line', { x1: box.left, x2: box.right, y1: at, y2: at, ...attributes });
}

function lastFinite(values: Float64Array): number {
  return values.findLast((value) => Number.isFinite(value)) ?? 0;
}
