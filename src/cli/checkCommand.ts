import { estimationLines } from '../report/estimationText.ts';
import { cleanText } from '../report/plainText.ts';
import { runList } from '../survey/draws/runList.ts';
import type { Survey } from '../survey/spec/survey.ts';
import { costWords, surveyCost } from '../survey/spec/surveyCost.ts';
import { fileKind } from './fileKind.ts';
import { type CliIo, EXIT, type ExitCode } from './io.ts';
import { placed } from './placed.ts';
import { scenarioOfText } from './readScenarioFile.ts';
import { surveyOfText } from './readSurveyFile.ts';
import { readTextFile } from './readTextFile.ts';
import { assertSolvable } from './solvable.ts';

/** What is read: a larger file is refused unread, bytes. */
const LIMITS = {
  largest: 1_000_000,
  what: 'scenario or survey',
  expected: 'a scenario file (YAML or JSON), or a survey file',
};

/** Checks a scenario file, or a survey with its scenario, without running it. */
export function checkCommand(file: string, io: CliIo): ExitCode {
  // Once: what comes through a pipe cannot be read a second time.
  const source = readTextFile(file, LIMITS, io);
  if (fileKind(source) === 'survey') checkSurvey(file, source, io);
  else checkScenario(file, source, io);
  return EXIT.done;
}

/** Also what shows only when circuit, rating and load are solved. */
function checkScenario(file: string, source: string, io: CliIo): void {
  const scenarioFile = scenarioOfText(source, file);
  const { scenario, estimation } = scenarioFile;
  placed(scenarioFile, () => assertSolvable(scenario));
  io.out(`${file}: in order (${cleanText(scenario.title)})\n`);
  if (estimation !== null)
    for (const line of estimationLines(estimation, 'SI')) io.out(`${cleanText(line)}\n`);
}

function checkSurvey(file: string, source: string, io: CliIo): void {
  const survey = surveyOfText(source, file, io);
  io.out(`${file}: in order (${cleanText(survey.title)})\n${sizeText(survey)}\n`);
}

function sizeText({ task, ...survey }: Survey): string {
  const count = task.kind === 'worst' ? task.runs : runList({ ...survey, task }).count;
  const cost = costWords(surveyCost(count, survey.verdict));
  const runs = `${count} ${count === 1 ? 'run' : 'runs'}${task.kind === 'worst' ? ' at most' : ''}`;
  return `A survey of ${runs} of ${cleanText(survey.base.fileName)}: about ${cost} of journal (a rough guess)`;
}
