/** A piece of TypeScript in a notebook. */
export interface Cell {
  readonly code: string;
  /** Line of its first line of code in the notebook, from 1. */
  readonly line: number;
}

/** A number of the text that a cell has computed: `**2.98**<!-- = ratio.toFixed(2) -->`. */
export interface Stated {
  /** What stands there: "2.98". */
  readonly text: string;
  /** TypeScript that gives it, over the names of the cells. */
  readonly expression: string;
  /** From 1. */
  readonly line: number;
}

/** What a notebook says, and what it computes. */
export interface Notebook {
  /** The file's name without `.md`. */
  readonly name: string;
  readonly text: string;
  readonly cells: readonly Cell[];
  readonly stated: readonly Stated[];
}

/** A fence with TypeScript, and with it the result that stands below: lines printed, then figures. */
export const CELL =
  /^```ts\n(?<code>[\s\S]*?)^```\n(?:\n```text\n[\s\S]*?^```\n)?(?:\n!\[[^\]\n]*\]\(figures\/[^)\n]*\)\n)*/gmu;

/** A stated number: bold text, and behind it the expression it comes from. */
export const STATED = /\*\*(?<text>[^*\n]*)\*\*<!-- = (?<expression>(?:(?!-->)[\s\S])+?) -->/gu;

/** Any comment that is meant to be one of these. */
const MEANT = /<!--\s*=/gu;

/**
 * Takes a notebook apart.
 *
 * @throws Error with the line where a comment with an expression does not follow bold text directly: it would never be filled
 */
export function readNotebook(name: string, text: string): Notebook {
  const lineAt = (index: number) => text.slice(0, index).split('\n').length;
  const filled = new Set([...text.matchAll(STATED)].map((match) => match.index + match[0].indexOf('<!--')));
  const idle = [...text.matchAll(MEANT)].find(({ index }) => !filled.has(index));
  if (idle !== undefined)
    throw new Error(
      `notebooks/${name}.md:${lineAt(idle.index)}: this is filled by nothing; expected \`**…**<!-- = expression -->\` without a space before it`,
    );
  return {
    name,
    text,
    cells: [...text.matchAll(CELL)].map(({ groups, index }) => ({
      code: groups!.code!,
      line: lineAt(index) + 1,
    })),
    stated: [...text.matchAll(STATED)].map(({ groups, index }) => ({
      text: groups!.text!,
      expression: groups!.expression!,
      line: lineAt(index),
    })),
  };
}
