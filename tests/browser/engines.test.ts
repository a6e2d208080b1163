/** The same scenario gives the same bits in this version of Node and in a browser whose engine is years apart from it. */
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { parseScenario, simulate } from '../../src/index.ts';
import { launchBrowser } from '../support/browser.ts';
import { exampleText } from '../support/examples.ts';

let browser: Browser;
let page: Page;

beforeAll(async () => {
  const [started, bundle] = await Promise.all([launchBrowser(), library()]);
  browser = started;
  page = await browser.newPage();
  await page.addScriptTag({ content: bundle });
});

afterAll(() => browser.close());

/** The public API as one script for a browser. */
async function library(): Promise<string> {
  const { outputFiles } = await build({
    entryPoints: [fileURLToPath(new URL('../../src/index.ts', import.meta.url))],
    bundle: true,
    format: 'iife',
    globalName: 'countertorque',
    platform: 'browser',
    write: false,
    logLevel: 'silent',
  });
  return outputFiles[0]!.text;
}

/**
 * All numbers of a run: what the text was read as (with the circuit that was fitted), figures, ledger, events, work and
 * trajectory at many instants. Sent to the browser as text, so it uses what it is given alone.
 */
function everyNumber(
  library: { parseScenario: typeof parseScenario; simulate: typeof simulate },
  text: string,
) {
  const scenario = library.parseScenario(text);
  const { metrics, ledger, trajectory, status } = library.simulate(scenario);
  const { events, stats, tEnd } = trajectory;
  const points = Array.from({ length: 201 }, (_, i) => trajectory.at((tEnd * i) / 200));
  return JSON.stringify({ scenario, metrics, ledger, events, stats, status, points }, null, 1).split('\n');
}

it.each([
  'what-if-only-the-nameplate-is-known',
  'what-does-a-full-reversal-cost',
  'may-this-belt-be-plugged',
  'what-happens-after-the-stop-button',
  'should-this-fan-be-plugged',
  'how-hard-does-plugging-twist-the-shaft',
])('%s comes out the same to the last bit', async (name) => {
  const text = exampleText(`${name}.yaml`);
  const theirs = await page.evaluate(
    ([work, source]) =>
      new Function('text', `return (${work})(countertorque, text)`)(source) as readonly string[],
    [everyNumber.toString(), text] as const,
  );
  const ours = everyNumber({ parseScenario, simulate }, text);
  expect(ours.some((line) => line.includes('"steps"'))).toBe(true);
  expect(theirs).toEqual(ours);
});

it('the two engines are not one and the same', async () => {
  const version = await page.evaluate(() => navigator.userAgent);
  expect(version).not.toContain(process.versions.v8);
});
