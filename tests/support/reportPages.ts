import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { launchBrowser } from './browser.ts';
import { runCommand } from './commandLine.ts';

/** A report opened from a file, and everything it did that it should not. */
export interface OpenReport {
  readonly page: Page;
  /** Errors on the console, uncaught errors, dialogs. */
  readonly complaints: string[];
  /** Requests other than for the page itself. */
  readonly requests: string[];
}

/** Opens reports in one browser per test file. */
export interface ReportPages {
  readonly open: (options?: BrowserContextOptions) => Promise<OpenReport>;
}

/**
 * Before the tests of a file: writes the report of a scenario and starts a browser; after them: clears up.
 *
 * @param source text of the scenario
 */
export function reportPages(source: string): ReportPages {
  let folder = '';
  let browser: Browser | null = null;

  beforeAll(async () => {
    folder = mkdtempSync(path.join(tmpdir(), 'countertorque-'));
    writeFileSync(path.join(folder, 'run.yaml'), source);
    const { exit, err } = await runCommand(folder, ['run.yaml', '--out', 'report']);
    if (exit !== 0) throw new Error(`no report: ${err}`);
    browser = await launchBrowser();
  });

  afterAll(async () => {
    await browser?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  async function open(options: BrowserContextOptions = {}): Promise<OpenReport> {
    if (browser === null) throw new Error('reports are opened inside tests');
    const context = await browser.newContext({ viewport: DESKTOP, ...options });
    const page = await context.newPage();
    page.setDefaultTimeout(60_000);
    const complaints: string[] = [];
    const requests: string[] = [];
    const address = pathToFileURL(path.join(folder, 'report', 'report.html')).href;
    page.on('console', (message) => {
      if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
    });
    page.on('pageerror', (error) => complaints.push(error.message));
    page.on('dialog', (dialog) => {
      complaints.push(`dialog: ${dialog.message()}`);
      void dialog.dismiss();
    });
    page.on('request', (request) => {
      if (request.url() !== address) requests.push(request.url());
    });
    await page.goto(address);
    return { page, complaints, requests };
  }

  return { open };
}

export const DESKTOP = { width: 1920, height: 1080 } as const;
export const PHONE = { width: 390, height: 844 } as const;

/** Waits until the library has drawn all plots. */
export async function plotsDrawn(page: Page): Promise<void> {
  await page.waitForFunction(() =>
    [...document.querySelectorAll('.plot')].every(
      (plot) => plot.querySelector('.main-svg .subplot') !== null,
    ),
  );
}

/** What axe-core finds against WCAG 2 A and AA, as `rule: elements`. */
export async function accessibilityViolations(page: Page): Promise<string[]> {
  const axe = createRequire(import.meta.url)('axe-core') as typeof import('axe-core');
  // Evaluated from outside: the page's policy would not let a script element in.
  await page.evaluate(axe.source);
  return page.evaluate(async () => {
    const { axe } = globalThis as typeof globalThis & { axe: typeof import('axe-core') };
    const { violations } = await axe.run({ runOnly: ['wcag2a', 'wcag2aa'] });
    return violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html).join(' | ')}`);
  });
}
