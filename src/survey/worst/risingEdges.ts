import type { Survey, SurveyRow } from '../spec/survey.ts';
import { objectiveOf } from './objective.ts';
import { searchSpace } from './searchSpace.ts';

/** How far from the edge rows say what happens towards it, share of the range. */
const NEAR = 0.05;
/** Of the metric: less is what the steps of the integration leave. */
const ROUNDING = 1e-9;
/** Of the metric: a difference over the near rows that is worth words. */
const NOTABLE = 1e-7;

/**
 * The fields whose edge the extreme is at and towards whose edge what is sought grows: so says every row that
 * differs from the extreme in that field alone and by little.
 *
 * @param extreme the extreme among the rows
 * @returns numbers of the fields; a full turn has no edge
 */
export function risingEdges(survey: Survey, rows: readonly SurveyRow[], extreme: SurveyRow): number[] {
  const { costOf } = objectiveOf(survey);
  const found = costOf(extreme);
  return survey.fields.flatMap((field, k) => {
    const { spread } = field;
    if (spread.kind !== 'uniform' && spread.kind !== 'logUniform') return [];
    const { from, to } = spread;
    const at = extreme.values[k]!;
    if (at !== from && at !== to) return [];
    if (searchSpace({ fields: [field] }).axes[0]!.circular) return [];
    const costs = rows
      .filter(({ values }) => values.every((value, i) => (i === k) !== (value === extreme.values[i])))
      .map((row) => ({ away: Math.abs(row.values[k]! - at) / (to - from), cost: costOf(row) }))
      .filter(({ away, cost }) => away <= NEAR && Number.isFinite(cost))
      .toSorted((a, b) => a.away - b.away)
      .map(({ cost }) => cost);
    const rises = costs.every((cost, i) => cost >= (costs[i - 1] ?? found) - ROUNDING * Math.abs(found));
    const whole = (costs.at(-1) ?? found) - found;
    return rises && whole > NOTABLE * Math.abs(found) ? [k] : [];
  });
}
