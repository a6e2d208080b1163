import path from 'node:path';
import { simulate } from '../measure/simulate.ts';
import { renderLaboratoryCsv } from '../report/laboratory/renderLaboratoryCsv.ts';
import { renderLaboratoryHtml } from '../report/laboratory/renderLaboratoryHtml.ts';
import { renderLaboratoryJson } from '../report/laboratory/renderLaboratoryJson.ts';
import { renderLaboratoryTerminal } from '../report/laboratory/renderLaboratoryTerminal.ts';
import { laboratorySheet } from '../survey/laboratory/laboratorySheet.ts';
import { type CliIo, EXIT, type ExitCode } from './io.ts';
import { placed } from './placed.ts';
import { readScenarioFile } from './readScenarioFile.ts';
import { VERSION } from './version.ts';
import { reportFolder, writeFiles } from './writeFiles.ts';

/** Options of `lab` as the command line gives them. */
export interface LabCommandOptions {
  /** Folder for the sheet; `reports/NAME` when left out. */
  readonly out?: string;
  /** Print the procedure as JSON; files are written only when `out` is given. */
  readonly json?: boolean;
  readonly units: 'si' | 'us';
  /** Leave the predictions out. */
  readonly blank?: boolean;
}

/**
 * Makes the laboratory procedure of a scenario. A sheet without predictions has names of its own, so that both can lie in one folder.
 *
 * @throws ScenarioError when the scenario cannot be used, starts, plugs and reverses nothing, states faults, or has a load that pulls when
 * the motor is off
 */
export function labCommand(file: string, options: LabCommandOptions, io: CliIo): ExitCode {
  const scenarioFile = readScenarioFile(file, io);
  const { scenario, estimation } = scenarioFile;
  const sheet = placed(scenarioFile, () => laboratorySheet(scenario, estimation !== null));
  const units = options.units === 'us' ? 'us' : 'SI';
  const blank = options.blank === true;
  if (options.json === true) io.out(renderLaboratoryJson(sheet, { version: VERSION }));
  else io.out(renderLaboratoryTerminal(sheet, { units, blank, colour: io.colour }));
  if (options.json === true && options.out === undefined) return EXIT.done;
  const name = blank ? 'laboratory-blank' : 'laboratory';
  const folder = options.out ?? reportFolder(file);
  const run = simulate(scenario);
  writeFiles(
    folder,
    [
      {
        name: `${name}.html`,
        content: renderLaboratoryHtml(sheet, { units, blank, run, version: VERSION }),
      },
      { name: `${name}.csv`, content: renderLaboratoryCsv(sheet, { blank }) },
    ],
    io,
  );
  const where = `Sheet: ${path.join(folder, `${name}.html`)}\nTable: ${path.join(folder, `${name}.csv`)}\n`;
  if (options.json === true) io.err(where);
  else io.out(`\n${where}`);
  return EXIT.done;
}
