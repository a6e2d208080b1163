import { circuitEstimator } from '../../estimate/estimator.ts';
import { describeValue } from '../../scenario/fault.ts';
import { type Locate, type Path, valueAt } from '../../scenario/place.ts';
import type { Fault, Problem } from '../../scenario/problem.ts';
import { listed, pathText, withCommaHint, words } from '../../scenario/problemList.ts';
import { readScenario } from '../../scenario/readScenario.ts';
import { readYaml } from '../../scenario/readYaml.ts';
import { ScenarioError } from '../../scenario/scenarioError.ts';
import type { ReadBase } from './checkField.ts';
import { readFields } from './readFields.ts';
import { rememberingEstimator } from './rememberingEstimator.ts';
import type { Survey } from './survey.ts';
import { DEFAULT_SEED } from './surveyInput.ts';
import { metricsOf, taskOf } from './taskOf.ts';
import { tooManyRuns } from './tooManyRuns.ts';
import { writtenSurvey } from './writtenSurvey.ts';

/** What the reader cannot see in the text. */
export interface SurveyOptions {
  /** Name of the survey's file, for the messages. */
  readonly fileName: string;
  /**
   * Text of the scenario's file.
   *
   * @param name as the survey states it, relative to the survey's file
   * @throws Error with a message for the user where the file cannot be read
   */
  readonly scenarioText: (name: string) => string;
}

/**
 * Reads a survey and the scenario it varies.
 *
 * @param source YAML or JSON text
 * @throws ScenarioError with every problem found in the survey, then every problem of its scenario, each with its file
 * @example
 * readSurvey(text, { fileName: 'instants.yaml', scenarioText: (name) => readFileSync(join(folder, name), 'utf8') })
 */
export function readSurvey(source: string, { fileName, scenarioText }: SurveyOptions): Survey {
  const { data, faults } = readYaml(source);
  const problems: Problem[] = faults.map(({ place, ...fault }) => ({
    ...place,
    ...words(ofSurvey(fault)),
    file: fileName,
    path: '',
    found: null,
  }));
  if (data === null) throw new ScenarioError(listed(problems));
  const { value, locate } = data;
  const report = reporter(value, locate, fileName, problems);

  const { ask, written, faults: wrong } = writtenSurvey(value);
  for (const { path, ...fault } of wrong) report(path, fault);
  const base = written.scenario === undefined ? null : readBase(written.scenario, scenarioText);
  if (base !== null && 'fault' in base) report(['scenario'], base.fault);
  const read = base !== null && 'data' in base ? base : null;

  const fields = ask === undefined ? [] : readFields(ask, written.vary ?? [], value, read, report);
  const metrics = metricsOf(written, report);
  const task = ask === undefined ? null : taskOf(ask, written, value, report);
  const verdict = ask === 'limit map' || (written.verdict ?? false);
  if (task !== null) {
    const spreads = fields.map((field) => field?.spread ?? null);
    const many = tooManyRuns(task, spreads, verdict);
    if (many !== null) report(many.path, many.fault);
  }

  const ofScenario = base !== null && 'problems' in base ? base.problems : [];
  const [first, ...rest] = problems.length === 0 ? ofScenario : [...listed(problems), ...ofScenario];
  if (first !== undefined) throw new ScenarioError([first, ...rest]);
  const whole = fields.filter((field) => field !== null);
  if (read === null || whole.length !== fields.length || task === null || written.title === undefined)
    throw new Error('a survey was refused without a reason');
  return {
    title: written.title,
    description: written.description ?? '',
    base: { fileName: read.fileName, text: read.text },
    fields: whole,
    metrics,
    verdict,
    seed: written.seed ?? DEFAULT_SEED,
    task,
  };
}

function reporter(value: unknown, locate: Locate, file: string, problems: Problem[]) {
  return (path: Path, fault: Fault): void => {
    const found = valueAt(value, path);
    problems.push({
      ...locate(path, fault.code === 'unknownKey' && path.at(-1) !== 'field' ? 'key' : 'value'),
      ...words(withCommaHint(fault, path)),
      file,
      path: pathText(path),
      found: found === undefined ? null : describeValue(found),
    });
  };
}

interface Base extends ReadBase {
  readonly fileName: string;
  readonly text: string;
}

function readBase(
  fileName: string,
  scenarioText: (name: string) => string,
): Base | { readonly fault: Fault } | { readonly problems: readonly Problem[] } {
  let text: string;
  try {
    text = scenarioText(fileName);
  } catch (error) {
    if (!(error instanceof Error)) throw error;
    const expected = 'a scenario file (YAML or JSON), its path relative to this file';
    // Errors of this project say themselves what is expected.
    return { fault: { code: 'conflict', message: error.message.split('; expected ', 1)[0]!, expected } };
  }
  const estimator = rememberingEstimator(circuitEstimator);
  const parse = (source: unknown) => readScenario(source, { fileName }, estimator);
  try {
    const { data, faults } = readYaml(text);
    if (data !== null && faults.length === 0 && isScenario(data.value, parse))
      return { fileName, text, parse, data: data.value };
    // Once more as text: its problems then have their lines.
    parse(text);
    throw new Error('a scenario was refused without a reason');
  } catch (error) {
    if (error instanceof ScenarioError) return { problems: error.problems };
    throw error;
  }
}

function isScenario(data: unknown, parse: (data: unknown) => unknown): boolean {
  try {
    parse(data);
    return true;
  } catch (error) {
    if (error instanceof ScenarioError) return false;
    throw error;
  }
}

/** What the reader of notation says about files is worded for scenarios. */
function ofSurvey(fault: Fault): Fault {
  if (fault.code === 'empty') return { ...fault, expected: 'a survey with title, scenario, ask, vary' };
  return { ...fault, expected: fault.expected.replace(/\bscenario\b/u, 'survey') };
}
