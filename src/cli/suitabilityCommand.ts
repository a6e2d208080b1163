import path from 'node:path';
import { whyUnusable } from '../assess/runReasons.ts';
import type { VerdictOutcome } from '../assess/verdict.ts';
import { buildSuitabilityFiles } from '../report/buildSuitabilityFiles.ts';
import type { JudgedRun } from '../report/judgedRun.ts';
import { renderSuitabilityJson } from '../report/renderSuitabilityJson.ts';
import { renderSuitabilityTerminal } from '../report/renderSuitabilityTerminal.ts';
import { judgement } from '../survey/judgement.ts';
import { plugBands } from '../survey/plugBands.ts';
import { type CliIo, EXIT, type ExitCode } from './io.ts';
import { placed } from './placed.ts';
import { readScenarioFile } from './readScenarioFile.ts';
import { VERSION } from './version.ts';
import { reportFolder, writeFiles } from './writeFiles.ts';

/** Options of `suitability` as the command line gives them. */
export interface SuitabilityCommandOptions {
  /** Folder for the report; `reports/NAME` when left out. */
  readonly out?: string;
  /** Print the judgement as JSON; files are written only when `out` is given. */
  readonly json?: boolean;
  readonly units: 'si' | 'us';
  /** Answer the inverse questions too. */
  readonly extremes?: boolean;
}

/** Names of files in their folder. */
const REPORT = 'suitability.html';
const DATA = 'suitability.json';

const EXIT_OF: Readonly<Record<VerdictOutcome, ExitCode>> = {
  suitable: EXIT.done,
  notSuitable: EXIT.notSuitable,
  notJudged: EXIT.notJudged,
};

/** Judges whether plugging suits the load of a scenario, prints the judgement on one page and writes the report folder. */
export function suitabilityCommand(file: string, options: SuitabilityCommandOptions, io: CliIo): ExitCode {
  const scenarioFile = readScenarioFile(file, io);
  const { scenario, origins, estimation, nameplate } = scenarioFile;
  const found = placed(scenarioFile, () =>
    judgement(scenario, { cageIsFitted: estimation !== null, extremes: options.extremes === true }),
  );
  const bands = nameplate === null ? null : placed(scenarioFile, () => plugBands(scenario, nameplate));
  const judged: JudgedRun = { ...found, estimation, nameplate, bands };
  const units = options.units === 'us' ? 'us' : 'SI';
  const json = renderSuitabilityJson(judged, { version: VERSION });
  if (options.json === true) io.out(json);
  else io.out(renderSuitabilityTerminal(judged, { units, colour: io.colour }));
  if (options.json !== true || options.out !== undefined) {
    const folder = options.out ?? reportFolder(file);
    const files = buildSuitabilityFiles(judged, { units, version: VERSION, origins });
    writeFiles(folder, [...files, { name: DATA, content: json }], io);
    const report = path.join(folder, REPORT);
    if (options.json === true) io.err(`report: ${report}\n`);
    else io.out(`\nReport: ${report}\n`);
  }
  const { result, suitability } = found;
  const unusable = whyUnusable(result);
  if (unusable === null) return EXIT_OF[suitability.verdict.outcome];
  io.err(`No verdict, because the figures of the run must not be used: ${unusable}\n`);
  return EXIT.runFailed;
}
