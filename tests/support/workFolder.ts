import {
  copyFileSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { onTestFinished } from 'vitest';
import { PROJECT } from './commandLine.ts';

/** An empty folder for one test, removed when it ends. */
export function workFolder(): string {
  const folder = mkdtempSync(path.join(tmpdir(), 'countertorque-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** A folder for one test with the project's example scenarios and tables in it. */
export function folderWithExamples(): string {
  const folder = workFolder();
  mkdirSync(path.join(folder, 'examples'));
  const examples = path.join(PROJECT, 'examples');
  for (const name of readdirSync(examples).filter((file) => /\.(?:yaml|csv)$/u.test(file)))
    copyFileSync(path.join(examples, name), path.join(folder, 'examples', name));
  return folder;
}

/** Text of an example. */
export function exampleText(name: string): string {
  return readFileSync(path.join(PROJECT, 'examples', name), 'utf8');
}

/** Text of the example that plugs well with pieces replaced; every piece must be there. */
export function editedExample(...edits: readonly (readonly [string, string])[]): string {
  return edits.reduce((text, [before, after]) => {
    if (!text.includes(before)) throw new Error(`the example has no "${before}"`);
    return text.replace(before, () => after);
  }, exampleText('plugs-comfortably.yaml'));
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
