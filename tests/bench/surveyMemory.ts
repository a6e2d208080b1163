/** Makes the benchmark's survey with a journal and prints the largest resident memory of the process, MB. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { runSurvey } from '../../src/pool/runSurvey.ts';
import { readSurvey } from '../../src/survey/spec/readSurvey.ts';

const here = (name: string) => new URL(name, import.meta.url);
const runs = Number(process.argv[2]);
const text = readFileSync(here('surveyPlugStop.yaml'), 'utf8').replace(/^runs: .*$/mu, `runs: ${runs}`);
const survey = readSurvey(text, {
  fileName: 'surveyPlugStop.yaml',
  scenarioText: (name) => `${readFileSync(here(name), 'utf8')}\nsolver: { relativeTolerance: 1e-6 }\n`,
});
const folder = mkdtempSync(path.join(tmpdir(), 'survey-memory-'));
try {
  await runSurvey(survey, { workers: 1, journal: path.join(folder, 'runs.journal') });
} finally {
  rmSync(folder, { recursive: true });
}
// maxRSS is in kB.
process.stdout.write(String(process.resourceUsage().maxRSS / 1000));
