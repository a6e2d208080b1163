import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { builtPages } from '../../support/builtPage.ts';
import { exampleText } from '../../support/examples.ts';
import { button, chooseTask, drop, libraryRun, openReady, settled } from '../../support/pageDriver.ts';

const pages = builtPages();

const EXAMPLE = exampleText('what-happens-after-the-stop-button.yaml');
const OTHER = exampleText('may-this-belt-be-plugged.yaml');

const editor = (page: Page) => page.locator('#scenario-text');
const heading = (page: Page) => page.locator('h1').textContent();

describe('a text that is written and not applied', () => {
  const WRITTEN = EXAMPLE.replace('0.16 kg m^2', '0.3 kg m^2');

  it('is brought back by Undo after a file has taken its place', async () => {
    const { page } = await openReady(pages);
    await chooseTask(page, 'Files');
    await editor(page).fill(WRITTEN);
    await drop(page, 'belt.yaml', OTHER);
    await expect.poll(() => heading(page)).toBe(libraryRun(OTHER).view.scenario.title);
    await settled(page);
    await page.getByText('unapplied text can be brought back with Undo').waitFor();
    await button(page, 'Undo last change').click();
    await settled(page);
    expect(await editor(page).inputValue()).toBe(WRITTEN);
    expect(await page.getByText('can be brought back').count()).toBe(0);
  });

  it('is told when the scenario has changed since, and can make way for it', async () => {
    const { page } = await openReady(pages);
    await chooseTask(page, 'Files');
    await editor(page).fill(WRITTEN);
    expect(await page.getByText('has changed since').count()).toBe(0);
    await chooseTask(page, 'Change');
    const field = page.getByLabel('Change-over timer, number with unit');
    await field.fill('50 ms');
    await field.press('Enter');
    await settled(page);
    await chooseTask(page, 'Files');
    await page.getByText('has changed since').waitFor();
    expect(await editor(page).inputValue()).toBe(WRITTEN);
    // Writing on does not make it a text of today.
    await editor(page).fill(`${WRITTEN}# more\n`);
    expect(await page.getByText('has changed since').count()).toBe(1);
    await button(page, 'Take the present text').click();
    expect(await editor(page).inputValue()).toMatch(/changeoverTimer: 50 ms/u);
    expect(await page.getByText('has changed since').count()).toBe(0);
  });
});

describe('a number that is refused', () => {
  it.each([
    ['Load inertia, number with unit', '-1 kg m^2', /out of range/u, '0.2 kg m^2'],
    // The field does not know this limit, the rules of a scenario do.
    ['Auxiliary relays move in', '2 s', /relayTime/u, '20 ms'],
  ])('stays in its field with the reason beside it, to be corrected: %s', async (label, typed, why, good) => {
    const { page } = await openReady(pages);
    await chooseTask(page, 'Change');
    await page.locator('.control-choice summary').click();
    const field = page.getByLabel(label, { exact: true });
    await field.fill(typed);
    await field.press('Enter');
    await settled(page);
    const message = page.locator('.field-message');
    await message.waitFor();
    expect(await message.textContent()).toMatch(why);
    expect(await field.inputValue()).toBe(typed);
    expect(await field.getAttribute('aria-invalid')).toBe('true');
    await field.fill(good);
    await field.press('Enter');
    await settled(page);
    expect(await message.count()).toBe(0);
    // As four digits say it.
    expect(Number.parseFloat(await field.inputValue())).toBe(Number.parseFloat(good));
  });
});
