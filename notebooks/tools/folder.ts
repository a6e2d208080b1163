import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Notebook, readNotebook } from './notebook.ts';
import type { FinishedNotebook } from './withResults.ts';

/** The folder of notebooks. */
export const FOLDER = fileURLToPath(new URL('../', import.meta.url));
const FIGURES = path.join(FOLDER, 'figures');

/** Names of all notebooks, in their order. */
export function notebookNames(): string[] {
  return readdirSync(FOLDER)
    .filter((file) => /^\d\d-.*\.md$/u.test(file))
    .map((file) => file.slice(0, -'.md'.length))
    .sort();
}

/** Reads a notebook from its file. */
export function loadNotebook(name: string): Notebook {
  return readNotebook(name, readFileSync(path.join(FOLDER, `${name}.md`), 'utf8').replaceAll('\r\n', '\n'));
}

/** What the files of a notebook hold now. */
export function committed(name: string): FinishedNotebook {
  const files = readdirSync(FIGURES).filter((file) => file.startsWith(`${name}-`));
  return {
    text: loadNotebook(name).text,
    figures: new Map(files.map((file) => [file, readFileSync(path.join(FIGURES, file), 'utf8')])),
  };
}

/** Writes a notebook and its figures; figures that it no longer draws are removed. */
export function saveNotebook(name: string, { text, figures }: FinishedNotebook): void {
  const file = path.join(FOLDER, `${name}.md`);
  // A copy with the line ends of another system keeps them.
  const isCrlf = readFileSync(file, 'utf8').includes('\r\n');
  writeFileSync(file, isCrlf ? text.replaceAll('\n', '\r\n') : text);
  mkdirSync(FIGURES, { recursive: true });
  for (const file of committed(name).figures.keys()) if (!figures.has(file)) rmSync(path.join(FIGURES, file));
  for (const [file, svg] of figures) writeFileSync(path.join(FIGURES, file), svg);
}
