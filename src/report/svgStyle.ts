import type { Dash } from './figureSpec.ts';
import { type Quantity, quantityColour, type SurfaceColour, surfaceColour, type Theme } from './palette.ts';

/** Everything the parts of a drawing share. */
export interface SvgStyle {
  readonly theme: Theme | 'css';
  /** Unique prefix of the drawing's ids. */
  readonly id: string;
  readonly fontSize: number;
  /** A drawing for telephones: short labels. */
  readonly narrow: boolean;
}

/** Fonts of all drawings, the system's own first. */
export const FONT_FAMILY = "system-ui, 'Segoe UI', 'Helvetica Neue', Arial, sans-serif";

/** Broken lines tell curves apart where colour does not print. */
const DASHES: Readonly<Record<Dash, string | undefined>> = {
  solid: undefined,
  dash: '7 3',
  dot: '2 3',
  dashdot: '9 3 2 3',
};

/** Value of `stroke-dasharray`; undefined for an unbroken line. */
export function dashArray(dash: Dash): string | undefined {
  return DASHES[dash];
}

/** Colour of paper, text or lines in the drawing's theme. */
export function ink(style: SvgStyle, name: SurfaceColour): string {
  return surfaceColour(name, style.theme);
}

/** Colour of a quantity in the drawing's theme. */
export function colour(style: SvgStyle, quantity: Quantity): string {
  return quantityColour(quantity, style.theme);
}

/** Attributes that keep text readable where it crosses a line. */
export function halo(style: SvgStyle): Record<string, string | number> {
  return {
    stroke: ink(style, 'ground'),
    'stroke-width': 3.5,
    'stroke-linejoin': 'round',
    'paint-order': 'stroke',
  };
}
