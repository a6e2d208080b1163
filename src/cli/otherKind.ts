import { shellWord } from '../report/shellWord.ts';
import { ScenarioError } from '../scenario/scenarioError.ts';

/** What a file of one kind is where the other is wanted, and what does something with it. */
const WORDS = {
  survey: { is: 'it is a survey, many runs of a scenario', wanted: 'a scenario', verb: 'survey ' },
  scenario: { is: 'it is a scenario, one run', wanted: 'a survey', verb: '' },
} as const;

/** A survey given where a scenario is wanted, or the other way about, with the command that was meant. */
export function otherKind(file: string, kind: keyof typeof WORDS): ScenarioError {
  const { is, wanted, verb } = WORDS[kind];
  const name = shellWord(file);
  return new ScenarioError([
    {
      code: 'conflict',
      message: is,
      expected: `${wanted}; this one runs with: npm start -- ${verb}${name}, and is checked with: npm start -- check ${name}`,
      file,
      line: null,
      column: null,
      path: '',
      found: null,
    },
  ]);
}
