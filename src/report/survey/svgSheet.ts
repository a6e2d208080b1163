import { wrapToWidth } from '../displayWidth.ts';
import { escapeMarkup } from '../plainText.ts';
import { element, textElement } from '../svgElement.ts';
import { columnsIn } from '../svgLayout.ts';
import { FONT_FAMILY, ink, type SvgStyle } from '../svgStyle.ts';

/** A drawing that is no curve over an axis, and may stand twice on a page: wide and for telephones. */
export interface Drawing {
  /** Unique on a page; letters, digits and hyphens. */
  readonly id: string;
  readonly title: string;
  /** How to read it. */
  readonly note: string;
  /** Text alternative. */
  readonly description: string;
  /** Everything below title and note; the height it takes from `top` on, px. */
  readonly draw: (sheet: Sheet) => { readonly markup: string; readonly height: number };
}

/** Where a drawing is made. */
export interface Sheet {
  readonly width: number;
  /** Where title and note end, px. */
  readonly top: number;
  readonly style: SvgStyle;
}

/** Which of its two sizes a drawing has. */
export type SheetSize = 'wide' | 'narrow';

/** px. */
const WIDTH: Readonly<Record<SheetSize, number>> = { wide: 960, narrow: 400 };
/** How much wider bold text is. */
const BOLD = 1.1;
/** Left edge of title and note, px. */
const LEFT = 8;

/** The drawing as an SVG element that takes its colours from the page. */
export function svgSheet(drawing: Drawing, size: SheetSize): string {
  const width = WIDTH[size];
  const narrow = size === 'narrow';
  const style: SvgStyle = {
    theme: 'css',
    id: narrow ? `${drawing.id}-narrow` : drawing.id,
    fontSize: narrow ? 11 : 13,
    narrow,
  };
  const heading = headingMarkup(drawing, width, style);
  const body = drawing.draw({ width, top: heading.height, style });
  const height = Math.round(heading.height + body.height);
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img" aria-labelledby="${style.id}-title ${style.id}-desc" font-family="${escapeMarkup(FONT_FAMILY)}" style="font-variant-numeric:tabular-nums">
<title id="${style.id}-title">${escapeMarkup(drawing.title)}</title>
<desc id="${style.id}-desc">${escapeMarkup(drawing.description)}</desc>
${hatch(style)}${heading.markup}
${body.markup}
</svg>`;
}

function headingMarkup(
  { title, note }: Drawing,
  width: number,
  style: SvgStyle,
): { markup: string; height: number } {
  const titleSize = style.fontSize + 3;
  const noteSize = style.fontSize - 1;
  let y = 6;
  const line = (text: string, size: number, gap: number, more: Record<string, string | number>) => {
    y += size + gap;
    return textElement(text, { x: LEFT, y, 'font-size': size, ...more });
  };
  const titles = wrapToWidth(title, columnsIn(width - 2 * LEFT, BOLD * titleSize)).map((text) =>
    line(text, titleSize, 4, { 'font-weight': 650, fill: ink(style, 'ink') }),
  );
  y += 3;
  const notes = wrapToWidth(note, columnsIn(width - 2 * LEFT, noteSize)).map((text) =>
    line(text, noteSize, 3, { fill: ink(style, 'muted') }),
  );
  return { markup: [...titles, ...notes].join(''), height: y + 14 };
}

/** Fill of what must be told apart without colour; the pattern of a drawing has its id. */
export function hatchFill(style: SvgStyle): string {
  return `url(#${style.id}-hatch)`;
}

function hatch(style: SvgStyle): string {
  const lines = element('path', { d: 'M0,5 L5,0', stroke: ink(style, 'ink'), 'stroke-width': 1 });
  const ground = element('rect', { width: 5, height: 5, fill: ink(style, 'ground') });
  const pattern = element(
    'pattern',
    { id: `${style.id}-hatch`, width: 5, height: 5, patternUnits: 'userSpaceOnUse' },
    ground + lines,
  );
  return element('defs', {}, pattern);
}
