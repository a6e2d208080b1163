import type { Pen } from '../../report/canvas/pen.ts';
import { pixelSize, preparePen } from '../../report/canvas/penScale.ts';

/** A cleared pen on a canvas that takes so much space, px; null where the browser gives none. */
export function canvasPen(
  canvas: HTMLCanvasElement,
  width: number,
  height: number,
  ratio: number,
): Pen | null {
  const size = pixelSize(width, height, ratio);
  // Setting the size throws the canvas's memory away, even to the same.
  if (canvas.width !== size.width) canvas.width = size.width;
  if (canvas.height !== size.height) canvas.height = size.height;
  const pen = canvas.getContext('2d');
  if (pen !== null) preparePen(pen, width, height, ratio);
  return pen;
}
