import { pathToFileURL } from 'node:url';
import { transform } from 'esbuild';
import { bundleFile } from '../../src/pool/bundled.js';
import type { FigureSpec } from '../../src/report/figureSpec.ts';
import type { Cell, Notebook } from './notebook.ts';

/** What a cell has shown. */
export interface CellResult {
  /** Lines printed, each with its line break; '' where nothing was. */
  readonly printed: string;
  readonly figures: readonly FigureSpec[];
}

/** What a notebook has computed. */
export interface NotebookResult {
  /** One for each cell. */
  readonly cells: readonly CellResult[];
  /** What each stated number is now. */
  readonly stated: readonly string[];
}

/** Modules that a cell may import, and the source of this package behind each. */
const MODULES: Readonly<Record<string, string>> = {
  countertorque: 'index.ts',
  'countertorque/pool': 'pool/index.ts',
};

/** What the cells' code is given; a module can be handed nothing, so that it takes this from a global name. */
interface Notepad {
  readonly console: { log(...words: readonly unknown[]): void };
  show(figure: FigureSpec): void;
  replaced(text: string, before: string, after: string): string;
  cell(place: number): void;
  statedBy(expressions: readonly (() => unknown)[]): void;
}
const PLACE = 'countertorque notebook';
/** Characters that one cell may print: some hundred pages. */
const MOST_PRINTED = 200_000;

/**
 * Runs the cells of a notebook in order, as one module, and then works out the stated numbers.
 *
 * @throws Error that names notebook, line and cause, where a cell or an expression cannot be run
 */
export async function runNotebook(notebook: Notebook): Promise<NotebookResult> {
  const printed = notebook.cells.map(() => '');
  const figures: FigureSpec[][] = notebook.cells.map(() => []);
  let current = 0;
  let expressions: readonly (() => unknown)[] = [];
  const notepad: Notepad = {
    console: {
      log: (...words) => {
        printed[current] += `${words.map(String).join(' ')}\n`;
        if (printed[current]!.length > MOST_PRINTED)
          throw new Error(`this cell has printed ${MOST_PRINTED} characters; does it end?`);
      },
    },
    show: (figure) => {
      figures[current]!.push(figure);
    },
    replaced: (text, before, after) => {
      if (!text.includes(before)) throw new Error(`"${before}" does not stand in the text any more`);
      return text.replace(before, () => after);
    },
    cell: (place) => {
      current = place;
    },
    statedBy: (given) => {
      expressions = given;
    },
  };
  const code = await moduleText(notebook);
  Object.assign(globalThis, { [PLACE]: notepad });
  try {
    await import(/* @vite-ignore */ `data:text/javascript;base64,${Buffer.from(code).toString('base64')}`);
  } catch (error) {
    throw new Error(`${place(notebook, notebook.cells[current]?.line)}: ${words(error)}`, { cause: error });
  } finally {
    Reflect.deleteProperty(globalThis, PLACE);
  }
  return {
    cells: printed.map((text, k) => ({ printed: text, figures: figures[k]! })),
    stated: expressions.map((expression, k) => {
      try {
        return String(expression());
      } catch (error) {
        throw new Error(`${place(notebook, notebook.stated[k]?.line)}: ${words(error)}`, { cause: error });
      }
    }),
  };
}

/** The cells as one text of TypeScript, every line of it where it stands in the notebook. */
export function joinedCells(
  { cells }: Pick<Notebook, 'cells'>,
  before: (cell: Cell, k: number) => string,
): string {
  let text = '';
  let line = 1;
  cells.forEach((cell, k) => {
    text += '\n'.repeat(cell.line - line) + before(cell, k) + cell.code;
    line = cell.line + cell.code.split('\n').length - 1;
  });
  return text;
}

async function moduleText(notebook: Notebook): Promise<string> {
  const head = `const { console, show, replaced, cell: __cell, statedBy: __stated } = globalThis[${JSON.stringify(PLACE)}];`;
  const cells = joinedCells(notebook, (_, k) => `__cell(${k}); `);
  const stated = `__stated([${notebook.stated.map(({ expression }) => `() => (${expression})`).join(',\n')}]);`;
  const { code } = await transform(`${head} ${cells}\n${stated}`, {
    loader: 'ts',
    target: 'node20',
    logLevel: 'silent',
    tsconfigRaw: { compilerOptions: { verbatimModuleSyntax: true } },
  }).catch((error: { errors?: { text: string; location: { line: number } | null }[] }) => {
    const [first] = error.errors ?? [];
    throw new Error(`${place(notebook, first?.location?.line)}: ${first?.text ?? words(error)}`);
  });
  const foreign = [...code.matchAll(/^import (?:.* from )?"([^"]+)";$/gmu)]
    .map(([, name]) => name!)
    .find((name) => MODULES[name] === undefined && !name.startsWith('node:'));
  if (foreign !== undefined)
    throw new Error(
      `${place(notebook, undefined)}: "${foreign}" cannot be imported; expected ${Object.keys(MODULES).join(', ')} or a module of Node`,
    );
  let resolved = code;
  for (const [name, source] of Object.entries(MODULES)) {
    const from = new RegExp(`^(import .* from )"${name}";$`, 'gmu');
    if (!from.test(resolved)) continue;
    const url = pathToFileURL(await bundleFile(source)).href;
    resolved = resolved.replace(from, (_, start: string) => `${start}${JSON.stringify(url)};`);
  }
  return resolved;
}

const place = ({ name }: Notebook, line: number | undefined) =>
  `notebooks/${name}.md${line === undefined ? '' : `:${line}`}`;

/** The cause in words. A figure that a run does not have is null: the likeliest reason, after a number was changed. */
function words(error: unknown): string {
  const message = error instanceof Error ? error.message : String(error);
  return /of null \(/u.test(message)
    ? `${message}; a figure that this run does not have is null: does it still start, stop and come to its end?`
    : message;
}
