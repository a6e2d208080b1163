import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { JudgedRun } from '../../src/report/judgedRun.ts';
import { renderSuitabilityHtml } from '../../src/report/renderSuitabilityHtml.ts';
import { launchBrowser } from '../support/browser.ts';
import { accessibilityViolations, PHONE } from '../support/reportPages.ts';
import { fakeJudgement } from '../unit/report/fakeJudgement.ts';

/** CSS pixels per millimetre. */
const PX_PER_MM = 96 / 25.4;

/** Sheets, mm, less the margins of the style sheet's @page rule: 15 at the sides, 15 above and 18 below. */
const SHEETS = [
  { format: 'A4', width: 210 - 30, height: 297 - 33 },
  { format: 'Letter', width: 215.9 - 30, height: 279.4 - 33 },
] as const;

/** Sources and reasons as long as real ones are at most: a first page that holds these holds the others. */
function crowded(): JudgedRun {
  const judged = fakeJudgement();
  const source =
    'IEC 60034-1, thermal class 155 (F), by resistance: rise of 105 K at 40 °C and 1000 m, corrected (from memory)';
  const criteria = judged.suitability.criteria.map((criterion) =>
    criterion.outcome === 'notJudged'
      ? criterion
      : { ...criterion, source: criterion.source.startsWith('NEMA') ? source : criterion.source },
  );
  return { ...judged, suitability: { ...judged.suitability, criteria } };
}

let folder = '';
let browser: Browser;
let page: Page;
const complaints: string[] = [];
const requests: string[] = [];

beforeAll(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'countertorque-'));
  const file = path.join(folder, 'suitability.html');
  writeFileSync(file, renderSuitabilityHtml(crowded(), { units: 'SI', version: '1.2.3' }));
  browser = await launchBrowser();
  page = await browser.newPage();
  const address = pathToFileURL(file).href;
  page.on('console', (message) => complaints.push(message.text()));
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('request', (request) => {
    if (request.url() !== address) requests.push(request.url());
  });
  await page.goto(address);
});

afterAll(async () => {
  await browser.close();
  rmSync(folder, { recursive: true, force: true });
});

it('the note opens without complaint and asks for nothing else', () => {
  expect(complaints).toEqual([]);
  expect(requests).toEqual([]);
});

it('the note is accessible by WCAG 2 A and AA', async () => {
  expect(await accessibilityViolations(page)).toEqual([]);
});

it.each(SHEETS)(
  'on $format the first page holds its section, and nothing is wider than the sheet',
  async (sheet) => {
    const width = Math.floor(sheet.width * PX_PER_MM);
    await page.setViewportSize({ width, height: Math.floor(sheet.height * PX_PER_MM) });
    await page.emulateMedia({ media: 'print' });
    const first = await page.locator('.first').boundingBox();
    expect(first?.height).toBeGreaterThan(0);
    expect(first?.height).toBeLessThanOrEqual(sheet.height * PX_PER_MM);
    // A printer would shrink the whole note to a table that is too wide.
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    await page.emulateMedia({ media: null });
  },
);

it('on a telephone nothing scrolls sideways, and every value stands behind its name', async () => {
  await page.emulateMedia({ media: null });
  await page.setViewportSize(PHONE);
  const widths = await page.evaluate(() => [
    document.documentElement.scrollWidth,
    ...[...document.querySelectorAll('.labelled')].map((frame) => frame.scrollWidth),
  ]);
  for (const width of widths) expect(width).toBeLessThanOrEqual(PHONE.width);
  const name = await page
    .locator('.criteria td')
    .first()
    .evaluate((cell) => getComputedStyle(cell, '::before').content);
  expect(name).toContain('Value');
});
