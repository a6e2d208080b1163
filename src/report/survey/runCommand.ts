import { shellWord } from '../shellWord.ts';
import type { SurveyOptions } from './surveyOptions.ts';

/** What is known of how the survey was made. */
type MadeFrom = Pick<SurveyOptions, 'surveyFile' | 'folder'>;

/**
 * The command that writes the scenario of one run, or what to do where the survey's file is not known. The runs
 * of a search are in its journal, so that a folder that was stated is stated again. `--silent` keeps the words of
 * npm out of the scenario.
 */
export function runCommandText({ surveyFile, folder }: MadeFrom, run: number): string {
  if (surveyFile === undefined) return `Its scenario: \`survey\` with the survey's file and --run ${run}.`;
  const out = folder === undefined ? '' : ` --out ${shellWord(folder)}`;
  return `npm start --silent -- survey ${shellWord(surveyFile)}${out} --run ${run} > run-${run}.yaml`;
}

/** Where the worst case of a search is kept. */
export const WORST_FILE_WORDS = 'worst.yaml, beside this page, is its scenario.';
