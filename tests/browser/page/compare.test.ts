import { expect, it } from 'vitest';
import { formatQuantity } from '../../../src/report/formatQuantity.ts';
import { applyEdits } from '../../../src/scenario/edit/applyEdits.ts';
import { builtPages } from '../../support/builtPage.ts';
import { exampleText } from '../../support/examples.ts';
import {
  applyText,
  button,
  chooseTask,
  libraryRun,
  openReady,
  scenarioText,
  settled,
  shownNumbers,
} from '../../support/pageDriver.ts';

const pages = builtPages();

const EXAMPLE = exampleText('what-happens-after-the-stop-button.yaml');

/** What stands on the page at one picture of the display. */
interface Sample {
  readonly inertia: string;
  readonly field: string;
  /** Label and text of the figures, in their order. */
  readonly numbers: readonly string[];
}

/** Inputs of a hand that drags for a second. */
const INPUTS = 60;

it('while a hand drags the inertia, value and numbers are always of one run, and in the end of the last input', async () => {
  const { page } = await openReady(pages);
  await chooseTask(page, 'Change');
  await button(page, 'Pin this run').click();
  const samples = await page.evaluate(async (inputs) => {
    const adjuster = document.querySelector('[data-adjustable=loadInertia]');
    const slider = adjuster?.querySelector<HTMLInputElement>('input[type=range]');
    if (adjuster == null || slider == null) throw new Error('there is no slider for the inertia');
    const found: Sample[] = [];
    const look = () => {
      found.push({
        inertia: adjuster.querySelector('output')?.textContent ?? '',
        field: adjuster.querySelector<HTMLInputElement>('input[type=text]')?.value ?? '',
        numbers: [...document.querySelectorAll<HTMLElement>('data[data-key]')].map(
          (data) => `${data.closest('tr')?.querySelector('summary')?.textContent}: ${data.textContent}`,
        ),
      });
    };
    const nextPicture = () => new Promise((resolve) => requestAnimationFrame(resolve));
    const start = slider.valueAsNumber;
    for (let i = 0; i < inputs; i++) {
      await nextPicture();
      // Up, and back to another place: the last word is not the largest.
      slider.value = String(start + 4 * Math.min(i, inputs - i));
      slider.dispatchEvent(new Event('input', { bubbles: true }));
      look();
    }
    slider.dispatchEvent(new Event('change', { bubbles: true }));
    const busy = () => document.querySelector('main')?.getAttribute('aria-busy') !== 'false';
    for (let rest = 0; rest < 10; rest = busy() ? 0 : rest + 1) {
      await nextPicture();
      look();
    }
    return found;
  }, INPUTS);

  // More than one value was seen on the way: runs came while the hand moved.
  const distinct = new Set(samples.map(({ field }) => field));
  expect(distinct.size).toBeGreaterThan(3);
  const last = samples.at(-1);
  const shownLast = await page.locator('[data-adjustable=loadInertia] output').textContent();
  expect(shownLast).toBe(last?.inertia);
  const written = libraryRun(await scenarioText(page)).view.scenario.load.inertia;
  expect(shownLast).toBe(formatQuantity(written, 'kg·m²', { system: 'SI' }));

  // What each of those values gives when it is asked for alone, with nothing before it and nothing after it.
  const alone = new Map<string, string>();
  for (const field of distinct) {
    const value = Number.parseFloat(field);
    const { text } = applyEdits(EXAMPLE, [{ kind: 'adjust', key: 'loadInertia', value }]);
    await applyText(page, text);
    const rows = await shownNumbers(page);
    alone.set(field, rows.map((row) => `${row.label}: ${row.text}`).join('\n'));
    const stopTime = libraryRun(text).result.metrics.stopTimeFromParting.value ?? Number.NaN;
    const shown = rows.find(({ key }) => key === 'stopTimeFromParting')?.value;
    // A thousandth tells two neighbouring places of the slider apart.
    expect(Math.abs(Number(shown) / stopTime - 1)).toBeLessThan(1e-3);
  }
  const torn = samples.filter(
    ({ field, inertia, numbers }) =>
      inertia !== formatQuantity(Number.parseFloat(field), 'kg·m²', { system: 'SI' }) ||
      numbers.join('\n') !== alone.get(field),
  );
  expect(torn.map(({ inertia, field }) => `${inertia} beside ${field}`)).toEqual([]);
});

it('every number stands beside the pinned run and its change; unpinned, the comparison is gone', async () => {
  const { page } = await openReady(pages);
  await chooseTask(page, 'Change');
  const before = libraryRun(EXAMPLE);
  await button(page, 'Pin this run').click();
  const field = page.getByLabel('Load inertia, number with unit');
  await field.fill('0.32 kg m^2');
  await field.press('Enter');
  await settled(page);
  const after = libraryRun(EXAMPLE.replace('inertia: 0.16 kg m^2', 'inertia: 0.32 kg m^2'));
  const row = page.locator('.numbers tr').filter({ has: page.locator('data[data-key=stopTimeFromParting]') });
  const cells = await row.locator('td').allTextContents();
  const find = (run: typeof before) =>
    run.view.numbers.flatMap((group) => group.rows).find(({ key }) => key === 'stopTimeFromParting');
  expect(cells[0]).toBe(find(after)?.text);
  expect(cells[1]).toBe(find(before)?.text);
  expect(Number.parseFloat(cells[0] ?? '')).toBeGreaterThan(Number.parseFloat(cells[1] ?? ''));
  expect(cells[2]).toContain('+');
  await button(page, 'Unpin').click();
  await expect.poll(() => row.locator('td').count()).toBe(1);
  await expect.poll(() => page.locator('.strip .change').count()).toBe(0);
});

it('undo goes back to the run before, digit for digit', async () => {
  const { page } = await openReady(pages);
  await chooseTask(page, 'Change');
  const before = await page.locator('.numbers').textContent();
  await page.locator('[data-adjustable=loadInertia] input[type=range]').press('PageUp');
  await settled(page);
  expect(await page.locator('.numbers').textContent()).not.toBe(before);
  await button(page, 'Undo').click();
  await settled(page);
  expect(await page.locator('.numbers').textContent()).toBe(before);
  expect(await scenarioText(page)).toBe(EXAMPLE);
});
