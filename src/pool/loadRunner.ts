import type { Runner } from '../survey/runs/runner.ts';
import type { Survey } from '../survey/spec/survey.ts';

/** The module that makes runs, unless another is named. */
export const RUNNER_MODULE = new URL('../survey/runs/runner.ts', import.meta.url).href;

/**
 * Loads what makes the runs of a survey.
 *
 * @param module URL of a module that exports `runner(survey)`
 * @throws ScenarioError when the survey's scenario cannot be used
 */
export async function loadRunner(module: string, survey: Survey): Promise<Runner> {
  const { runner } = (await import(module)) as { readonly runner: (survey: Survey) => Runner };
  return runner(survey);
}
