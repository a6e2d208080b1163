import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { faultWords } from '../../../src/report/faultWords.ts';
import { isTelling } from '../../../src/report/lesson/concealed.ts';
import { FAULT_CHOICES } from '../../../src/report/lesson/faultChoices.ts';
import { applyEdits } from '../../../src/scenario/edit/applyEdits.ts';
import { builtPages, keptOffline, usable } from '../../support/builtPage.ts';
import { exampleText } from '../../support/examples.ts';
import { forms } from '../../support/longForms.ts';
import {
  applyText,
  button,
  chooseTask,
  hand,
  openReady,
  push,
  scenarioText,
  seekEnd,
  settled,
  shownNumbers,
} from '../../support/pageDriver.ts';

const pages = builtPages();

const OTHER = exampleText('may-this-belt-be-plugged.yaml');
const EXAMPLE = exampleText('what-happens-after-the-stop-button.yaml');

/** Makes a link and returns what follows the page's address. */
async function madeLink(page: Page): Promise<string> {
  await button(page, 'Make a link').click();
  const field = page.getByLabel('Link, whole scenario and task included');
  await field.waitFor();
  const link = await field.inputValue();
  return link.slice(link.indexOf('#'));
}

it('a link carries scenario, units, large print and lesson, and nothing of the student', async () => {
  const { page } = await openReady(pages);
  await applyText(page, OTHER);
  await page.getByLabel('Units').selectOption('us');
  await settled(page);
  await page.getByRole('banner').getByLabel('large print').check();
  await chooseTask(page, 'Class');
  await page.getByLabel('Rotor heat', { exact: true }).uncheck();
  const link = await madeLink(page);
  expect(link).toMatch(/^#v1\.[\w-]+$/u);

  const { page: taken } = await openReady(pages, { link });
  expect(await taken.getByLabel('Units').inputValue()).toBe('us');
  expect(await taken.getByRole('banner').getByLabel('large print').isChecked()).toBe(true);
  await taken.getByRole('heading', { name: 'Your task' }).waitFor();
  const asked = await taken.locator('.questions').textContent();
  expect(asked).toContain('highest current');
  expect(asked).not.toContain('heat goes into the rotor');
  expect(await taken.getByLabel('Your name').inputValue()).toBe('');
  await button(taken, 'Reveal all answers').click();
  expect(await scenarioText(taken)).toBe(OTHER);
});

it('a page opened by the link of a covered lesson tells that it can be used, and is kept for use without a network', async () => {
  const { page } = await openReady(pages);
  await chooseTask(page, 'Class');
  const link = await madeLink(page);
  const { page: taken } = await openReady(pages, { link, serviceWorkers: 'allow' });
  await usable(taken);
  await keptOffline(taken);
});

const DAMAGES: readonly ((link: string) => string)[] = [
  (link) => link.slice(0, link.length / 2),
  (link) => `${link.slice(0, 40)}${link[40] === 'A' ? 'B' : 'A'}${link.slice(41)}`,
  (link) => link.replace('#v1.', '#v7.'),
  () => '#<script>alert(1)</script>',
];

it('a link that is cut off, changed, of another version or none is said to be none, and the page works with its own example', async () => {
  const { page } = await openReady(pages);
  await chooseTask(page, 'Class');
  const link = await madeLink(page);
  for (const damage of DAMAGES) {
    const { page: taken } = await openReady(pages, { link: damage(link) });
    await expect.poll(() => taken.getByRole('alert').first().textContent()).toMatch(/link/u);
    expect((await shownNumbers(taken)).length).toBeGreaterThan(20);
    await button(taken, 'Start over').click();
    await settled(taken);
    await push(taken, 'Reset');
    await seekEnd(taken);
    await push(taken, 'Forward');
    await seekEnd(taken);
    expect(await taken.getByRole('region', { name: 'Motor and load' }).textContent()).toContain('forward');
    await taken.close();
  }
});

/** s; a machine that stalls is not followed for longer. */
const END = 4;

const HIDDEN = [
  { kind: 'weldedPole', contactor: 'forward', pole: 'B' },
  { kind: 'deadPole', contactor: 'reverse', pole: 'C' },
  { kind: 'zeroSpeedSwitch', mode: 'stuckClosed' },
] as const;

it.each(forms(HIDDEN, HIDDEN.slice(-1)))(
  'a hidden $kind is told by nothing on the page before it is revealed, and by words after',
  async (fault) => {
    const { page } = await openReady(pages);
    // A comment that speaks of faults stays in a link: this one has none.
    const quiet = EXAMPLE.replaceAll(/^\s*#.*\n/gmu, '').replaceAll(/ +#.*$/gmu, '');
    const { text } = applyEdits(quiet, [
      { kind: 'endTime', value: END },
      { kind: 'faults', faults: [fault] },
    ]);
    await applyText(page, text);
    await chooseTask(page, 'Class');
    await page.getByLabel('Find a hidden fault').check();
    expect(await hand(page).textContent()).toContain(faultWords(fault));
    const link = await madeLink(page);

    const { page: taken } = await openReady(pages, { link });
    await taken.getByRole('heading', { name: 'Your task' }).waitFor();
    /** Everything in the document, attributes and values of fields included, but the list of answers to choose from and the cautions. */
    const everything = () =>
      taken.evaluate(() => {
        const copy = document.body.cloneNode(true) as HTMLElement;
        for (const choice of copy.querySelectorAll('#fault-kind, .cautions')) choice.remove();
        const fields = [...document.querySelectorAll('textarea')].map(({ value }) => value);
        const names = [...copy.querySelectorAll('*')].flatMap((element) =>
          ['aria-label', 'aria-valuetext', 'title', 'value'].map((name) => element.getAttribute(name) ?? ''),
        );
        return [
          ...copy.querySelectorAll(
            'p, li, dt, dd, th, td, h1, h2, h3, label, option, data, figcaption, span',
          ),
        ]
          .map((element) => element.textContent)
          .concat(names, fields);
      });
    const telling = async () => {
      const words = new Set((await everything()).filter((one) => one.includes(faultWords(fault))));
      return [...words];
    };
    expect(await telling()).toEqual([]);
    for (const task of ['Push buttons', 'Files'] as const) {
      await chooseTask(taken, task);
      expect(await telling(), task).toEqual([]);
    }
    // In what the run shows and in its events, not even a word that speaks of faults.
    await chooseTask(taken, 'Push buttons');
    await seekEnd(taken);
    const shown = await taken
      .locator('.finding, .alarms p.alarm, .events li, .strip, .pole-words')
      .allTextContents();
    expect(shown.filter((words) => isTelling(words) && !words.startsWith('Something may be wrong'))).toEqual(
      [],
    );
    expect(await scenarioText(taken)).not.toMatch(/faults|welded|dead pole|stuck/u);

    await chooseTask(taken, 'Class');
    await button(taken, 'Take a reading at the cursor').click();
    expect(await taken.getByRole('table', { name: 'Readings' }).locator('tbody tr').count()).toBeGreaterThan(
      5,
    );
    await taken.getByLabel('What is wrong').selectOption({ label: FAULT_CHOICES[fault.kind] });
    await button(taken, 'Reveal what is wrong').click();
    await settled(taken);
    await expect.poll(() => hand(taken).textContent()).toContain(`Right: ${faultWords(fault)}.`);
  },
);
