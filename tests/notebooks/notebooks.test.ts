import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { committed, loadNotebook, notebookNames } from '../../notebooks/tools/folder.ts';
import { answersPage, handoutPage, notebookPage, sectionOf } from '../../notebooks/tools/pages.ts';
import { runNotebook } from '../../notebooks/tools/runNotebook.ts';
import { withResults } from '../../notebooks/tools/withResults.ts';
import { PROJECT } from '../support/commandLine.ts';
import {
  cellFaults,
  foreignImports,
  looseNumbers,
  ownPhysics,
  silentReplacements,
} from '../support/notebookRules.ts';

const names = notebookNames();
const notebooks = names.map(loadNotebook);

it('there are at least eight, numbered without a gap', () => {
  expect(names.length).toBeGreaterThanOrEqual(8);
  expect(names.map((name) => Number(name.slice(0, 2)))).toEqual(names.map((_, k) => k + 1));
});

it('the page of notebooks lists each with its question', () => {
  const page = readFileSync(path.join(PROJECT, 'notebooks', 'README.md'), 'utf8');
  const listed = notebooks.filter(({ name, text }) => {
    const title = /^# (.*)$/mu.exec(text)?.[1];
    return page.includes(`| [${title}](${name}.md) |`);
  });
  expect(listed.map(({ name }) => name)).toEqual(names);
});

describe.each(notebooks)('$name', (notebook) => {
  const { name, text } = notebook;

  it('shows what it computes today: results, figures and every number of its text', async () => {
    const finished = withResults(notebook, await runNotebook(notebook));
    const files = committed(name);
    expect(finished.text).toBe(files.text);
    expect([...finished.figures.keys()].sort()).toEqual([...files.figures.keys()].sort());
    for (const [file, svg] of finished.figures) expect(svg, file).toBe(files.figures.get(file));
    expect(notebookPage(finished)).not.toContain('src="figures/');
    expect(answersPage(finished).match(/<details open>/gu)).toHaveLength(3);
  });

  it('asks a question, has goals, a prediction, a summary and three exercises with answers that are computed', () => {
    expect(text).toMatch(/^# .*\?\n/u);
    expect(sectionOf(text, 'What you will learn').match(/^- /gmu)?.length).toBeGreaterThanOrEqual(2);
    expect(sectionOf(text, 'Predict first')).toContain('?');
    expect(sectionOf(text, 'What to remember').length).toBeGreaterThan(100);
    expect(text.indexOf('## Predict first')).toBeLessThan(text.indexOf('```ts'));
    const exercises = sectionOf(text, 'Exercises').split(/^### /mu).slice(1);
    expect(exercises).toHaveLength(3);
    for (const exercise of exercises) {
      const [, answer] = /<details><summary>Worked answer<\/summary>\n\n([\s\S]*)<\/details>/u.exec(
        exercise,
      )!;
      expect(answer).toMatch(/^```ts\n/mu);
      expect(answer).toMatch(/\*\*<!-- = /u);
    }
  });

  it('has figures and states numbers, each of which is computed or was given', () => {
    expect(text).toMatch(/\(figures\/.*\.svg\)/u);
    expect(notebook.stated.length).toBeGreaterThanOrEqual(5);
    expect(looseNumbers(text)).toEqual([]);
  });

  it('uses the public API only, and defines no physics', () => {
    expect(foreignImports(notebook)).toEqual([]);
    expect(ownPhysics(notebook)).toEqual([]);
    expect(silentReplacements(notebook)).toEqual([]);
  });

  it('becomes a handout without results and answers', () => {
    const handout = handoutPage({ text, figures: new Map() });
    expect(handout).not.toContain('Worked answer');
    expect(handout).not.toMatch(/<strong>[^<]*<\/strong><!-- =/u);
    expect(handout.match(/<div class="write">/gu)).toHaveLength(4);
    expect(handout).not.toMatch(/^#/mu);
  });
});

it('the code of every notebook has no type errors', { timeout: 120_000 }, () => {
  expect(cellFaults(notebooks)).toEqual([]);
});
