/**
 * The page in headless Chromium: what its scripts weigh, how soon it can be used, how soon a turn of the slider is seen, and
 * whether animation keeps up with the screen. Scenario: the plug stop of plugStop.ts. It prints; it judges nothing.
 *
 *     npm run bench:page
 */
import { readdirSync, readFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import type { Browser, Page } from 'playwright-core';
import { linkOf } from '../../src/page/link.ts';
import { launchBrowser } from '../support/browser.ts';
import { builtPage } from '../support/buildPage.ts';
import { type PageServer, pageServer } from '../support/pageServer.ts';

/** The smaller of the two screens that the page is made for: a projector. */
const VIEWPORT = { width: 1280, height: 720 };
const LOADS = 5;
const MOVES = 200;
/** Turns that are made apart, and frames between them: the hand rests, and what comes then is over before the next. */
const SINGLE_MOVES = 60;
const FRAMES_APART = 20;
/** Turns before those that count: the engine has compiled the simulation by then. */
const WARM_UP_MOVES = 30;
/** Between the turns for warm-up and those that count, ms: nothing of the first is under way then. */
const SETTLING = 1000;
/** Of animation, ms. */
const ANIMATION = 3000;
/** A frame of a 60 Hz screen takes 16.7 ms; longer than one and a half means that one was missed. */
const LONGEST_FRAME = 25;
/** The browser's clock is rounded: instants closer than this are the same, ms. */
const CLOCK = 1;
/** Longest wait for anything, ms. */
const PATIENCE = 30_000;
/** How the scenario of the benchmark shows that it is there. */
const TITLE = '50 hp plug stop';
const SLIDER = '[data-adjustable=loadInertia] input[type=range]';

const scenario = readFileSync(fileURLToPath(new URL('./plugStop.yaml', import.meta.url)), 'utf8');

/** Value below which a share of a list lies (nearest rank). */
function quantile(values: readonly number[], share: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN;
}

const kB = (bytes: number) => `${(bytes / 1000).toFixed(1).padStart(8)} kB`;
const ms = (value: number) => `${value.toFixed(1).padStart(7)} ms`;
const spread = (values: readonly number[]) =>
  `median ${ms(quantile(values, 0.5))}   p95 ${ms(quantile(values, 0.95))}   max ${ms(quantile(values, 1))}`;

/** Files of the build with their weights; those that the first view asked for are marked. */
function printWeights(folder: string, first: ReadonlySet<string>): void {
  console.log('\nScripts and style sheets (* loaded for the first view)      raw         gzip');
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((name) => name.replaceAll('\\', '/'))
    .filter((name) => /\.(?:js|css)$/u.test(name))
    .map((name) => {
      const content = readFileSync(path.join(folder, name));
      return { name, raw: content.length, packed: gzipSync(content).length };
    })
    .sort((a, b) => b.raw - a.raw);
  for (const { name, raw, packed } of files)
    console.log(`  ${first.has(name) ? '*' : ' '} ${name.padEnd(48)} ${kB(raw)} ${kB(packed)}`);
  const needed = files.filter(({ name }) => first.has(name));
  const sum = (key: 'raw' | 'packed') => needed.reduce((total, file) => total + file[key], 0);
  console.log(`    ${'first view together'.padEnd(48)} ${kB(sum('raw'))} ${kB(sum('packed'))}`);
}

/** A page of its own: nothing kept from the one before. */
async function freshPage(browser: Browser): Promise<Page> {
  const context = await browser.newContext({ viewport: VIEWPORT });
  const page = await context.newPage();
  page.setDefaultTimeout(PATIENCE);
  // The loader that runs this file wraps inner functions in a helper, which the browser must have too.
  await page.addInitScript({ content: 'globalThis.__name = (named) => named;' });
  page.on('pageerror', (error) => console.error(`page error: ${error.message}`));
  page.on('console', (message) => {
    if (message.type() === 'error') console.error(`console error: ${message.text()}`);
  });
  return page;
}

/** From the start of navigation to the page's own mark, ms. */
async function usableAfter(page: Page): Promise<number> {
  await page.waitForFunction(() => performance.getEntriesByName('usable').length > 0);
  return page.evaluate(() => performance.getEntriesByName('usable')[0]?.startTime ?? Number.NaN);
}

async function firstViews(browser: Browser, server: PageServer, folder: string): Promise<void> {
  const times: number[] = [];
  const first = new Set<string>();
  for (let i = 0; i < LOADS; i++) {
    const page = await freshPage(browser);
    let counting = true;
    page.on('request', (request) => {
      if (counting) first.add(request.url().slice(server.address.length));
    });
    await page.goto(server.address);
    times.push(await usableAfter(page));
    counting = false;
    await page.context().close();
  }
  printWeights(folder, first);
  console.log(`\nFirst usable view, ${LOADS} fresh loads:  ${spread(times)}`);
}

/**
 * Turns the slider once in so many frames, back and forth over its middle half, and returns for each turn when it was made and what
 * the page measured meanwhile.
 */
function turnSlider(page: Page, moves: number, frames: number) {
  return page.evaluate(
    async ({ selector, moves, frames, patience }) => {
      const slider = document.querySelector<HTMLInputElement>(selector);
      if (slider === null) throw new Error(`no slider ${selector}`);
      const frame = () => new Promise<number>((resolve) => requestAnimationFrame(resolve));
      const low = Number(slider.min || 0);
      const range = Number(slider.max || 100) - low;
      performance.clearMeasures('input-to-paint');
      const turned: number[] = [];
      for (let i = 0; i < moves; i++) {
        for (let waited = 0; waited < frames; waited++) await frame();
        // A triangle over 100 turns: no two neighbours alike.
        const phase = (i % 100) / 100;
        const share = 0.25 + 0.5 * (phase < 0.5 ? 2 * phase : 2 - 2 * phase);
        slider.value = String(low + share * range);
        turned.push(performance.now());
        slider.dispatchEvent(new Event('input', { bubbles: true }));
      }
      const last = turned.at(-1) ?? 0;
      const painted = () =>
        performance
          .getEntriesByName('input-to-paint')
          .map(({ startTime, duration }) => ({ input: startTime, end: startTime + duration }));
      const until = performance.now() + patience;
      while (!painted().some(({ input }) => input >= last - 1) && performance.now() < until) await frame();
      return { turned, painted: painted() };
    },
    { selector: SLIDER, moves, frames, patience: PATIENCE },
  );
}

async function latency(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Change', exact: true }).click();
  await page.locator(SLIDER).waitFor();
  await turnSlider(page, WARM_UP_MOVES, 1);
  await page.waitForTimeout(SETTLING);
  await turnsToPictures(page, 'a hand that moves on and on', MOVES, 1);
  await page.waitForTimeout(SETTLING);
  await turnsToPictures(page, 'single turns', SINGLE_MOVES, FRAMES_APART);
}

async function turnsToPictures(page: Page, how: string, moves: number, frames: number): Promise<void> {
  const { turned, painted } = await turnSlider(page, moves, frames);
  // A turn that was overtaken by the next one is seen with the first curves of a turn at or after it.
  const seen = turned.flatMap((at) => {
    const ends = painted.filter(({ input }) => input >= at - CLOCK).map(({ end }) => end);
    return ends.length === 0 ? [] : [Math.min(...ends) - at];
  });
  const turns = turned.slice(1).map((at, i) => at - (turned[i] ?? at));
  const pictures = new Set(
    painted.filter(({ input }) => input >= (turned[0] ?? 0) - CLOCK).map(({ end }) => Math.round(end)),
  );
  console.log(
    `\nSlider to painted curves, ${how}, ${moves} turns, one every ${quantile(turns, 0.5).toFixed(1)} ms:  ${spread(seen)}`,
  );
  console.log(`  ${pictures.size} pictures; turns never shown: ${turned.length - seen.length}`);
}

/** Times between frames while the run is played, ms, without the first. */
async function animation(page: Page): Promise<void> {
  const play = page.getByRole('button', { name: /^play/iu }).first();
  if ((await play.count()) === 0) {
    console.log('\nAnimation: there is no button whose name begins with Play');
    return;
  }
  await play.click();
  const intervals = await page.evaluate(async (length) => {
    const frame = () => new Promise<number>((resolve) => requestAnimationFrame(resolve));
    const start = await frame();
    const times = [start];
    let now = start;
    while (now - start < length) {
      now = await frame();
      times.push(now);
    }
    return times.slice(1).map((time, i) => time - (times[i] ?? time));
  }, ANIMATION);
  const counted = intervals.slice(1);
  const dropped = counted.filter((interval) => interval > LONGEST_FRAME);
  console.log(`\nAnimation, ${ANIMATION / 1000} s, ${counted.length} frames:  ${spread(counted)}`);
  console.log(
    `  longer than ${LONGEST_FRAME} ms: ${dropped.length} (${dropped.map((x) => x.toFixed(0)).join(', ')})`,
  );
}

async function bench(): Promise<void> {
  console.log(
    `Node ${process.version}, ${os.cpus().length} × ${os.cpus()[0]?.model ?? 'unknown processor'}, load ${os.loadavg()[0]?.toFixed(1)}`,
  );
  const link = await linkOf({ text: scenario, lesson: null, units: 'SI', largePrint: false });
  if (typeof link !== 'string') throw new Error(link.message);
  const folder = await builtPage();
  const server = await pageServer(folder);
  const browser = await launchBrowser();
  try {
    console.log(`Chromium ${browser.version()}, ${VIEWPORT.width} × ${VIEWPORT.height}`);
    await firstViews(browser, server, folder);
    const page = await freshPage(browser);
    await page.goto(`${server.address}#${link}`);
    await usableAfter(page);
    await page.locator('h1', { hasText: TITLE }).waitFor();
    await latency(page);
    await animation(page);
  } finally {
    await browser.close();
    await server.close();
  }
}

bench().catch((error: unknown) => {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
});
