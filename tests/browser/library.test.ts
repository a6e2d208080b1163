import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { METRIC_KEYS, type Metrics, parseScenario, simulate } from '../../src/index.ts';
import { launchBrowser } from '../support/browser.ts';
import { exampleText } from '../support/examples.ts';

/** Elementary functions differ in their last bits between engines; the architecture's promise. */
const RELATIVE = 1e-9;

let browser: Browser;

beforeAll(async () => {
  browser = await launchBrowser();
});

afterAll(() => browser.close());

/** The public API as one script for a browser. esbuild refuses modules that only Node has. */
async function bundle(): Promise<{ code: string; inputs: string[] }> {
  const { outputFiles, metafile } = await build({
    entryPoints: [fileURLToPath(new URL('../../src/index.ts', import.meta.url))],
    bundle: true,
    format: 'iife',
    globalName: 'countertorque',
    platform: 'browser',
    write: false,
    metafile: true,
    logLevel: 'silent',
  });
  return { code: outputFiles[0]!.text, inputs: Object.keys(metafile.inputs) };
}

it('the bundle holds the integrator and nothing that only Node has', async () => {
  const { inputs } = await bundle();
  expect(inputs.some((input) => input.endsWith('src/numeric/dormandPrince.ts'))).toBe(true);
  expect(inputs.filter((input) => /node:|src\/(?:cli|pool)\//u.test(input))).toEqual([]);
});

it('a worker in a browser parses and runs the built-in example with the same metrics as Node', async () => {
  const { code } = await bundle();
  const text = exampleText('may-this-belt-be-plugged.yaml');
  const page = await browser.newPage();
  const theirs = await page.evaluate(
    ([library, source]) =>
      new Promise<{ metrics: Metrics; status: string }>((resolve, reject) => {
        const job = `onmessage = ({ data }) => {
          const { metrics, status } = countertorque.simulate(countertorque.parseScenario(data));
          postMessage({ metrics, status: status.code });
        };`;
        const url = URL.createObjectURL(new Blob([library, '\n', job], { type: 'text/javascript' }));
        const worker = new Worker(url);
        worker.onmessage = ({ data }) => resolve(data);
        worker.onerror = (event) => reject(new Error(event.message));
        worker.postMessage(source);
      }),
    [code, text] as const,
  );
  const ours = simulate(parseScenario(text));
  expect(theirs.status).toBe(ours.status.code);
  expect(Object.keys(theirs.metrics)).toEqual([...METRIC_KEYS]);
  const differing = METRIC_KEYS.filter((key) => key !== 'ledgerResidual').flatMap((key) => {
    const a = ours.metrics[key];
    const b = theirs.metrics[key];
    if (a.value === null || b.value === null) return a.value === b.value ? [] : [`${key}: one is missing`];
    const same =
      Math.abs(a.value - b.value) <= RELATIVE * Math.abs(a.value) && a.phase === b.phase && a.unit === b.unit;
    return same ? [] : [`${key}: ${a.value} against ${b.value}`];
  });
  expect(differing).toEqual([]);
  // The residual measures the error of each side; it is no figure of the run.
  expect(theirs.metrics.ledgerResidual.value).toBeLessThan(1e-6);
});
