import type { Page } from 'playwright-core';
import { beforeAll, expect, it } from 'vitest';
import { plotsDrawn, reportPages } from '../support/reportPages.ts';
import { shortRun } from '../support/shortRun.ts';

const reports = reportPages(shortRun());

/** CSS pixels per millimetre. */
const PX_PER_MM = 96 / 25.4;

/** Sheets, mm, less the margins of the style sheet's @page rule: 15 at the sides, 15 above and 18 below. */
const SHEETS = [
  { format: 'A4', width: 210 - 30, height: 297 - 33 },
  { format: 'Letter', width: 215.9 - 30, height: 279.4 - 33 },
] as const;

let page: Page;

beforeAll(async () => {
  ({ page } = await reports.open());
  await plotsDrawn(page);
});

it.each(SHEETS)('on $format it prints as a note of some pages', async ({ format }) => {
  await page.emulateMedia({ media: null });
  const pdf = await page.pdf({ format });
  const pages = pdf.toString('latin1').match(/\/Type\s*\/Page\b/gu)?.length ?? 0;
  // One that stands alone, two of inputs and method, two or three of figures, three of metrics with their definitions,
  // one or two of events, checks and sources; a page is shorter on Letter.
  expect(pages).toBeGreaterThanOrEqual(6);
  expect(pages).toBeLessThanOrEqual(11);
});

it.each(SHEETS)('on $format no figure can be cut and the first page holds its section', async (sheet) => {
  const height = sheet.height * PX_PER_MM;
  await page.setViewportSize({ width: Math.floor(sheet.width * PX_PER_MM), height: Math.floor(height) });
  await page.emulateMedia({ media: 'print' });
  const figures = await page.evaluate(() =>
    [...document.querySelectorAll('figure')].map((figure) => ({
      height: figure.getBoundingClientRect().height,
      kept: getComputedStyle(figure).breakInside,
    })),
  );
  expect(figures.length).toBeGreaterThanOrEqual(5);
  for (const figure of figures) {
    expect(figure.kept).toBe('avoid');
    expect(figure.height).toBeGreaterThan(0);
    expect(figure.height).toBeLessThan(height);
  }
  const first = await page.locator('.first').boundingBox();
  expect(first?.height).toBeLessThanOrEqual(height);
});

it('what only a screen can use is not printed', async () => {
  await page.emulateMedia({ media: 'print' });
  for (const selector of ['#interactive', '#interactive-link', 'body > footer'])
    expect(await page.locator(selector).isVisible(), selector).toBe(false);
  for (const plot of await page.locator('.plot').all()) expect(await plot.isVisible()).toBe(false);
});
