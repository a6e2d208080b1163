import type { FigureSpec } from '../figureSpec.ts';
import { emptyAxes } from '../lesson/handoutFigures.ts';
import { renderSvg } from '../renderSvg.ts';
import { switchingFigures } from '../switchingFigures.ts';
import { timeFigure } from '../timeFigure.ts';
import type { LaboratoryPageOptions } from './laboratoryOptions.ts';

/** What the recorder should show: the whole run, and the first milliseconds after the closing that plugs; with `blank` empty axes. */
export function figuresSection({ run, units, blank }: LaboratoryPageOptions): string {
  const closings = switchingFigures(run, { units });
  const closing = closings.find(({ id }) => id.endsWith('-plug')) ?? closings.at(-1);
  const specs = [timeFigure(run, { units }), ...(closing === undefined ? [] : [closing])];
  const drawn = specs.map((spec, k) => (blank ? emptyAxes(spec, SKETCH_TITLES[k] ?? '') : spec));
  return `<section>
<h2>${blank ? 'Before the experiment: sketch what the recorder will show' : 'What the recorder should show'}</h2>
${drawn.map((spec) => figure(spec, blank)).join('\n')}
</section>`;
}

const SKETCH_TITLES = [
  'Sketch what you expect over the whole run',
  'Sketch the first milliseconds after the contactor closes',
];

/** Heights that let two figures stand on one page of A4 and of Letter. */
const SCALE = 0.72;

function figure(spec: FigureSpec, blank: boolean): string {
  return `<figure class="${blank ? 'sketch' : 'expect'}">${renderSvg(spec, { theme: 'css', heightScale: SCALE })}</figure>`;
}
