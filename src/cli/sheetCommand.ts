import path from 'node:path';
import { renderSheetCsv } from '../report/renderSheetCsv.ts';
import { renderSheetHtml } from '../report/renderSheetHtml.ts';
import { summarySentences } from '../report/sheetSummary.ts';
import { SCHEME_WORDS } from '../scenario/controlWords.ts';
import { commissioningSheet } from '../survey/commissioning/commissioningSheet.ts';
import { InputError } from './inputError.ts';
import { type CliIo, EXIT, type ExitCode } from './io.ts';
import { placed } from './placed.ts';
import { readScenarioFile } from './readScenarioFile.ts';
import { VERSION } from './version.ts';
import { reportFolder, writeFiles } from './writeFiles.ts';

/** Options of the command as the command line gives them. */
export interface SheetCommandOptions {
  /** Folder for the sheet. */
  readonly out?: string;
  readonly units: 'si' | 'us';
}

/** Names of the files in their folder. */
const SHEET = 'sheet.html';
const TABLE = 'sheet.csv';

/**
 * Simulates the standard set of tests of a scenario's starter and writes the sheet to fill in beside the machine.
 *
 * @throws InputError when the scenario has no control circuit, or the sheet cannot be written
 */
export function sheetCommand(file: string, options: SheetCommandOptions, io: CliIo): ExitCode {
  const scenarioFile = readScenarioFile(file, io);
  const { scenario } = scenarioFile;
  if (scenario.starter.control === undefined)
    throw new InputError(
      `${file}: the starter has no control circuit to test; expected starter.control with a scheme (${SCHEME_WORDS.join(', ')})`,
    );
  const sheet = placed(scenarioFile, () => commissioningSheet(scenario));
  const units = options.units === 'us' ? 'us' : 'SI';
  const folder = options.out ?? reportFolder(file);
  writeFiles(
    folder,
    [
      { name: SHEET, content: renderSheetHtml(sheet, { units, version: VERSION }) },
      { name: TABLE, content: renderSheetCsv(sheet, { units }) },
    ],
    io,
  );
  for (const text of summarySentences(sheet.rows)) io.out(`${text}\n`);
  io.out(`\nSheet: ${path.join(folder, SHEET)}\nTable: ${path.join(folder, TABLE)}\n`);
  return EXIT.done;
}
