import { escapeMarkup } from '../plainText.ts';
import { element, textElement } from '../svgElement.ts';
import type { Drawing, PlacedSymbol, PlacedText, Point, Wire } from './drawing.ts';
import { junctions } from './junctions.ts';
import { INK } from './strokes.ts';

/** Widths of lines, px. */
const POWER_LINE = 2;
const CONTROL_LINE = 1.3;
const DOT = 2.6;

/**
 * Markup of a drawing. Conductors are `path` elements of class `wire`; a symbol is a group whose attribute `data-ends` says where
 * conductors meet it; dots are circles of class `junction`.
 */
export function renderDrawing(drawing: Drawing): string {
  const lines = { fill: 'none', stroke: INK, 'stroke-linejoin': 'round', 'stroke-linecap': 'round' };
  return [
    element('g', lines, drawing.wires.map(wireMarkup).join('\n')),
    element('g', lines, drawing.symbols.map(symbolMarkup).join('\n')),
    element('g', { fill: INK }, junctions(drawing).map(dotMarkup).join('\n')),
    element('g', { fill: INK }, drawing.texts.map(textMarkup).join('\n')),
  ].join('\n');
}

function wireMarkup({ points, power }: Wire): string {
  const d = points.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${coordinate(x)},${coordinate(y)}`).join(' ');
  return element('path', { class: 'wire', d, 'stroke-width': power ? POWER_LINE : CONTROL_LINE });
}

function symbolMarkup({ art, at, turned, ends, data, power }: PlacedSymbol): string {
  const attributes = Object.fromEntries(Object.entries(data).map(([key, value]) => [`data-${key}`, value]));
  const turn = turned === true ? ' rotate(-90)' : '';
  return element(
    'g',
    {
      transform: `translate(${coordinate(at.x)} ${coordinate(at.y)})${turn}`,
      'stroke-width': power ? POWER_LINE : CONTROL_LINE,
      ...attributes,
      ...(ends.length === 0 ? {} : { 'data-ends': ends.map(pair).join(' ') }),
    },
    art,
  );
}

function dotMarkup({ x, y }: Point): string {
  return element('circle', { class: 'junction', cx: x, cy: y, r: DOT });
}

function textMarkup({ text, x, y, size, anchor, bold, pieces }: PlacedText): string {
  const attributes = {
    x,
    y,
    'font-size': size,
    'text-anchor': anchor === 'start' ? undefined : anchor,
    'font-weight': bold === true ? 650 : undefined,
  };
  if (pieces === undefined) return textElement(text, attributes);
  // Pieces keep the spaces at their ends, which `escapeMarkup` takes away.
  const spans = pieces.map((piece) =>
    piece.underlined
      ? element('tspan', { 'text-decoration': 'underline' }, escapeMarkup(piece.text))
      : piece.text.replace(/[&<>]/gu, (character) => escapeMarkup(character)),
  );
  return element('text', attributes, spans.join(''));
}

function pair({ x, y }: Point): string {
  return `${coordinate(x)},${coordinate(y)}`;
}

function coordinate(value: number): string {
  return String(Math.round(value * 100) / 100);
}
