import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { loadNotebook, notebookNames, saveNotebook } from './folder.ts';
import { answersPage, handoutPage, notebookPage } from './pages.ts';
import { runNotebook } from './runNotebook.ts';
import { withResults } from './withResults.ts';

const PROJECT = fileURLToPath(new URL('../../', import.meta.url));
const PAGES = path.join('build', 'notebooks');

const wanted = process.argv.slice(2);
const names = notebookNames();
const chosen = wanted.includes('all')
  ? names
  : names.filter((name) => wanted.some((word) => isNamed(name, word)));
const unknown = wanted.filter((word) => word !== 'all' && !names.some((name) => isNamed(name, word)));

process.chdir(PROJECT); // cells read `examples/…`
if (chosen.length === 0 || unknown.length > 0) {
  const lines = names.map((name) => `  ${name.slice(0, 2)}  ${titleOf(loadNotebook(name).text)}`);
  const head = unknown.length > 0 ? `No notebook "${unknown.join('", "')}". ` : '';
  console.log(`${head}Run one by its number, several, or all:  npm run notebook -- 01\n${lines.join('\n')}`);
  process.exitCode = unknown.length > 0 ? 1 : 0;
} else {
  for (const name of chosen) await runOne(name);
}

/** 1, 01 or the whole name. */
function isNamed(name: string, word: string): boolean {
  return name === word || (/^\d{1,2}$/u.test(word) && Number(word) === Number(name.slice(0, 2)));
}

function titleOf(text: string): string {
  return /^# (.*)$/mu.exec(text)?.[1] ?? '';
}

async function runOne(name: string): Promise<void> {
  try {
    const notebook = loadNotebook(name);
    const finished = withResults(notebook, await runNotebook(notebook));
    const pages = [
      { words: 'to show', ending: '', text: notebookPage(finished) },
      { words: 'with the answers open, for the teacher', ending: '-answers', text: answersPage(finished) },
      { words: 'handout for the class', ending: '-handout', text: handoutPage(finished) },
    ];
    // Only now: a notebook that lacks something is left as it was.
    saveNotebook(name, finished);
    mkdirSync(PAGES, { recursive: true });
    console.log(name);
    for (const { words, ending, text } of pages) {
      const file = path.join(PAGES, `${name}${ending}.html`);
      writeFileSync(file, text);
      console.log(`  ${words}: ${file}`);
    }
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    console.error(message.startsWith('notebooks/') ? message : `notebooks/${name}.md: ${message}`);
    process.exitCode = 1;
  }
}
