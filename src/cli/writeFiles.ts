import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import type { ReportFile } from '../report/buildReportFiles.ts';
import { InputError, reasonOf } from './inputError.ts';
import type { CliIo } from './io.ts';

/** Folder that reports go to, below the working folder. */
const REPORTS = 'reports';

/**
 * Folder for what a scenario file gives: its name without the ending below `reports`, or `report` where nothing usable is
 * left of the name.
 */
export function reportFolder(file: string): string {
  const { name } = path.parse(file);
  return path.join(REPORTS, /^\.*$/.test(name) ? 'report' : name);
}

/**
 * Writes files into a folder, which is made if need be.
 *
 * @throws InputError with the file and the reason
 */
export function writeFiles(folder: string, files: readonly ReportFile[], io: CliIo): void {
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
