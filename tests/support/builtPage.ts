import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll } from 'vitest';
import { launchBrowser } from './browser.ts';
import { builtPage, policyOf } from './buildPage.ts';
import { type PageServer, pageServer } from './pageServer.ts';

/** Screens that the page is made for, CSS pixels: a projector, and a telephone held upright. */
export const PROJECTOR = { width: 1280, height: 720 } as const;
/** See PROJECTOR. */
export const TELEPHONE = { width: 390, height: 844 } as const;

/** The page in a browser of its own, and everything it did that it should not. */
export interface OpenPage {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly server: PageServer;
  /** Addresses that the page and its workers asked for; what the service worker fetches ahead is not among them. */
  readonly requested: readonly string[];
  /**
   * Errors and warnings on the console of page and workers, uncaught errors, breaches of the policy, failed requests and
   * requests to elsewhere. A test that provokes one takes it out; what is left at the end of a test fails it.
   */
  readonly complaints: string[];
}

/** How the page is opened. */
export interface OpenOptions extends BrowserContextOptions {
  /** What follows the page's address, such as `#…`. */
  readonly link?: string;
  /** Where on the server the page is put. */
  readonly under?: string;
  /** Folder that is served; else the page as it was built. */
  readonly folder?: string;
}

/** Opens pages in one browser per test file; each is closed after its test. */
export interface BuiltPages {
  readonly open: (options?: OpenOptions) => Promise<OpenPage>;
}

/** Before the tests of a file: builds the page and starts a browser; after each test: fails it if a page complained. */
export function builtPages(): BuiltPages {
  let built = '';
  let browser: Browser | null = null;
  const opened: (OpenPage & { readonly close: () => Promise<void> })[] = [];
  let shared: Pick<OpenPage, 'context' | 'server'> | null = null;

  beforeAll(async () => {
    [built, browser] = await Promise.all([builtPage(), launchBrowser()]);
  });

  afterEach(async () => {
    const pages = opened.splice(0);
    await Promise.all(pages.map((page) => page.close()));
    const complaints = pages.flatMap((page) => page.complaints);
    if (complaints.length > 0) throw new Error(`the page complained:\n${complaints.join('\n')}`);
  });

  afterAll(async () => {
    await browser?.close();
    await shared?.server.close();
  });

  /** Pages that ask for nothing special share server and context: what the browser has kept and compiled of the page serves all of them. */
  async function sharedPlace(): Promise<Pick<OpenPage, 'context' | 'server'>> {
    shared ??= await newPlace(built, {});
    return shared;
  }

  async function newPlace(
    folder: string,
    { under, ...options }: Omit<OpenOptions, 'link' | 'folder'>,
  ): Promise<Pick<OpenPage, 'context' | 'server'>> {
    if (browser === null) throw new Error('pages are opened inside tests');
    const headers = { 'content-security-policy': policyOf(folder) };
    const server = await pageServer(folder, under === undefined ? { headers } : { headers, under });
    // Keeping four megabytes for use without a network takes longer than most tests: only those about it let the page do so.
    const context = await browser.newContext({ viewport: PROJECTOR, serviceWorkers: 'block', ...options });
    return { context, server };
  }

  async function open({ link = '', folder, ...options }: OpenOptions = {}): Promise<OpenPage> {
    const isPlain = folder === undefined && Object.keys(options).length === 0;
    const place = isPlain ? await sharedPlace() : await newPlace(folder ?? built, options);
    const { context, server } = place;
    const page = await context.newPage();
    page.setDefaultTimeout(30_000);
    const requested: string[] = [];
    page.on('request', (request) => requested.push(request.url()));
    const complaints = await watch(page, server);
    const one = { page, context, server, requested, complaints };
    opened.push({ ...one, close: isPlain ? () => page.close() : () => close(one) });
    await page.goto(`${server.address}${link}`);
    return one;
  }

  return { open };
}

async function close({ context, server }: Pick<OpenPage, 'context' | 'server'>): Promise<void> {
  await context.close();
  await server.close();
}

/** What the driver says where it keeps a page from having a service worker. */
const BLOCKED = 'Service Worker registration blocked';

/** Notes everything that a page must not do. */
async function watch(page: Page, server: PageServer): Promise<string[]> {
  const complaints: string[] = [];
  page.on('console', (message) => {
    if (message.text().includes(BLOCKED)) return;
    if (message.type() === 'error' || message.type() === 'warning')
      complaints.push(`console: ${message.text()} (${message.location().url})`);
  });
  page.on('pageerror', (error) => complaints.push(`error: ${error.stack ?? error.message}`));
  page.on('crash', () => complaints.push('the page crashed'));
  page.on('requestfailed', (request) =>
    complaints.push(`failed: ${request.url()} ${request.failure()?.errorText ?? ''}`),
  );
  page.on('request', (request) => {
    const url = request.url();
    if (!url.startsWith(server.address) && !/^(?:blob|data):/u.test(url))
      complaints.push(`elsewhere: ${url}`);
  });
  await page.exposeFunction('tellBreach', (breach: string) => complaints.push(breach));
  await page.addInitScript(() => {
    document.addEventListener(
      'securitypolicyviolation',
      ({ violatedDirective, blockedURI, sourceFile, lineNumber }) => {
        const { tellBreach } = globalThis as typeof globalThis & { tellBreach: (breach: string) => void };
        tellBreach(`policy: ${violatedDirective} forbids ${blockedURI} (${sourceFile}:${lineNumber})`);
      },
    );
  });
  return complaints;
}

/** Waits until the page shows its first run and takes input. */
export async function usable(page: Page): Promise<void> {
  await page.waitForFunction(() => performance.getEntriesByName('usable').length > 0);
}

/** Waits until the page is kept for use without a network, and answered by its service worker. */
export async function keptOffline(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const { serviceWorker } = navigator;
    await serviceWorker.ready;
    if (serviceWorker.controller === null)
      await new Promise((resolve) => {
        serviceWorker.addEventListener('controllerchange', resolve, { once: true });
      });
  });
}

/** Turns the load's inertia by one step of its slider and waits until the run with the new one is shown. */
export async function turnInertia(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Change', exact: true }).click();
  const adjuster = page.locator('[data-adjustable=loadInertia]');
  const before = (await adjuster.locator('output').textContent()) ?? '';
  await adjuster.locator('input[type=range]').press('ArrowRight');
  await adjuster.locator('output').filter({ hasNotText: before }).waitFor();
}

/** Opens the explorable chart and waits until it is drawn. */
export async function openExplorable(page: Page): Promise<void> {
  await page.getByText('Explore in detail', { exact: true }).press('Enter');
  await page.locator('.main-svg').first().waitFor();
}
