import type { PaintOptions } from '../../report/canvas/layoutFigure.ts';
import { paintFigure } from '../../report/canvas/paintFigure.ts';
import { PRINT_RATIO } from '../../report/canvas/printOptions.ts';
import type { FigureSpec } from '../../report/figureSpec.ts';
import { canvasPen } from './canvasPen.ts';

/** After this the browser has surely taken the file over, ms. */
const TAKEN_OVER = 10_000;

/** Hands a file to the reader. */
export function download(name: string, content: string | Blob, type: string): void {
  const blob = typeof content === 'string' ? new Blob([content], { type }) : content;
  const link = document.createElement('a');
  link.href = URL.createObjectURL(blob);
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), TAKEN_OVER);
}

/** A figure as a PNG file; null where the browser cannot make one. */
export function figurePng(spec: FigureSpec, options: PaintOptions): Promise<Blob | null> {
  const canvas = document.createElement('canvas');
  const pen = canvasPen(canvas, options.width, options.height, PRINT_RATIO);
  if (pen !== null) paintFigure(pen, spec, options);
  return new Promise((resolve) => canvas.toBlob(resolve, 'image/png'));
}
