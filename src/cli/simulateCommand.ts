import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { simulate } from '../measure/simulate.ts';
import { buildReportFiles, type ReportFile } from '../report/buildReportFiles.ts';
import { renderSummaryJson } from '../report/renderSummaryJson.ts';
import { renderTerminal, statusLine } from '../report/renderTerminal.ts';
import { InputError, reasonOf } from './inputError.ts';
import { type CliIo, EXIT, type ExitCode } from './io.ts';
import { placed } from './placed.ts';
import { readScenarioFile } from './readScenarioFile.ts';
import { VERSION } from './version.ts';

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

/** Folder that reports go to, below the working folder. */
const REPORTS = 'reports';

/** Runs a scenario file, writes the report folder and prints the summary. */
export function simulateCommand(file: string, options: SimulateOptions, io: CliIo): ExitCode {
  const scenarioFile = readScenarioFile(file, io);
  const result = placed(scenarioFile, () => simulate(scenarioFile.scenario));
  const units = options.units === 'us' ? 'us' : 'SI';
  if (options.json === true) io.out(renderSummaryJson(result, { version: VERSION }));
  else io.out(renderTerminal(result, { units, colour: io.colour, ascii: options.ascii === true }));
  if (options.json !== true || options.out !== undefined) {
    const folder = options.out ?? path.join(REPORTS, reportName(file));
    const { origins } = scenarioFile;
    const files = buildReportFiles(result, {
      units,
      version: VERSION,
      plotlySource: plotlySource(),
      origins,
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

/** Folder name for a file's report: its name without the ending, or `report` where nothing usable is left. */
function reportName(file: string): string {
  const { name } = path.parse(file);
  return /^\.*$/.test(name) ? 'report' : name;
}

function writeFiles(folder: string, files: readonly ReportFile[], io: CliIo): void {
  for (const { name, content } of files) {
    const full = path.resolve(io.cwd, folder, ...name.split('/'));
    try {
      mkdirSync(path.dirname(full), { recursive: true });
      writeFileSync(full, content);
    } catch (error) {
      throw new InputError(
        `${full}: ${reasonOf(error)}; expected a folder that can be written to (--out DIR)`,
      );
    }
  }
}

function plotlySource(): string {
  return readFileSync(createRequire(import.meta.url).resolve('plotly.js-basic-dist-min'), 'utf8');
}
