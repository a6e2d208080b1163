import type { Dash } from '../figureSpec.ts';
import { type Quantity, quantityColour, type SurfaceColour, surfaceColour, type Theme } from '../palette.ts';
import { dashArray, FONT_FAMILY } from '../svgStyle.ts';
import type { Pen } from './pen.ts';

/** Everything the parts of a painting share. */
export interface PaintStyle {
  readonly theme: Theme;
  /** Size of text, px. */
  readonly textSize: number;
  /** A painting for a telephone, or one in very large print: short labels, small margins. */
  readonly narrow: boolean;
}

/** Below this many sizes of text a painting is narrow: 600 px at the usual 13 px. */
const NARROW_BELOW = 46;
/** Small text (ticks, labels) in sizes of text. */
const SMALL = 0.92;
/** Width of the ground-coloured edge round letters, px: keeps them readable across a line. */
const HALO = 3.5;

/** Style of a painting that is `width` px wide. */
export function paintStyle(theme: Theme, textSize: number, width: number): PaintStyle {
  return { theme, textSize, narrow: width < NARROW_BELOW * textSize };
}

/** Size of ticks and labels, px. */
export function smallSize(style: PaintStyle): number {
  return SMALL * style.textSize;
}

/** Colour of paper, text or lines. */
export function ink(style: PaintStyle, name: SurfaceColour): string {
  return surfaceColour(name, style.theme);
}

/** Colour of a quantity. */
export function colour(style: PaintStyle, quantity: Quantity): string {
  return quantityColour(quantity, style.theme);
}

/** Lengths of strokes and gaps, px, as in the static drawings; none for an unbroken line. */
export function dashLengths(dash: Dash): number[] {
  return dashArray(dash)?.split(' ').map(Number) ?? [];
}

/** How a text is painted; ink, start, small and regular where nothing is said. */
export interface TextLook {
  readonly fill?: string;
  readonly align?: 'start' | 'center' | 'end';
  /** px */
  readonly size?: number;
  readonly bold?: boolean;
  /** Edge in the colour of the ground. */
  readonly halo?: boolean;
}

/** Paints one line of text with its baseline at `y`, px. */
export function paintText(
  pen: Pen,
  style: PaintStyle,
  text: string,
  x: number,
  y: number,
  look: TextLook = {},
): void {
  // left and right, not start and end: those turn round with the direction of the page's writing.
  pen.textAlign = look.align === 'end' ? 'right' : look.align === 'center' ? 'center' : 'left';
  pen.textBaseline = 'alphabetic';
  pen.font = `${look.bold === true ? '600 ' : ''}${look.size ?? smallSize(style)}px ${FONT_FAMILY}`;
  if (look.halo === true) {
    pen.lineJoin = 'round';
    pen.lineWidth = HALO;
    pen.strokeStyle = ink(style, 'ground');
    pen.setLineDash([]);
    pen.strokeText(text, x, y);
  }
  pen.fillStyle = look.fill ?? ink(style, 'ink');
  pen.fillText(text, x, y);
}

/** How a straight line is painted. */
export interface LineLook {
  readonly stroke: string;
  /** px */
  readonly width?: number;
  readonly dash?: readonly number[];
}

/** Paints a straight line. */
export function paintLine(
  pen: Pen,
  from: readonly [number, number],
  to: readonly [number, number],
  look: LineLook,
): void {
  pen.beginPath();
  pen.moveTo(from[0], from[1]);
  pen.lineTo(to[0], to[1]);
  pen.strokeStyle = look.stroke;
  pen.lineWidth = look.width ?? 1;
  pen.setLineDash([...(look.dash ?? [])]);
  pen.stroke();
}
