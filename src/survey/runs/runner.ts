import { type Suitability, suitability } from '../../assess/suitability.ts';
import { type Figures, figures } from '../../measure/figures.ts';
import { LARGEST_RESIDUAL } from '../../measure/warnings.ts';
import { assertScenario } from '../../scenario/assertScenario.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { ScenarioError } from '../../scenario/scenarioError.ts';
import { runTrajectory } from '../../simulate/run.ts';
import { isSuccessful } from '../../simulate/status.ts';
import type { Trajectory } from '../../simulate/trajectory.ts';
import { judgedAlone } from '../judgedAlone.ts';
import type { RowVerdict, Survey, SurveyRow } from '../spec/survey.ts';
import { scenarioReader } from './scenarioReader.ts';

/**
 * Makes runs of one survey, one after another. Holds nothing that could change a result: rows do not depend on the order.
 * `run`: number of the run, from 0. `values`: one per field, in the units of the fields.
 */
export type Runner = (run: number, values: readonly number[]) => SurveyRow;

/**
 * Prepares what is common to all runs of a survey.
 *
 * @throws ScenarioError when the base scenario or a field cannot be used
 */
export function runner(survey: Survey): Runner {
  const read = scenarioReader(survey);
  const judge = survey.verdict ? judging() : null;
  const nothing = survey.metrics.map(() => null);
  return (run, values) => {
    try {
      const { scenario, cageIsFitted } = read(values);
      const judged = judge === null ? null : judge(scenario, cageIsFitted);
      assertScenario(scenario);
      const found = figures(judged?.trajectory ?? runTrajectory(scenario), survey.metrics);
      const reason = whyUseless(found);
      return {
        run,
        values,
        status: reason === null ? 'good' : isSuccessful(found.status) ? 'unbalanced' : 'failed',
        reason,
        metrics: reason === null ? found.values : nothing,
        verdict: judged?.verdict ?? null,
      };
    } catch (error) {
      if (!(error instanceof ScenarioError)) throw error;
      return { run, values, status: 'refused', reason: error.message, metrics: nothing, verdict: null };
    }
  };
}

function whyUseless({ status, residual }: Figures): string | null {
  if (!isSuccessful(status)) return status.message;
  return residual <= LARGEST_RESIDUAL
    ? null
    : `the energy balance of the run does not close: ${residual.toExponential(1)} of the throughput is missing`;
}

/** The verdict of one scenario after another. What the duty does not change is kept from the scenario before. */
function judging(): (
  scenario: Scenario,
  cageIsFitted: boolean,
) => { readonly trajectory: Trajectory; readonly verdict: RowVerdict } {
  let known: { readonly key: string; readonly alone: ReturnType<typeof judgedAlone> } | null = null;
  return (scenario, cageIsFitted) => {
    const key = JSON.stringify([{ ...scenario, duty: null }, cageIsFitted]);
    if (known?.key !== key) known = { key, alone: judgedAlone(scenario, cageIsFitted) };
    const { result, instants, worst } = known.alone;
    // Another duty changes no run, only what is made of it.
    const own = { ...result, scenario };
    const judged = suitability(
      own,
      instants.means,
      cageIsFitted,
      worst === result ? own : { ...worst, scenario },
    );
    return { trajectory: result.trajectory, verdict: rowVerdict(judged) };
  };
}

function rowVerdict({ verdict }: Suitability): RowVerdict {
  return { outcome: verdict.outcome, decisive: verdict.decisive.join(' ') };
}
