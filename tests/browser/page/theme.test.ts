import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { SURFACE } from '../../../src/report/palette.ts';
import { builtPages } from '../../support/builtPage.ts';

const pages = builtPages();

/** Colour of the page's ground, as #RRGGBB. */
async function ground(page: Page): Promise<string> {
  const colour = await page.evaluate(() => getComputedStyle(document.body).backgroundColor);
  const parts = colour.match(/\d+/gu) ?? [];
  return `#${parts.map((part) => Number(part).toString(16).padStart(2, '0')).join('')}`.toUpperCase();
}

it('the theme follows the computer until one is chosen, is remembered, and paper is white', async () => {
  const { page } = await pages.open({ colorScheme: 'dark' });
  const choice = page.getByLabel('Colours');
  await choice.waitFor();
  expect(await ground(page)).toBe(SURFACE.ground.dark);
  await page.emulateMedia({ colorScheme: 'light' });
  expect(await ground(page)).toBe(SURFACE.ground.light);
  await choice.selectOption('dark');
  expect(await ground(page)).toBe(SURFACE.ground.dark);
  await page.reload();
  await choice.waitFor();
  expect(await choice.inputValue()).toBe('dark');
  expect(await ground(page)).toBe(SURFACE.ground.dark);
  await page.emulateMedia({ media: 'print' });
  expect(await ground(page)).toBe(SURFACE.ground.light);
  await page.emulateMedia({ media: 'screen', colorScheme: 'dark' });
  await choice.selectOption('light');
  expect(await ground(page)).toBe(SURFACE.ground.light);
  await choice.selectOption('system');
  expect(await ground(page)).toBe(SURFACE.ground.dark);
});
