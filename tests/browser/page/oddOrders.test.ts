import { expect, it } from 'vitest';
import { linkOf } from '../../../src/page/link.ts';
import { hide } from '../../../src/report/lesson/hiddenFault.ts';
import { newLesson } from '../../../src/report/lesson/lesson.ts';
import { builtPages } from '../../support/builtPage.ts';
import { exampleText } from '../../support/examples.ts';
import { button, chooseTask, hand, openReady, scenarioText, settled } from '../../support/pageDriver.ts';

/** What people do in another order than one thinks of; each of these was once found to go wrong. */
const pages = builtPages();
const BELT = exampleText('may-this-belt-be-plugged.yaml');

async function link(text: string, hidden: string | null = null): Promise<string> {
  const lesson = hidden === null ? null : newLesson('hiddenFault', [], hidden);
  const made = await linkOf({ text, lesson, units: 'SI', largePrint: false });
  if (typeof made !== 'string') throw new Error(made.message);
  return `#${made}`;
}

it('large print makes text larger, and the pictures stay on the screen', async () => {
  const { page } = await openReady(pages);
  const size = () =>
    page.locator('h1').evaluate((title) => Number.parseFloat(getComputedStyle(title).fontSize));
  const before = await size();
  await page.getByLabel('large print').check();
  expect((await size()) / before).toBeGreaterThan(1.3);
  const box = await page.locator('.time-picture .figure-area').boundingBox();
  expect(box!.y).toBeLessThan(720 / 2);
});

it('scrolled down to the table, nothing lies over its numbers', async () => {
  const { page } = await openReady(pages);
  const first = page.locator('.numbers td.number').first();
  await first.scrollIntoViewIfNeeded();
  await page.mouse.wheel(0, 300);
  await page.waitForTimeout(200);
  const covered = await page.evaluate(() =>
    [...document.querySelectorAll('.numbers td.number')]
      .filter((cell) => {
        const { x, y, width, height } = cell.getBoundingClientRect();
        if (y < 0 || y + height > innerHeight) return false;
        const top = document.elementFromPoint(x + width / 2, y + height / 2);
        return top === null || !cell.contains(top);
      })
      .map((cell) => cell.textContent),
  );
  expect(covered).toEqual([]);
});

it('another link in the same window opens the other scenario', async () => {
  const { page, server } = await openReady(pages);
  await page.goto(`${server.address}${await link(BELT)}`);
  await expect
    .poll(() => page.locator('h1').textContent(), { timeout: 20_000 })
    .toContain('Tea-withering belt');
});

it('a link to a text that is no scenario says what is wrong, and shows the text to be mended', async () => {
  const { page } = await openReady(pages, { link: await link(BELT.replace('400 V', '400 parsecs')) });
  await expect.poll(() => page.getByRole('alert').first().textContent()).toContain('parsecs');
  expect(await page.locator('#scenario-text').inputValue()).toContain('400 parsecs');
  expect(await page.getByRole('alert').first().textContent()).not.toContain('still those of the last one');
});

it('a worker that is lost is not waited for for ever: the run can be stopped, and the next one works', async () => {
  const { page } = await openReady(pages);
  const [worker] = page.workers();
  await worker!.evaluate(() => {
    const { close } = globalThis as unknown as { close: () => void };
    close();
  });
  await chooseTask(page, 'Change');
  const slider = page.locator('[data-adjustable=loadInertia] input[type=range]');
  await slider.press('ArrowRight');
  await button(page, 'Stop this run').click();
  await settled(page);
  const output = page.locator('[data-adjustable=loadInertia] output');
  const before = await output.textContent();
  await slider.press('PageUp');
  await settled(page);
  expect(await output.textContent()).not.toBe(before);
});

it('undo goes back to before a whole turn of a slider, to the last character', async () => {
  const { page } = await openReady(pages, { link: await link(BELT) });
  const before = await scenarioText(page);
  await chooseTask(page, 'Change');
  const slider = page.locator('[data-adjustable=dropOutSpeed] input[type=range]');
  for (const key of ['PageUp', 'PageUp', 'End', 'PageDown']) await slider.press(key);
  await settled(page);
  await button(page, 'Undo').click();
  await settled(page);
  expect(await scenarioText(page)).toBe(before);
});

it('a slider turned to its end and back moves nothing else of the scenario', async () => {
  const { page } = await openReady(pages, { link: await link(BELT) });
  await chooseTask(page, 'Change');
  const adjuster = page.locator('[data-adjustable=dropOutSpeed]');
  await adjuster.locator('input[type=range]').press('End');
  await settled(page);
  await adjuster.getByRole('textbox').fill('60 r/min');
  await adjuster.getByRole('textbox').press('Enter');
  await settled(page);
  expect(await scenarioText(page)).toContain('pickUpSpeed: 120 rpm');
});

it('a pinned run follows the units of the page', async () => {
  const { page } = await openReady(pages);
  await chooseTask(page, 'Change');
  await button(page, 'Pin this run').click();
  await page.getByLabel('Units').selectOption('us');
  await settled(page);
  await expect.poll(() => page.locator('.readouts').textContent()).toMatch(/lbf·ft\s*pinned [^N]*lbf·ft/u);
  expect(await page.locator('.readouts').textContent()).not.toContain('N·m');
});

it('a change that does not go with a hidden fault is taken back, and nothing tells the fault', async () => {
  const saw = exampleText('what-happens-after-the-stop-button.yaml').replaceAll(/#.*$/gmu, '');
  const hidden = hide([{ kind: 'overloadNeverTrips' }]);
  const { page } = await openReady(pages, { link: await link(saw, hidden) });
  await chooseTask(page, 'Change');
  await hand(page).getByText('What it is built with').click();
  await hand(page).getByLabel('Overload relay').selectOption({ label: 'none' });
  await expect.poll(() => page.getByRole('alert').first().textContent()).toContain('taken back');
  expect(await page.locator('body').textContent()).not.toMatch(/never trips|starter\.faults/iu);
});

it('a text that is refused leaves the judgement of the run that is shown', async () => {
  const { page } = await openReady(pages, { link: await link(BELT) });
  await chooseTask(page, 'Files');
  await page.locator('#scenario-text').fill('title: [unclosed');
  await button(page, 'Apply').click();
  await settled(page);
  await chooseTask(page, 'Judge');
  await expect.poll(() => hand(page).textContent(), { timeout: 20_000 }).toContain('suitable');
});

it('undo does not bring back the fault that a class is to find', async () => {
  const { page } = await openReady(pages);
  await chooseTask(page, 'Change');
  await page.getByRole('combobox', { name: 'One more' }).selectOption('weldedPole');
  await button(page, 'Add').click();
  await settled(page);
  await chooseTask(page, 'Class');
  await page.getByLabel('Find a hidden fault').check();
  await button(page, 'Begin here').click();
  await page.getByRole('heading', { name: 'Your task' }).waitFor();
  await settled(page);
  await chooseTask(page, 'Change');
  for (let i = 0; i < 3; i++) await button(page, 'Undo').click();
  await settled(page);
  expect(await scenarioText(page)).not.toContain('welded');
});

it('a run that is stopped gives way to the scenario before it, and undo brings its text', async () => {
  const { page } = await openReady(pages);
  const before = await scenarioText(page);
  const long = BELT.replace('actions:', 'solver: { relativeTolerance: 1e-12, endTime: 3600 s }\nactions:');
  await page.locator('#scenario-text').fill(long);
  await button(page, 'Apply').click();
  await button(page, 'Stop this run').click();
  await settled(page);
  expect(await scenarioText(page)).toBe(before);
  await expect.poll(() => page.getByRole('alert').first().textContent()).toContain('stopped');
});
