import type { RunSearch, Survey, SurveyRow } from '../spec/survey.ts';
import { objectiveOf } from './objective.ts';
import { type Asked, type Stage, searchPlan } from './searchPlan.ts';
import { searchSpace } from './searchSpace.ts';

/** A search that has been told some rows. */
interface Told {
  /** Their costs. */
  readonly costs: readonly number[];
  /** What it asks for next; null: nothing. */
  readonly batch: readonly number[][] | null;
  /** What it asks for that for, or what it was at when it ended. */
  readonly stage: Stage;
}

/** A search that can say how far it has come. */
export interface WorstSearch extends RunSearch {
  /** What the batch after these rows is for; where there is none, what the search was at when it ended. */
  readonly stageAfter: (rows: readonly SurveyRow[]) => Stage;
}

/**
 * Global search for the extreme of the survey's metric. A pure function of the survey and the rows: what is
 * remembered between calls only spares going through rows again.
 *
 * Source: its local searches are those of Hansen, The CMA Evolution Strategy: A Tutorial, arXiv:1604.00772; what joins
 * them is our own.
 *
 * @throws RangeError when the survey asks something else, or a field has no range
 */
export function worstSearch(survey: Survey): WorstSearch {
  const { task, seed } = survey;
  const { costOf } = objectiveOf(survey);
  const space = searchSpace(survey);
  const runs = task.kind === 'worst' ? task.runs : 0;
  let plan = searchPlan(space, runs, seed);
  let told: Told | null = null;

  const begin = (): Told => {
    plan = searchPlan(space, runs, seed);
    return { costs: [], ...asked(plan.next([])) };
  };
  const asked = (step: IteratorResult<Asked, Stage>): Pick<Told, 'batch' | 'stage'> =>
    step.done === true
      ? { batch: null, stage: step.value }
      : { batch: step.value.points.map((point) => space.valuesAt(point)), stage: step.value.stage };
  const isBeginning = ({ costs }: Told, all: readonly number[]) =>
    costs.length <= all.length && costs.every((cost, i) => cost === all[i]);
  const after = (rows: readonly SurveyRow[]): Told => {
    const costs = rows.map(costOf);
    let at: Told = told !== null && isBeginning(told, costs) ? told : begin();
    while (at.costs.length < costs.length) {
      const { length } = at.costs;
      demandAnswers(at.batch, rows.slice(length), length);
      const upTo = length + at.batch.length;
      at = { costs: costs.slice(0, upTo), ...asked(plan.next(costs.slice(length, upTo))) };
    }
    told = at;
    return at;
  };
  return { next: (rows) => after(rows).batch, stageAfter: (rows) => after(rows).stage };
}

/** Rows of another survey, or of an earlier search, would lead astray without a sign. */
function demandAnswers(
  batch: readonly number[][] | null,
  rows: readonly SurveyRow[],
  before: number,
): asserts batch is readonly number[][] {
  if (batch === null) throw new RangeError(`row ${before}: the search was over after ${before} runs`);
  if (rows.length < batch.length)
    throw new RangeError(
      `row ${before + rows.length} is missing: the batch goes up to row ${before + batch.length - 1}`,
    );
  batch.forEach((wanted, i) => {
    const { values } = rows[i]!;
    if (values.length === wanted.length && wanted.every((value, k) => value === values[k])) return;
    throw new RangeError(
      `row ${before + i}: its values are ${values.join(', ')}, the search asked for ${wanted.join(', ')}`,
    );
  });
}
