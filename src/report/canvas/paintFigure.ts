import type { FigureSpec } from '../figureSpec.ts';
import { layoutFigure, type PaintOptions } from './layoutFigure.ts';
import { paintBars } from './paintBars.ts';
import type { PaintedLayout } from './paintedLayout.ts';
import { paintBandNames, paintBands, paintHeading, paintMarks, paintSharedAxis } from './paintFrame.ts';
import { paintLinesPanel } from './paintLinesPanel.ts';
import { paintStates } from './paintStates.ts';
import { ink } from './paintStyle.ts';
import type { Pen } from './pen.ts';

/**
 * Paints all that a static drawing of the figure shows, for the visible stretch of its shared axis, fast enough to follow a hand.
 * Logarithmic axes are painted as linear ones.
 *
 * @returns where everything stands, px
 */
export function paintFigure(pen: Pen, spec: FigureSpec, options: PaintOptions): PaintedLayout {
  const laidOut = layoutFigure(spec, options);
  const { layout, style } = laidOut;
  pen.globalAlpha = 1;
  pen.fillStyle = ink(style, 'ground');
  pen.fillRect(0, 0, layout.width, layout.height);
  paintHeading(pen, laidOut);
  paintBands(pen, spec, laidOut);
  paintSharedAxis(pen, spec, laidOut);
  paintMarks(pen, laidOut);
  spec.panels.forEach((panel, index) => {
    if (panel.kind === 'lines') paintLinesPanel(pen, style, spec, options.behind, layout, index);
    else if (panel.kind === 'states') paintStates(pen, style, panel, layout, index);
    else paintBars(pen, style, panel, layout, index);
  });
  paintBandNames(pen, spec, laidOut);
  return layout;
}
