import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { simulate } from '../measure/simulate.ts';
import { buildReportFiles } from '../report/buildReportFiles.ts';
import { renderSummaryJson } from '../report/renderSummaryJson.ts';
import { renderTerminal } from '../report/renderTerminal.ts';
import { statusLine } from '../report/statusLine.ts';
import { plugBands } from '../survey/plugBands.ts';
import { type CliIo, EXIT, type ExitCode } from './io.ts';
import { placed } from './placed.ts';
import { readScenarioFile } from './readScenarioFile.ts';
import { VERSION } from './version.ts';
import { reportFolder, writeFiles } from './writeFiles.ts';

/** What the command line asks of a simulation. */
export interface SimulateOptions {
  /** Folder for the report; `reports/NAME` when left out. */
  readonly out?: string;
  /** Print the summary as JSON; files are written only when `out` is given. */
  readonly json?: boolean;
  readonly units: 'si' | 'us';
  /** Draw the torque trace with plain ASCII characters. */
  readonly ascii?: boolean;
}

/** Runs a scenario file, writes the report folder and prints the summary. */
export function simulateCommand(file: string, options: SimulateOptions, io: CliIo): ExitCode {
  const scenarioFile = readScenarioFile(file, io);
  const result = placed(scenarioFile, () => simulate(scenarioFile.scenario));
  const units = options.units === 'us' ? 'us' : 'SI';
  const { origins, estimation, nameplate } = scenarioFile;
  const bands =
    nameplate === null ? null : placed(scenarioFile, () => plugBands(scenarioFile.scenario, nameplate));
  const background = { estimation, nameplate, bands };
  if (options.json === true) io.out(renderSummaryJson(result, { version: VERSION, ...background }));
  else {
    const ascii = options.ascii === true;
    io.out(renderTerminal(result, { units, colour: io.colour, ascii, ...background }));
  }
  if (options.json !== true || options.out !== undefined) {
    const folder = options.out ?? reportFolder(file);
    const files = buildReportFiles(result, {
      units,
      version: VERSION,
      plotlySource: plotlySource(),
      origins,
      ...background,
    });
    writeFiles(folder, files, io);
    const report = path.join(folder, 'report.html');
    if (options.json === true) io.err(`report: ${report}\n`);
    else io.out(`\nReport: ${report}\n`);
  }
  if (result.usable) return EXIT.done;
  io.err(`${statusLine(result)}\n`);
  return EXIT.runFailed;
}

function plotlySource(): string {
  return readFileSync(createRequire(import.meta.url).resolve('plotly.js-basic-dist-min'), 'utf8');
}
