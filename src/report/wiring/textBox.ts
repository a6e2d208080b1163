import { textWidth } from '../svgLayout.ts';
import type { PlacedText } from './drawing.ts';

/** From where to where a text reaches across the sheet, estimated without a font, px. */
export function textReach({ text, x, size, anchor }: PlacedText): readonly [number, number] {
  const width = textWidth(text, size);
  switch (anchor) {
    case 'start':
      return [x, x + width];
    case 'middle':
      return [x - width / 2, x + width / 2];
    case 'end':
      return [x - width, x];
  }
}
