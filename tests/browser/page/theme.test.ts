import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { SURFACE } from '../../../src/report/palette.ts';
import { builtPages } from '../../support/builtPage.ts';
import { settled } from '../../support/pageDriver.ts';

const pages = builtPages();

/** Colour of the page's ground, as #RRGGBB. */
async function ground(page: Page): Promise<string> {
  const colour = await page.evaluate(() => getComputedStyle(document.body).backgroundColor);
  const parts = colour.match(/\d+/gu) ?? [];
  return `#${parts.map((part) => Number(part).toString(16).padStart(2, '0')).join('')}`.toUpperCase();
}

// The page follows a choice with its next drawing, which a busy machine may put off.
it('the theme follows the computer until one is chosen, is remembered, and paper is white', async () => {
  const { page } = await pages.open({ colorScheme: 'dark' });
  const choice = page.getByLabel('Colours');
  await choice.waitFor();
  await expect.poll(() => ground(page)).toBe(SURFACE.ground.dark);
  await page.emulateMedia({ colorScheme: 'light' });
  await expect.poll(() => ground(page)).toBe(SURFACE.ground.light);
  await choice.selectOption('dark');
  await expect.poll(() => ground(page)).toBe(SURFACE.ground.dark);
  // What is still on its way when a page is left counts as a request that failed.
  await settled(page);
  await page.reload();
  await choice.waitFor();
  expect(await choice.inputValue()).toBe('dark');
  await expect.poll(() => ground(page)).toBe(SURFACE.ground.dark);
  await page.emulateMedia({ media: 'print' });
  await expect.poll(() => ground(page)).toBe(SURFACE.ground.light);
  await page.emulateMedia({ media: 'screen', colorScheme: 'dark' });
  await choice.selectOption('light');
  await expect.poll(() => ground(page)).toBe(SURFACE.ground.light);
  await choice.selectOption('system');
  await expect.poll(() => ground(page)).toBe(SURFACE.ground.dark);
});
