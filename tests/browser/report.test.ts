import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  accessibilityViolations,
  DESKTOP,
  type OpenReport,
  PHONE,
  plotsDrawn,
  reportPages,
} from '../support/reportPages.ts';
import { shortRun } from '../support/shortRun.ts';

const reports = reportPages(shortRun());

const SCREENS = [
  { name: 'a desktop screen', theme: 'dark' as const, options: { viewport: DESKTOP } },
  {
    name: 'a telephone',
    theme: 'light' as const,
    options: { viewport: PHONE, deviceScaleFactor: 2, isMobile: true, hasTouch: true },
  },
];

const THEMES = ['light', 'dark'] as const;

/** Drawn lines of each panel of the time plot, as path data. */
function panelPaths(page: Page): Promise<string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll('#plot-time .subplot')]
      .map((panel) =>
        [...panel.querySelectorAll('path.js-line')].map((line) => line.getAttribute('d')).join(),
      )
      .filter((paths) => paths !== ''),
  );
}

describe.each(SCREENS)('opened from a file on $name, the report', ({ options, theme }) => {
  let report: OpenReport;

  beforeAll(async () => {
    report = await reports.open({ ...options, offline: true });
    await plotsDrawn(report.page);
  });

  it('draws its plots without an error and without any request', async () => {
    const { page, complaints, requests } = report;
    expect(await page.locator('#interactive').isVisible()).toBe(true);
    expect(await page.locator('.plot').count()).toBe(3);
    expect(complaints).toEqual([]);
    expect(requests).toEqual([]);
  });

  it('fits the width: neither the page nor a table scrolls sideways', async () => {
    const { content, view, tables } = await report.page.evaluate(() => ({
      content: document.documentElement.scrollWidth,
      view: document.documentElement.clientWidth,
      tables: [...document.querySelectorAll('.scroll')]
        .filter((table) => table.scrollWidth > table.clientWidth)
        .map((table) => table.getAttribute('aria-label')),
    }));
    expect(tables).toEqual([]);
    expect(view).toBe(options.viewport.width);
    expect(content).toBeLessThanOrEqual(view);
  });

  it.each(THEMES)('is readable in the %s theme: contrast at least 4.5', async (colorScheme) => {
    const { page } = report;
    await page.emulateMedia({ colorScheme });
    for (const selector of ['body', '.kind', '.cautions', 'td', '.muted'])
      expect(await textContrast(page, selector), selector).toBeGreaterThanOrEqual(4.5);
  });

  it('has no WCAG 2 A or AA violation', async () => {
    const { page } = report;
    // One theme a screen; the contrast of text is computed for both above.
    await page.emulateMedia({ colorScheme: theme });
    await plotsDrawn(page);
    expect(await accessibilityViolations(page)).toEqual([]);
  });
});

it('pointing at a curve of the time plot names the quantity, its unit and the time', async () => {
  const { page } = await reports.open();
  await plotsDrawn(page);
  const panel = page.locator('#plot-time .draglayer .nsewdrag').nth(3);
  await panel.scrollIntoViewIfNeeded();
  const box = await panel.boundingBox();
  if (box === null) throw new Error('the panel of the speed is not drawn');
  const hover = page.locator('#plot-time .hoverlayer');
  const read = async () => {
    // Towards the curve from above: the library answers to what lies within some pixels of the pointer.
    for (let share = 0; share <= 1; share += 0.02) {
      await page.mouse.move(box.x + 0.55 * box.width, box.y + share * box.height);
      const text = (await hover.textContent()) ?? '';
      if (text.includes('shaft')) return text;
    }
    return '';
  };
  await expect.poll(read, { timeout: 30_000 }).toMatch(/^shaftSpeed \d+ r\/minTime 0\.\d{4} s$/u);
});

it('an oblique drag in the currents enlarges the time axis of every panel, and no other axis', async () => {
  const { page } = await reports.open();
  await plotsDrawn(page);
  const panel = page.locator('#plot-time .draglayer .nsewdrag').nth(1);
  await panel.scrollIntoViewIfNeeded();
  const box = await panel.boundingBox();
  if (box === null) throw new Error('the panel of the currents is not drawn');
  const ticks = (axis: string) => page.locator(`#plot-time ${axis}`).allTextContents();
  const before = { x: await ticks('.xtick'), y: await ticks('.y2tick'), paths: await panelPaths(page) };
  await page.mouse.move(box.x + 0.4 * box.width, box.y + 0.1 * box.height);
  await page.mouse.down();
  await page.mouse.move(box.x + 0.7 * box.width, box.y + 0.9 * box.height, { steps: 5 });
  await page.mouse.up();
  expect(before.y.length).toBeGreaterThanOrEqual(3);
  expect(before.paths.length).toBeGreaterThanOrEqual(4);
  // The library draws the enlarged panels a moment after the button is released.
  const unchanged = async () => {
    const after = await panelPaths(page);
    return before.paths.filter((paths, index) => paths === after[index]);
  };
  await expect.poll(unchanged, { timeout: 30_000 }).toEqual([]);
  expect(await ticks('.xtick')).not.toEqual(before.x);
  expect(await ticks('.y2tick')).toEqual(before.y);
});

/** Contrast ratio of WCAG 2.1 between the text of an element and the page behind it. */
function textContrast(page: Page, selector: string): Promise<number> {
  return page.evaluate((element) => {
    const luminance = (colour: string) => {
      const [r, g, b] = (colour.match(/[\d.]+/gu) ?? []).map((part) => {
        const share = Number(part) / 255;
        return share <= 0.03928 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
      });
      return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
    };
    const ink = luminance(getComputedStyle(document.querySelector(element)!).color);
    const ground = luminance(getComputedStyle(document.body).backgroundColor);
    return (Math.max(ink, ground) + 0.05) / (Math.min(ink, ground) + 0.05);
  }, selector);
}

it('the ground turns dark with the theme of the system, and the plots with it', async () => {
  const { page } = await reports.open({ colorScheme: 'light' });
  await plotsDrawn(page);
  const colours = () =>
    page.evaluate(() => [
      getComputedStyle(document.body).backgroundColor,
      getComputedStyle(document.querySelector('#plot-time .xtick text')!).fill,
    ]);
  const light = await colours();
  await page.emulateMedia({ colorScheme: 'dark' });
  await page.waitForFunction(
    (old) => getComputedStyle(document.querySelector('#plot-time .xtick text')!).fill !== old,
    light[1],
  );
  expect((await colours())[0]).not.toBe(light[0]);
});

it('without JavaScript the static figures are there and nothing is empty', async () => {
  const { page, complaints } = await reports.open({ javaScriptEnabled: false });
  const figures = page.locator('figure .wide svg');
  expect(await figures.count()).toBeGreaterThanOrEqual(5);
  for (const figure of await figures.all()) expect(await figure.isVisible()).toBe(true);
  expect(await page.locator('#interactive').isVisible()).toBe(false);
  expect(await page.locator('#interactive-link').isVisible()).toBe(false);
  expect(complaints).toEqual([]);
});
