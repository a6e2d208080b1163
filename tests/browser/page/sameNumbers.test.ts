import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import { builtPage } from '../../support/buildPage.ts';
import { builtPages } from '../../support/builtPage.ts';
import { exampleText } from '../../support/examples.ts';
import { chooseTask, hand, libraryRun, openReady, settled, shownNumbers } from '../../support/pageDriver.ts';

const pages = builtPages();

const EXAMPLES = [
  'what-happens-after-the-stop-button.yaml',
  'may-this-belt-be-plugged.yaml',
  'should-this-fan-be-plugged.yaml',
  'what-does-a-full-reversal-cost.yaml',
  'what-if-only-the-nameplate-is-known.yaml',
  'how-hard-does-plugging-twist-the-shaft.yaml',
];

it('every number of every built-in scenario is that of this process, to the last bit, and its text the same', async () => {
  const { page } = await openReady(pages);
  await chooseTask(page, 'Files');
  const select = hand(page).getByLabel('Built-in scenario');
  for (const name of EXAMPLES) {
    await select.selectOption(name);
    await settled(page);
    const { view } = libraryRun(exampleText(name));
    const ours = view.numbers
      .flatMap(({ rows }) => rows)
      .map(({ key, value, text }) => ({ key, value: value === null ? '' : String(value), text }));
    const theirs = (await shownNumbers(page)).map(({ key, value, text }) => ({ key, value, text }));
    expect({ name, numbers: theirs }).toEqual({ name, numbers: ours });
  }
});

it('the page carries this project’s integrator, not the library that it is checked against', async () => {
  const folder = path.join(await builtPage(), 'assets');
  const chunks = readdirSync(folder).map((name) => readFileSync(path.join(folder, name), 'utf8'));
  expect(chunks.filter((code) => code.includes('maxExtrapolationColumns'))).toEqual([]);
  // B1 of the method, as it stands in numeric/dormandPrince.ts.
  expect(
    chunks.filter((code) => code.includes('0.054293734116568765') || code.includes('.054293734116568765'))
      .length,
  ).toBeGreaterThan(0);
});
