import { cpSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { onTestFinished } from 'vitest';
import { PROJECT } from './commandLine.ts';
import { exampleText, USERS } from './examples.ts';

/** An empty folder for one test, removed when it ends. */
export function workFolder(): string {
  const folder = mkdtempSync(path.join(tmpdir(), 'countertorque-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** A folder for one test with the project's examples in it. */
export function folderWithExamples(): string {
  const folder = workFolder();
  for (const user of USERS)
    cpSync(path.join(PROJECT, 'examples', user), path.join(folder, 'examples', user), { recursive: true });
  return folder;
}

/** Text of the example that plugs well with pieces replaced; every piece must be there. */
export function editedExample(...edits: readonly (readonly [string, string])[]): string {
  return edits.reduce((text, [before, after]) => {
    if (!text.includes(before)) throw new Error(`the example has no "${before}"`);
    return text.replace(before, () => after);
  }, exampleText('may-this-belt-be-plugged.yaml'));
}

/** Writes a file into a folder and returns its name. */
export function writeInto(folder: string, name: string, text: string): string {
  writeFileSync(path.join(folder, name), text);
  return name;
}

/** All files below a folder, with forward slashes, sorted. */
export function filesBelow(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => path.relative(folder, path.join(entry.parentPath, entry.name)).split(path.sep).join('/'))
    .sort();
}
