import type { SurveyTask } from '../../survey/spec/survey.ts';
import type { FoundExtreme } from '../../survey/worst/extremeOf.ts';
import { computeExtent } from '../envelope.ts';
import type { FigureSpec } from '../figureSpec.ts';
import type { ShownMetric } from './shownMetric.ts';
import { marginDomain } from './spreadFigure.ts';

/** What is sought, in words. */
export const SOUGHT: Readonly<Record<Extract<SurveyTask, { kind: 'worst' }>['seek'], string>> = {
  smallest: 'smallest',
  largest: 'largest',
  largestMagnitude: 'largest in magnitude',
};

/** What the end of the line says: a search that has not come to rest may stand still for long. */
const LEVEL_END = {
  rest: 'After the last step down the search came to rest.',
  other:
    'A level end is no sign that nothing worse is left: where runs are few, a search stands still for long.',
} as const;

/**
 * The best value so far over the runs of a search.
 *
 * @param runs number of runs that were made
 * @param asWritten the metric of the scenario as written, SI; null where it is not known
 */
export function convergenceFigure(
  found: FoundExtreme,
  runs: number,
  asWritten: number | null,
  shown: ShownMetric,
): FigureSpec {
  const steps = found.history.map(({ run, value }) => ({ x: run, y: value * shown.perSi }));
  const last = steps.at(-1)!;
  const end = Math.max(last.x, runs - 1);
  const line = [
    ...steps.flatMap((step, k) => (k === 0 ? [step] : [{ x: step.x, y: steps[k - 1]!.y }, step])),
    { x: end, y: last.y },
  ];
  const y = Float64Array.from(line, (point) => point.y);
  const reference = asWritten === null ? [] : [asWritten * shown.perSi];
  return {
    id: 'convergence',
    title: `The search stood at ${shown.text(found.value)} from run ${last.x} to the last run, ${end}`,
    note: `Best value so far. ${LEVEL_END[found.end === 'rest' ? 'rest' : 'other']}`,
    description: `Best value so far of ${shown.name} over the runs of the search; it ends at ${shown.text(found.value)}.`,
    x: { label: 'Run', domain: [0, Math.max(1, end)] },
    panels: [
      {
        kind: 'lines',
        weight: 1.9,
        y: { label: shown.axis, domain: marginDomain(computeExtent(y, reference)) },
        series: [
          {
            form: 'line',
            label: '',
            quantity: shown.quantity,
            dash: 'solid',
            x: Float64Array.from(line, (point) => point.x),
            y,
          },
        ],
        references: reference.map((value) => ({ y: value, label: 'as written' })),
        points: [
          {
            ...last,
            label: `run ${last.x}: ${shown.text(found.value)}`,
            short: `run ${last.x}`,
            quantity: shown.quantity,
          },
        ],
      },
    ],
    marks: [],
    bands: [],
  };
}
