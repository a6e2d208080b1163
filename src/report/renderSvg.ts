import { wrapToWidth } from './displayWidth.ts';
import type { FigureSpec, PanelSpec } from './figureSpec.ts';
import type { Theme } from './palette.ts';
import { escapeMarkup } from './plainText.ts';
import { type DrawnAxis, drawnAxis } from './svgAxis.ts';
import { element, textElement } from './svgElement.ts';
import { columnsIn, type PlacedLabel, placeLabels } from './svgLayout.ts';
import {
  BAR_ROW,
  type Box,
  barsPanel,
  linesPanel,
  STATE_ROW,
  sideLabels,
  sideLabelWidth,
  statesPanel,
} from './svgPanels.ts';
import { FONT_FAMILY, halo, ink, type SvgStyle } from './svgStyle.ts';

/** How a drawing is made. */
export interface SvgOptions {
  /** 'css' leaves the colours to custom properties of the page the drawing stands in. */
  readonly theme: Theme | 'css';
  /** px; 960 by default, 400 for a telephone. The height follows from the content. */
  readonly width?: number;
  /** Factor by which the panels of curves are stretched; 1 by default. */
  readonly heightScale?: number;
  /** Added to the ids in the drawing, where a page holds the same figure twice. */
  readonly idSuffix?: string;
}

const DEFAULT_WIDTH = 960;
/** Below this width the small type and margins are used, px. */
const NARROW = 600;
/** How much wider bold text is. */
const BOLD = 1.1;
/** Height of a panel of weight 1, px. */
const PANEL_HEIGHT = 96;
/** Space above a panel of curves for the name of its axis, px. */
const PANEL_HEAD = 24;
/** px between two ticks of the horizontal axis. */
const TICK_SPACING = 90;

/**
 * Draws a figure as a complete SVG document without a DOM. The text is real text, the title and description are
 * there for screen readers, and nothing is fetched.
 */
export function renderSvg(spec: FigureSpec, options: SvgOptions): string {
  const width = options.width ?? DEFAULT_WIDTH;
  const narrow = width < NARROW;
  const style: SvgStyle = {
    theme: options.theme,
    id: `${spec.id}${options.idSuffix ?? ''}`,
    fontSize: narrow ? 11 : 13,
    narrow,
  };
  const heading = headingLines(spec, width, style);
  const labels = spec.panels.flatMap((panel) => (panel.kind === 'lines' ? sideLabels(panel) : []));
  const bars = spec.panels.some((panel) => panel.kind === 'bars');
  const left = bars ? 12 : narrow ? 82 : 92;
  const right = width - (bars ? 90 : sideLabelWidth(labels, style.fontSize - 1));
  const axis = drawnAxis(spec.x, [left, right], Math.max(3, Math.round((right - left) / TICK_SPACING)));
  const x = axis.at;
  const marks = placeLabels(
    spec.marks.map((mark) => ({ x: x(mark.x), label: mark.label })),
    width - 4,
    style.fontSize - 1,
  );
  const rowHeight = style.fontSize + 3;
  const rows = Math.max(0, ...marks.map((mark) => mark.row + 1));
  const marksBottom = heading.height + rows * rowHeight + (rows > 0 ? 8 : 0);
  const boxes = panelBoxes(spec.panels, left, right, marksBottom, options.heightScale ?? 1);
  const bottom = boxes.at(-1)?.bottom ?? marksBottom;
  const height = bottom + 44;
  const body = [
    hatch(style),
    element('rect', { width, height, fill: ink(style, 'ground') }),
    heading.markup,
    bandsMarkup(spec, boxes, x, style),
    horizontalAxis(spec, { left, right, top: marksBottom, bottom }, axis, style),
    marksMarkup(marks, { left, right, top: marksBottom, bottom }, rowHeight, style),
    ...spec.panels.map((panel, i) => panelMarkup(panel, boxes[i]!, x, style)),
  ].join('\n');
  const title = `<title id="${style.id}-title">${escapeMarkup(spec.title)}</title>`;
  const description = `<desc id="${style.id}-desc">${escapeMarkup(spec.description)}</desc>`;
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${Math.round(height)}" width="${width}" height="${Math.round(height)}" role="img" aria-labelledby="${style.id}-title ${style.id}-desc" font-family="${escapeMarkup(FONT_FAMILY)}" style="font-variant-numeric:tabular-nums">\n${title}\n${description}\n${body}\n</svg>`;
}

function headingLines(spec: FigureSpec, width: number, style: SvgStyle): { markup: string; height: number } {
  const titleSize = style.fontSize + 3;
  const noteSize = style.fontSize - 1;
  const title = wrapToWidth(spec.title, columnsIn(width - 16, BOLD * titleSize));
  const note = wrapToWidth(spec.note, columnsIn(width - 16, noteSize));
  let y = 6;
  const lines: string[] = [];
  for (const text of title) {
    y += titleSize + 4;
    lines.push(
      textElement(text, { x: 8, y, 'font-size': titleSize, 'font-weight': 650, fill: ink(style, 'ink') }),
    );
  }
  y += 3;
  for (const text of note) {
    y += noteSize + 3;
    lines.push(textElement(text, { x: 8, y, 'font-size': noteSize, fill: ink(style, 'muted') }));
  }
  return { markup: lines.join(''), height: y + 14 };
}

function panelBoxes(
  panels: readonly PanelSpec[],
  left: number,
  right: number,
  top: number,
  scale: number,
): Box[] {
  let at = top;
  return panels.map((panel) => {
    if (panel.kind === 'lines') at += PANEL_HEAD;
    const height =
      panel.kind === 'lines'
        ? scale * panel.weight * PANEL_HEIGHT
        : panel.rows.length * (panel.kind === 'states' ? STATE_ROW : BAR_ROW);
    const box = { left, right, top: at, bottom: at + height };
    at = box.bottom + 6;
    return box;
  });
}

function panelMarkup(panel: PanelSpec, box: Box, x: (value: number) => number, style: SvgStyle): string {
  switch (panel.kind) {
    case 'lines':
      return linesPanel(panel, box, x, style);
    case 'states':
      return statesPanel(panel, box, x, style);
    case 'bars':
      return barsPanel(panel, box, x, style);
  }
}

function horizontalAxis(spec: FigureSpec, box: Box, axis: DrawnAxis, style: SvgStyle): string {
  const small = { 'font-size': style.fontSize - 1, fill: ink(style, 'muted') };
  const logarithmic = spec.x.scale === 'log';
  const ticks = axis.ticks.map(({ value, text }) => {
    const at = axis.at(value);
    // Over several decades a value is read between rules, not between ticks.
    const rule = { x1: at, x2: at, y1: box.top, y2: box.bottom, stroke: ink(style, 'rule') };
    return (
      (logarithmic ? element('line', { ...rule, 'stroke-width': text === '' ? 0.4 : 0.8 }) : '') +
      element('line', { x1: at, x2: at, y1: box.bottom, y2: box.bottom + 5, stroke: ink(style, 'zero') }) +
      (text === '' ? '' : textElement(text, { x: at, y: box.bottom + 18, 'text-anchor': 'middle', ...small }))
    );
  });
  const base = element('line', {
    x1: box.left,
    x2: box.right,
    y1: box.bottom,
    y2: box.bottom,
    stroke: ink(style, 'zero'),
  });
  const label = textElement(spec.x.label, {
    x: (box.left + box.right) / 2,
    y: box.bottom + 36,
    'text-anchor': 'middle',
    'font-size': style.fontSize,
    fill: ink(style, 'ink'),
  });
  return base + ticks.join('') + label;
}

function marksMarkup(marks: readonly PlacedLabel[], box: Box, rowHeight: number, style: SvgStyle): string {
  const baseline = (mark: PlacedLabel) => box.top - 8 - mark.row * rowHeight;
  const lines = marks.map((mark) =>
    element('line', {
      x1: mark.x,
      x2: mark.x,
      y1: baseline(mark) - style.fontSize + 3,
      y2: box.bottom,
      stroke: ink(style, 'zero'),
      'stroke-width': 0.9,
      'stroke-dasharray': '4 2',
    }),
  );
  const texts = marks.map((mark) =>
    textElement(mark.label, {
      x: mark.end ? mark.x - 4 : mark.x + 4,
      y: baseline(mark),
      'text-anchor': mark.end ? 'end' : 'start',
      'font-size': style.fontSize - 1,
      fill: ink(style, 'ink'),
      ...halo(style),
    }),
  );
  return lines.join('') + texts.join('');
}

function bandsMarkup(
  spec: FigureSpec,
  boxes: readonly Box[],
  x: (value: number) => number,
  style: SvgStyle,
): string {
  const panels = boxes.filter((_, i) => spec.panels[i]?.kind === 'lines');
  return spec.bands
    .flatMap((band) => {
      const left = x(band.x0);
      const width = x(band.x1) - left;
      const labelled = columnsIn(width, style.fontSize - 2) > band.label.length && width > 40;
      return panels.map((box, i) => {
        const ground = element('rect', {
          x: left,
          y: box.top,
          width,
          height: box.bottom - box.top,
          fill: ink(style, 'band'),
        });
        if (i > 0 || !labelled) return ground;
        const label = textElement(band.label, {
          x: left + width / 2,
          y: box.top + style.fontSize,
          'text-anchor': 'middle',
          'font-size': style.fontSize - 2,
          fill: ink(style, 'muted'),
        });
        return ground + label;
      });
    })
    .join('');
}

function hatch(style: SvgStyle): string {
  const lines = element('path', { d: 'M0,4 L4,0', stroke: ink(style, 'ink'), 'stroke-width': 1.2 });
  const ground = element('rect', { width: 4, height: 4, fill: ink(style, 'ground') });
  const pattern = element(
    'pattern',
    { id: `${style.id}-hatch`, width: 4, height: 4, patternUnits: 'userSpaceOnUse' },
    ground + lines,
  );
  return element('defs', {}, pattern);
}
