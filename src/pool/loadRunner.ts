import { type Runner, runner as usual } from '../survey/runs/runner.ts';
import type { Survey } from '../survey/spec/survey.ts';

/** The module that makes runs, unless another is named; it need not be loaded by its address. */
export const RUNNER_MODULE = new URL('../survey/runs/runner.ts', import.meta.url).href;

/**
 * Loads what makes the runs of a survey.
 *
 * @param module URL of a module that exports `runner(survey)`; TypeScript too
 * @throws ScenarioError when the survey's scenario cannot be used
 */
export async function loadRunner(module: string, survey: Survey): Promise<Runner> {
  if (module === RUNNER_MODULE) return usual(survey);
  const { runner } = (await loaded(module)) as { readonly runner: (survey: Survey) => Runner };
  return runner(survey);
}

async function loaded(module: string): Promise<unknown> {
  try {
    return await import(module);
  } catch (error) {
    if ((error as { readonly code?: string }).code !== 'ERR_UNKNOWN_FILE_EXTENSION') throw error;
    const { register } = await import('tsx/esm/api');
    register();
    // Under the same address Node would only repeat the failure.
    return import(`${module}?translated`);
  }
}
