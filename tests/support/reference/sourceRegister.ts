import type { SourceFile } from '../sourceRules.ts';

/** A comment of the code that names where something comes from. */
export interface SourceNote {
  /** Path below src/. */
  readonly file: string;
  /** What the comment stands at; empty: the file or a line inside a function. */
  readonly name: string;
  /** A number that is written right there; empty: a formula, a table, or words. */
  readonly value: string;
  /** The comment on one line. */
  readonly words: string;
}

/** How a comment says that something comes from outside, or from nowhere. */
const NAMES_A_SOURCE =
  /common practice|from memory|no source|\bSource: |\bNEMA\b|\bMG 1\b|\bIEC \d|\bIEEE \d|\bISO \d|handbook|catalogue/iu;

const COMMENT = /\/\*\*?([\s\S]*?)\*\/|((?:^[ \t]*\/\/.*\n?)+)/gmu;

/** All comments of these files that name a source or say that there is none, in the order of the files. */
export function sourceNotes(files: readonly SourceFile[]): SourceNote[] {
  return files.flatMap(({ path, text }) =>
    [...text.matchAll(COMMENT)].flatMap((match): SourceNote[] => {
      const words = (match[1] ?? match[2] ?? '')
        .replaceAll(/^[ \t]*(?:\*|\/\/)[ \t]?/gmu, '')
        .replaceAll(/\{@\w+ ([^}]*)\}/gu, '$1')
        .replaceAll(/\s+/gu, ' ')
        .trim();
      if (!NAMES_A_SOURCE.test(words)) return [];
      const next = text.slice(match.index + match[0].length).trimStart();
      return [{ file: path, ...declared(next), words: partOf(words) }];
    }),
  );
}

/** Name and number of what follows a comment. */
function declared(code: string): { readonly name: string; readonly value: string } {
  const line = code.slice(0, code.indexOf('\n'));
  const named =
    /^(?:export )?(?:const|function|interface|type|class) (\w+)/u.exec(line) ??
    /^(?:readonly )?'?([\w. ]+?)'?\??:/u.exec(line);
  const number = /[=:] (-?[\d_.]+(?:e[+-]?\d+)?)[;,]?$/u.exec(line);
  return { name: named?.[1] ?? '', value: number?.[1]?.replaceAll('_', '') ?? '' };
}

/** Without what is said of parameters, results and errors. */
function partOf(words: string): string {
  const [said = '', ...tagged] = words.split(/ @(?=[a-z]+\b)/u);
  const remarks = tagged.filter((part) => part.startsWith('remarks ')).map((part) => part.slice(8));
  const kept = [said, ...remarks].join(' ').trim();
  return NAMES_A_SOURCE.test(kept) ? kept : words;
}

/** The words that stand at a name of a file. */
export function wordsAt(notes: readonly SourceNote[], file: string, name: string): string {
  const found = notes.find((note) => note.file === file && note.name === name);
  if (found === undefined) throw new Error(`no comment at ${name} of ${file} names a source`);
  return found.words;
}
