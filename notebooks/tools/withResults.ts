import { renderSvg } from '../../src/report/renderSvg.ts';
import { CELL, type Notebook, STATED } from './notebook.ts';
import type { CellResult, NotebookResult } from './runNotebook.ts';

/** A notebook with what it computes today, as its files should be. */
export interface FinishedNotebook {
  /** The text of the `.md` file. */
  readonly text: string;
  /** Name in the folder of figures → drawing. */
  readonly figures: ReadonlyMap<string, string>;
}

/**
 * Puts results in the place of the ones that stand in the notebook; nothing else is changed. Code and text keep their
 * lines, results may take more or fewer.
 *
 * @throws Error where two figures of the notebook have the same name
 */
export function withResults(notebook: Notebook, result: NotebookResult): FinishedNotebook {
  const figures = new Map<string, string>();
  const fileOf = (id: string) => `${notebook.name}-${id}.svg`;
  for (const { figures: drawn } of result.cells) {
    for (const figure of drawn) {
      const file = fileOf(figure.id);
      if (figures.has(file)) throw new Error(`notebooks/${notebook.name}.md has two figures "${figure.id}"`);
      figures.set(file, `${renderSvg(figure, { theme: 'light' })}\n`);
    }
  }
  let cell = 0;
  let stated = 0;
  const shown = ({ printed, figures: drawn }: CellResult) =>
    (printed === '' ? '' : `\n\`\`\`text\n${printed}\`\`\`\n`) +
    drawn.map(({ id, title }) => `\n![${title.replace(/[[\]]/gu, '')}](figures/${fileOf(id)})\n`).join('');
  const text = notebook.text
    .replace(CELL, (_, code: string) => `\`\`\`ts\n${code}\`\`\`\n${shown(result.cells[cell++]!)}`)
    .replace(
      STATED,
      (_, __, expression: string) => `**${result.stated[stated++]!}**<!-- = ${expression} -->`,
    );
  return { text, figures };
}
