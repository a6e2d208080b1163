import path from 'node:path';
import { whyUnusable } from '../assess/runReasons.ts';
import { type ComparedJudgement, renderCompareHtml } from '../report/renderCompareHtml.ts';
import { renderCompareJson } from '../report/renderCompareJson.ts';
import { renderCompareTerminal } from '../report/renderCompareTerminal.ts';
import { judgedAlone } from '../survey/judgedAlone.ts';
import { type CliIo, EXIT, type ExitCode } from './io.ts';
import { placed } from './placed.ts';
import { bothOf } from './readBoth.ts';
import { readScenarioFile, type ScenarioFile } from './readScenarioFile.ts';
import { VERSION } from './version.ts';
import { reportFolder, writeFiles } from './writeFiles.ts';

/** Options of `compare` as the command line gives them. */
export interface CompareCommandOptions {
  /** Folder for the comparison. */
  readonly out?: string;
  /** Print the comparison as JSON; a file is written only when `out` is given. */
  readonly json?: boolean;
  readonly units: 'si' | 'us';
}

/** Name of the file in its folder. */
const REPORT = 'compare.html';

/**
 * Judges two scenarios and sets them side by side.
 *
 * @throws ScenarioError with all that is wrong in either file
 */
export function compareCommand(
  fileA: string,
  fileB: string,
  options: CompareCommandOptions,
  io: CliIo,
): ExitCode {
  const files = bothOf(
    () => readScenarioFile(fileA, io),
    () => readScenarioFile(fileB, io),
  );
  const [a, b] = [compared(files[0]), compared(files[1])];
  const units = options.units === 'us' ? 'us' : 'SI';
  if (options.json === true) io.out(renderCompareJson(a, b, { version: VERSION }));
  else io.out(renderCompareTerminal(a, b, { units, colour: io.colour }));
  if (options.json !== true || options.out !== undefined) {
    const folder = options.out ?? `${reportFolder(fileA)}-and-${path.basename(reportFolder(fileB))}`;
    const content = renderCompareHtml(a, b, { units, version: VERSION });
    writeFiles(folder, [{ name: REPORT, content }], io);
    const report = path.join(folder, REPORT);
    if (options.json === true) io.err(`report: ${report}\n`);
    else io.out(`\nReport: ${report}\n`);
  }
  const unusable = [a, b].flatMap(({ name, judged }) => {
    const why = whyUnusable(judged.result);
    return why === null ? [] : [`${name}: the figures of the run must not be used: ${why}\n`];
  });
  for (const line of unusable) io.err(line);
  return unusable.length === 0 ? EXIT.done : EXIT.runFailed;
}

function compared(file: ScenarioFile): ComparedJudgement {
  const { scenario, estimation, nameplate, origins, fileName } = file;
  const found = placed(file, () => judgedAlone(scenario, estimation !== null));
  return {
    name: fileName,
    judged: { ...found, alternatives: [], extremes: null, estimation, nameplate },
    origins,
  };
}
