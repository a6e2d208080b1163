import { scaleLinear } from 'd3-scale';
import { computeExtent } from '../envelope.ts';
import { element, textElement } from '../svgElement.ts';
import { ink } from '../svgStyle.ts';
import type { ShownMetric } from './shownMetric.ts';
import { hatchFill, type Sheet } from './svgSheet.ts';

/**
 * From pale to dark, so that the order is seen in grey print and with every kind of colour blindness.
 * ColorBrewer "Blues", nine classes
 * (C. Brewer, colorbrewer2.org), from memory.
 */
const RAMP = [
  '#F7FBFF',
  '#DEEBF7',
  '#C6DBEF',
  '#9ECAE1',
  '#6BAED6',
  '#4292C6',
  '#2171B5',
  '#08519C',
  '#08306B',
] as const;
/** On this place of the ramp and beyond, text is white. */
const DARK_FROM = 5;
/** Text on a class of the ramp, in either theme. */
export const TEXT_ON_PALE = '#14181D';
/** Text on a class of the ramp, in either theme. */
export const TEXT_ON_DARK = '#FFFFFF';
/** About how many classes the values are put into. */
const CLASSES = 6;
/** Height of the legend, px. */
export const HEAT_LEGEND = 46;

/** The values of a metric in their classes. */
export interface HeatClasses {
  /** Round values, one more than there are classes. */
  readonly edges: readonly number[];
  readonly of: (value: number) => number;
  readonly fill: (place: number) => string;
  readonly text: (place: number) => string;
}

/** Classes between round values around all of these; the class of the darkest end has the end of the ramp. */
export function heatClasses(
  values: readonly number[],
  darkest: 'largest' | 'smallest' = 'largest',
): HeatClasses {
  const [least, most] = computeExtent(values);
  const round = least < most ? scaleLinear([least, most], [0, 1]).nice(CLASSES).ticks(CLASSES) : [];
  const edges = round.length > 1 ? round : [least, most];
  const count = edges.length - 1;
  const place = (k: number) => {
    const step = darkest === 'largest' ? k : count - 1 - k;
    return count === 1 ? 2 : Math.round((step * (RAMP.length - 1)) / (count - 1));
  };
  return {
    edges,
    of: (value) =>
      Math.max(
        0,
        Math.min(
          count - 1,
          edges.findLastIndex((edge) => edge <= value),
        ),
      ),
    fill: (k) => RAMP[place(k)]!,
    text: (k) => (place(k) >= DARK_FROM ? TEXT_ON_DARK : TEXT_ON_PALE),
  };
}

/** Digits of a value where the classes ask for no more. */
const DIGITS = 3;

/** A value of a map with three digits, and more where two edges of classes would else look the same. */
export function valueText(value: number, { edges }: Pick<HeatClasses, 'edges'>): string {
  const step = (edges.at(-1)! - edges[0]!) / (edges.length - 1);
  const lead = Math.floor(Math.log10(Math.abs(value)));
  const needed = lead - Math.floor(Math.log10(step)) + 1;
  const digits = Number.isFinite(needed) ? Math.max(DIGITS, Math.min(15, needed)) : DIGITS;
  return String(Number(value.toPrecision(digits))).replace('-', '−');
}

/** A swatch per class with the values between them, and one for cells without a value where there are such. */
export function heatLegend(
  classes: HeatClasses,
  shown: ShownMetric,
  missing: boolean,
  top: number,
  { width, style }: Sheet,
): string {
  const size = style.fontSize - 1;
  const count = classes.edges.length - 1;
  const left = style.narrow ? 24 : 84;
  const noValue = missing ? 70 : 0;
  const swatch = Math.min(76, (width - left - 24 - noValue) / count);
  const text = { 'text-anchor': 'middle', 'font-size': size, fill: ink(style, 'muted') };
  const boxes = Array.from({ length: count }, (_, k) =>
    element('rect', {
      x: left + k * swatch,
      y: top,
      width: swatch,
      height: 14,
      fill: classes.fill(k),
      stroke: ink(style, 'zero'),
      'stroke-width': 0.6,
    }),
  );
  const texts = classes.edges.map((edge, k) =>
    textElement(valueText(edge, classes), { x: left + k * swatch, y: top + 14 + size + 3, ...text }),
  );
  const end = left + count * swatch + (style.narrow ? 18 : 28);
  const none = missing
    ? element('rect', {
        x: end,
        y: top,
        width: 14,
        height: 14,
        fill: hatchFill(style),
        stroke: ink(style, 'zero'),
      }) + textElement('no value', { x: end + 7, y: top + 14 + size + 3, ...text })
    : '';
  return `<g class="legend" aria-label="${shown.key}">${boxes.join('')}${texts.join('')}${none}</g>`;
}
