import { isTelling } from './concealed.ts';

/** A line of a text that gives a hidden fault away, with its number from 1. */
export interface TellingLine {
  readonly line: number;
  readonly text: string;
}

/** Most lines that are named. */
const MOST_LINES = 5;

/**
 * Lines of a scenario, comments and title included, whose words speak of a fault: a student who opens the text would read them. The list
 * of faults itself is left out: a link does not carry it.
 */
export function tellingLines(text: string): readonly TellingLine[] {
  const lines = text.split('\n');
  const inList = listed(lines);
  return lines
    .map((line, i) => ({ line: i + 1, text: line.trim() }))
    .filter((line, i) => !inList[i] && isTelling(line.text))
    .slice(0, MOST_LINES);
}

/** Which lines belong to the list of faults: its key, and what follows deeper or as an item of the same depth. */
function listed(lines: readonly string[]): readonly boolean[] {
  let depth: number | null = null;
  return lines.map((line) => {
    const indent = line.search(/\S/u);
    if (/^\s*["']?faults["']?\s*:/u.test(line)) depth = indent;
    else if (depth !== null && indent >= 0 && (indent < depth || (indent === depth && line[indent] !== '-')))
      depth = null;
    return depth !== null;
  });
}
