import type { FigureSpec, PanelSpec } from '../figureSpec.ts';
import { emptyAxes } from '../lesson/handoutFigures.ts';
import { renderSvg } from '../renderSvg.ts';
import { switchingFigures } from '../switchingFigures.ts';
import { timeFigure } from '../timeFigure.ts';
import type { LaboratoryPageOptions } from './laboratoryOptions.ts';

/**
 * What the recorder should show: currents and speed over the whole run, and the first milliseconds after the closing that plugs, each on
 * a page of its own; with `blank` empty axes.
 */
export function figuresSection({ run, units, blank }: LaboratoryPageOptions): string {
  const closings = switchingFigures(run, { units });
  const closing = closings.find(({ id }) => id.endsWith('-plug')) ?? closings.at(-1);
  const specs = [
    recorded(timeFigure(run, { units })),
    ...(closing === undefined ? [] : [stretched(closing)]),
  ];
  const drawn = specs.map((spec, k) => (blank ? emptyAxes(spec, SKETCH_TITLES[k] ?? '') : spec));
  return `<section class="page">
<h2>${blank ? 'Before the experiment: sketch what the recorder will show' : 'What the recorder should show'}</h2>
${drawn.map((spec) => figure(spec, blank)).join('\n')}
</section>`;
}

const SKETCH_TITLES = [
  'Sketch what you expect over the whole run',
  'Sketch the first milliseconds after the contactor closes',
];

/** Heights of the panels of the whole run, in those of a panel of weight 1: a current can be read and drawn on paper. */
const CURRENT_WEIGHT = 1.8;
const SPEED_WEIGHT = 2;
/** By how much the panels of the enlarged figure grow, so that it fills its page. */
const STRETCH = 1.9;

/** Only what a recorder with three current probes and a channel for speed shows. */
function recorded(spec: FigureSpec): FigureSpec {
  return {
    ...spec,
    note: 'Contacts: solid is closed, hatched is arcing, nothing is open. Currents: the filled band spans all values the curve takes there. Grey ground: fewer than three poles conduct.',
    panels: spec.panels.flatMap((panel): PanelSpec[] => {
      if (panel.kind !== 'lines') return [panel];
      if (/current/iu.test(panel.y.label)) return [{ ...panel, weight: CURRENT_WEIGHT }];
      return /speed/iu.test(panel.y.label) ? [{ ...panel, weight: SPEED_WEIGHT }] : [];
    }),
  };
}

function stretched(spec: FigureSpec): FigureSpec {
  return {
    ...spec,
    panels: spec.panels.map((panel) =>
      panel.kind === 'lines' ? { ...panel, weight: STRETCH * panel.weight } : panel,
    ),
  };
}

function figure(spec: FigureSpec, blank: boolean): string {
  return `<figure class="${blank ? 'sketch' : 'expect'}">${renderSvg(spec, { theme: 'css' })}</figure>`;
}
