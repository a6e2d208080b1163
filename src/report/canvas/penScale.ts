import type { Pen } from './pen.ts';

/** Size of a canvas in its own pixels. */
export interface PixelSize {
  readonly width: number;
  readonly height: number;
}

/** Own pixels of a canvas that takes this space on a page, px, on a display with so many of its pixels to one px. */
export function pixelSize(width: number, height: number, ratio: number): PixelSize {
  return { width: Math.max(1, Math.round(width * ratio)), height: Math.max(1, Math.round(height * ratio)) };
}

/** Makes the pen count in px of the layout and clears the canvas. */
export function preparePen(pen: Pen, width: number, height: number, ratio: number): void {
  pen.setTransform(ratio, 0, 0, ratio, 0, 0);
  pen.clearRect(0, 0, width, height);
}

/** Size of text in a picture, in sizes of the page's text, and on a picture narrower than `NARROW`, px. */
const TEXT_SHARE = 0.8125;
const NARROW_TEXT_SHARE = 0.6875;
const NARROW = 480;
/** Size of a page's text where a browser says nothing, px. */
const USUAL_TEXT = 16;

/**
 * Size of text in a picture, px: it grows with the page's text, which large print sets.
 *
 * @param rootSize computed font size of the page such as "16px"
 * @param width of the picture, px
 */
export function pictureTextSize(rootSize: string, width: number): number {
  const size = Number.parseFloat(rootSize);
  const root = Number.isFinite(size) ? size : USUAL_TEXT;
  return root * (width < NARROW ? NARROW_TEXT_SHARE : TEXT_SHARE);
}
