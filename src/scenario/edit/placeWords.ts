import type { Problem } from '../problem.ts';

/** A problem as one sentence that begins with its place: "line 12, column 5: load.inertia: has no unit; expected …". */
export function placeWords({ line, column, path, message, expected }: Problem): string {
  const place = line === null ? [] : [`line ${line}, column ${column}`];
  const where = path === '' ? [] : [path];
  return [...place, ...where, `${message}; expected ${expected}`].join(': ');
}

/**
 * Where a place lies in a text.
 *
 * @param line from 1; beyond the last line: its end
 * @param column from 1; beyond the end of the line: its end
 * @returns number of characters before it
 */
export function offsetOfPlace(text: string, line: number, column: number): number {
  const lines = text.split('\n');
  const before = lines.slice(0, line - 1).reduce((sum, one) => sum + one.length + 1, 0);
  const own = lines[line - 1];
  return own === undefined ? text.length : before + Math.min(column - 1, own.length);
}

/** A name to save a scenario under: that of its file, ending in .yaml, without what a folder would make of it. */
export function saveName(fileName: string): string {
  const plain = fileName
    .replace(/[\\/:*?"<>|\p{Cc}]/gu, '-')
    .replace(/\.(?:ya?ml|json)$/iu, '')
    .trim();
  return `${plain === '' ? 'scenario' : plain}.yaml`;
}
