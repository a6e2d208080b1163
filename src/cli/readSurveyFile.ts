import path from 'node:path';
import { readSurvey } from '../survey/spec/readSurvey.ts';
import type { Survey } from '../survey/spec/survey.ts';
import { fileKind } from './fileKind.ts';
import type { CliIo } from './io.ts';
import { otherKind } from './otherKind.ts';
import { readTextFile } from './readTextFile.ts';

/** Files above this are refused unread, bytes; lists of values may be long. */
const LARGEST_FILE = 1_000_000;

/**
 * Reads and checks a survey and the scenario it varies, whose path is relative to the survey's file.
 *
 * @throws InputError when the file cannot be read; ScenarioError when survey or scenario cannot be used
 */
export function readSurveyFile(file: string, io: CliIo): Survey {
  const limits = { largest: LARGEST_FILE, what: 'survey', expected: 'a survey file (YAML or JSON)' };
  return surveyOfText(readTextFile(file, limits, io), file, io);
}

/**
 * Checks the text of a survey file and the scenario it varies.
 *
 * @throws ScenarioError when survey or scenario cannot be used
 */
export function surveyOfText(source: string, file: string, io: CliIo): Survey {
  if (fileKind(source) === 'scenario') throw otherKind(file, 'scenario');
  const folder = path.dirname(file);
  return readSurvey(source, {
    fileName: file,
    scenarioText: (name) =>
      readTextFile(
        path.isAbsolute(name) ? name : path.join(folder, name),
        { largest: LARGEST_FILE, what: 'scenario', expected: 'a scenario file (YAML or JSON)' },
        io,
      ),
  });
}
