import type { EncodedColumn } from '../encodeColumn.ts';
import type { InteractiveFigure, PageWidth } from '../interactiveFigure.ts';
import {
  QUANTITY_COLOURS,
  type Quantity,
  SURFACE,
  type SurfaceColour,
  surfaceColour,
  type Theme,
} from '../palette.ts';
import { FONT_FAMILY } from '../svgStyle.ts';

/** A figure as the plotting library takes it. */
export interface PlotlyFigure {
  readonly data: readonly object[];
  readonly layout: object;
  readonly config: object;
}

/** Margins of the plot, px: room for the names of rows, and for the shared axis. */
const LEFT = 90;
const NARROW_LEFT = 56;
const BOTTOM = 50;
/** Weight of the names of axes. */
const BOLD = 600;
/** From these widths of the plot on, px, the layout of a page and of a projector is taken. */
const WIDE_FROM = 700;
const LARGE_FROM = 1400;

/** Class of a width, px. */
export function pageWidth(width: number): PageWidth {
  return width < WIDE_FROM ? 'narrow' : width < LARGE_FROM ? 'wide' : 'large';
}

/** Puts columns and the colours of a theme in the places that an interactive figure keeps for them. */
export function plotlyFigure(figure: InteractiveFigure, theme: Theme, width: number): PlotlyFigure {
  const kind = pageWidth(width);
  const base = figure.layout as PlainObject;
  const range = (base.xaxis as PlainObject).range;
  const places: Places = { columns: figure.columns.map(decodeColumn), range, theme };
  const layout = resolve(base, places, false) as PlainObject;
  const size = figure.sizes[kind];
  const added = resolve({ annotations: size.annotations, shapes: size.shapes }, places, false) as PlainObject;
  return {
    data: resolve(figure.traces, places, false) as readonly object[],
    layout: {
      ...layout,
      annotations: [...(layout.annotations as object[]), ...(added.annotations as object[])],
      shapes: [...(layout.shapes as object[]), ...(added.shapes as object[])],
      height: size.height,
      margin: { l: kind === 'narrow' ? NARROW_LEFT : LEFT, r: size.right, t: size.top, b: BOTTOM },
      paper_bgcolor: 'rgba(0,0,0,0)',
      plot_bgcolor: 'rgba(0,0,0,0)',
      font: { family: FONT_FAMILY, size: size.text, color: surfaceColour('ink', theme) },
    },
    config: {
      responsive: true,
      // On a telephone the tool bar would cover the words of the events.
      displayModeBar: kind === 'narrow' ? false : 'hover',
      displaylogo: false,
      // The library would offer to send the run to a server of its maker.
      showSendToCloud: false,
      modeBarButtonsToRemove: ['lasso2d', 'select2d', 'autoScale2d'],
      toImageButtonOptions: { format: 'svg', filename: figure.id },
    },
  };
}

interface PlainObject {
  readonly [key: string]: unknown;
}

interface Places {
  readonly columns: readonly (Float32Array | Float64Array)[];
  readonly range: unknown;
  readonly theme: Theme;
}

/**
 * Text that the library would make bold by a style attribute, which a strict policy for style sheets forbids: the label of an axis
 * gets a bold font instead, the words at the pointer stay as they are.
 */
function withoutMarkup(object: PlainObject): PlainObject {
  const { text, hovertemplate } = object;
  const bold = typeof text === 'string' ? /^<b>(.*)<\/b>$/u.exec(text)?.[1] : undefined;
  return {
    ...object,
    ...(bold === undefined ? {} : { text: bold, font: { weight: BOLD } }),
    ...(typeof hovertemplate === 'string' ? { hovertemplate: hovertemplate.replaceAll(/<\/?b>/gu, '') } : {}),
  };
}

/** Values under names that end in "color" may be names of colours. */
function resolve(value: unknown, places: Places, isColour: boolean): unknown {
  if (typeof value === 'string') return isColour ? colourOf(value, places.theme) : value;
  if (Array.isArray(value)) return value.map((item) => resolve(item, places, isColour));
  if (value === null || typeof value !== 'object') return value;
  const object = value as PlainObject;
  if (typeof object.column === 'number') return places.columns[object.column];
  if (object.range === true) return places.range;
  return Object.fromEntries(
    Object.entries(withoutMarkup(object)).map(([key, item]) => [
      key,
      resolve(item, places, key.endsWith('color')),
    ]),
  );
}

function colourOf(value: string, theme: Theme): string {
  const name = /^colour:(.*)$/u.exec(value)?.[1];
  if (name === undefined) return value;
  if (name in SURFACE) return SURFACE[name as SurfaceColour][theme];
  return QUANTITY_COLOURS[name as Quantity][theme];
}

/** The numbers of a column, little-endian in base64. */
export function decodeColumn({ dtype, bdata }: EncodedColumn): Float32Array | Float64Array {
  const bytes = Uint8Array.from(atob(bdata), (character) => character.charCodeAt(0));
  return dtype === 'f4' ? new Float32Array(bytes.buffer) : new Float64Array(bytes.buffer);
}
