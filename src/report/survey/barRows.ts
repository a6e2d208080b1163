import { cutToWidth } from '../displayWidth.ts';
import type { Quantity } from '../palette.ts';
import { drawnAxis } from '../svgAxis.ts';
import { element, textElement } from '../svgElement.ts';
import { columnsIn, textWidth } from '../svgLayout.ts';
import { colour, halo, ink } from '../svgStyle.ts';
import { hatchFill, type Sheet } from './svgSheet.ts';

/** A bar from one value of the axis to another. */
export interface Bar {
  readonly from: number;
  readonly to: number;
  /** Hatched and outlined instead of filled. */
  readonly hatched?: true;
  /** Beyond the end at `to`, or beyond its whisker. */
  readonly text: string;
  /** Interval about `to`. */
  readonly whisker?: readonly [low: number, high: number];
}

/** Bars of one field below its name. */
export interface BarGroup {
  readonly label: string;
  /** Behind the label, less prominent. */
  readonly detail: string;
  readonly bars: readonly Bar[];
  /** All bars on one line instead of one below the other. */
  readonly joined?: true;
}

/** Groups of bars over one axis. */
export interface BarRowsOptions {
  readonly groups: readonly BarGroup[];
  readonly axis: string;
  readonly domain: readonly [number, number];
  /** A line through all groups with its name; null: none. */
  readonly line: { readonly at: number; readonly label: string } | null;
  readonly quantity: Quantity;
}

/** Height of a bar, of a group's label and between groups, px. */
const BAR = 15;
const LABEL = 19;
const GAP = 10;
/** px between two ticks of the axis. */
const TICK_SPACING = 110;

/**
 * Bars below the names of their groups, with a common axis below; the room at both ends is that of the
 * longest text.
 */
export function barRows(
  options: BarRowsOptions,
  { width, top, style }: Sheet,
): { markup: string; height: number } {
  const { groups, domain, line, quantity } = options;
  const fontSize = style.fontSize - 1;
  const texts = groups.flatMap(({ bars }) => bars.map(({ text }) => text));
  const room = 16 + Math.max(0, ...texts.map((text) => textWidth(text, fontSize)));
  const leftwards = groups.some(({ bars }) => bars.some(({ from, to }) => to < from));
  const [left, right] = [leftwards ? room : 14, width - room];
  const axis = drawnAxis(
    { label: '', domain },
    [left, right],
    Math.max(2, Math.round((right - left) / TICK_SPACING)),
  );
  const head = line === null ? 0 : fontSize + 8;
  let y = top + head;
  const rows = groups.map((group) => {
    const label = groupLabel(group, y, width, style);
    y += LABEL;
    const bars = group.bars.map((bar, k) =>
      barMarkup(bar, y + (group.joined === true ? 0 : k * (BAR + 2)), axis.at, quantity, style),
    );
    y += (group.joined === true ? 1 : group.bars.length) * (BAR + 2) + GAP;
    return label + bars.join('');
  });
  const rules = axis.ticks.map(({ value, text }) => {
    const at = axis.at(value);
    return (
      element('line', {
        x1: at,
        x2: at,
        y1: top + head,
        y2: y,
        stroke: ink(style, 'rule'),
        'stroke-width': 0.8,
      }) +
      textElement(text, {
        x: at,
        y: y + 15,
        'text-anchor': 'middle',
        'font-size': fontSize,
        fill: ink(style, 'muted'),
      })
    );
  });
  const name = textElement(options.axis, {
    x: (left + right) / 2,
    y: y + 34,
    'text-anchor': 'middle',
    'font-size': style.fontSize,
    fill: ink(style, 'ink'),
  });
  return {
    markup: [...rules, lineMarkup(line, axis.at, top, y, width, style), ...rows, name].join('\n'),
    height: y - top + 44,
  };
}

function groupLabel({ label, detail }: BarGroup, y: number, width: number, style: Sheet['style']): string {
  const size = style.fontSize;
  const columns = columnsIn(width - 16, size);
  const name = cutToWidth(label, columns);
  const rest = columns - name.length - 2;
  const text = { y: y + 13, ...halo(style) };
  return (
    textElement(name, { x: 8, ...text, 'font-size': size, 'font-weight': 600, fill: ink(style, 'ink') }) +
    (detail === '' || rest < detail.length
      ? ''
      : textElement(detail, {
          x: width - 8,
          ...text,
          'text-anchor': 'end',
          'font-size': size - 1,
          fill: ink(style, 'muted'),
        }))
  );
}

function barMarkup(
  bar: Bar,
  y: number,
  x: (value: number) => number,
  quantity: Quantity,
  style: Sheet['style'],
): string {
  const [a, b] = [x(bar.from), x(bar.to)];
  const back = b < a;
  const fill = bar.hatched === true ? hatchFill(style) : colour(style, quantity);
  const stroke = colour(style, quantity);
  const ends = (bar.whisker ?? [bar.to, bar.to]).map(x);
  const tip = back ? Math.min(b, ...ends) : Math.max(b, ...ends);
  return [
    element('rect', {
      x: Math.min(a, b),
      y,
      width: Math.max(1, Math.abs(b - a)),
      height: BAR - 2,
      fill,
      stroke,
      'stroke-width': 1,
    }),
    whiskerMarkup(bar, y + (BAR - 2) / 2, x, style),
    textElement(bar.text, {
      x: back ? tip - 6 : tip + 6,
      y: y + BAR - 4,
      'text-anchor': back ? 'end' : 'start',
      'font-size': style.fontSize - 1,
      fill: ink(style, 'ink'),
      ...halo(style),
    }),
  ].join('');
}

function whiskerMarkup(
  { whisker }: Bar,
  y: number,
  x: (value: number) => number,
  style: Sheet['style'],
): string {
  if (whisker === undefined) return '';
  const [low, high] = [x(whisker[0]), x(whisker[1])];
  const d = `M${low},${y - 4}V${y + 4}M${low},${y}H${high}M${high},${y - 4}V${y + 4}`;
  const wide = element('path', { d, fill: 'none', stroke: ink(style, 'ground'), 'stroke-width': 4 });
  return wide + element('path', { d, fill: 'none', stroke: ink(style, 'ink'), 'stroke-width': 1.4 });
}

function lineMarkup(
  line: BarRowsOptions['line'],
  x: (value: number) => number,
  top: number,
  bottom: number,
  width: number,
  style: Sheet['style'],
): string {
  if (line === null) return '';
  const at = x(line.at);
  const size = style.fontSize - 1;
  const half = textWidth(line.label, size) / 2;
  return (
    element('line', {
      x1: at,
      x2: at,
      y1: top + size + 4,
      y2: bottom,
      stroke: ink(style, 'zero'),
      'stroke-width': 1.2,
    }) +
    textElement(line.label, {
      x: Math.max(8 + half, Math.min(width - 8 - half, at)),
      y: top + size,
      'text-anchor': 'middle',
      'font-size': size,
      fill: ink(style, 'ink'),
    })
  );
}
