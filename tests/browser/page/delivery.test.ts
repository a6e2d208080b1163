import { readFileSync } from 'node:fs';
import path from 'node:path';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { builtPage } from '../../support/buildPage.ts';
import { builtPages, openExplorable, usable } from '../../support/builtPage.ts';

const pages = builtPages();

/**
 * Most that all scripts of the first view may weigh as they go over the line, bytes: thirty phones of a class behind one
 * line of 100 Mbit/s have them in 1.5 s, which leaves half a second of the two that the first view may take.
 */
const FIRST_SCRIPTS = (1.5 * 100e6) / 8 / 30;

/** Name of a file in the built folder, of an address that begins with the server's. */
const below = (server: { readonly address: string }, url: string) => url.slice(server.address.length);

describe('the built page', () => {
  it('opens below any path and asks for nothing but files beside it, all of them there', async () => {
    for (const under of ['/', '/lessons/B%C3%BCro%201/page/']) {
      const { page, server } = await pages.open({ under });
      await usable(page);
      expect(await page.locator('h1').count()).toBe(1);
      expect(server.missing).toEqual([]);
      for (const asked of server.asked) expect(asked).toMatch(/^(?:|serviceWorker\.js|assets\/[\w.-]+)$/u);
    }
  });

  it('loads scripts of a bounded weight before it can be used, and no plotting library', async () => {
    const { page, server, requested } = await pages.open();
    await usable(page);
    const folder = await builtPage();
    const scripts = [...new Set(requested.map((url) => below(server, url)))].filter((name) =>
      name.endsWith('.js'),
    );
    const weights = scripts.map((name) => gzipSync(readFileSync(path.join(folder, name))).length);
    expect(scripts.length).toBeGreaterThanOrEqual(2);
    expect(weights.reduce((sum, weight) => sum + weight, 0)).toBeLessThan(FIRST_SCRIPTS);
    expect(scripts.filter((name) => name.includes('plotly'))).toEqual([]);
  });

  it('loads the plotting library when the explorable chart is opened, and draws within the policy', async () => {
    const { page, requested } = await pages.open();
    await usable(page);
    await openExplorable(page);
    expect(requested.filter((url) => url.includes('plotly'))).toHaveLength(1);
  });

  it('a breach of the policy, an error and a request to elsewhere would be told', async () => {
    const { page, complaints } = await pages.open();
    await usable(page);
    await page.evaluate(() => {
      document.body.setAttribute('style', 'color: red');
      const script = document.createElement('script');
      script.textContent = 'globalThis.wasRun = true';
      document.body.append(script);
      setTimeout(() => {
        throw new Error('planted');
      });
      fetch('https://example.invalid/').catch(() => undefined);
    });
    await expect.poll(() => complaints.join('\n'), { timeout: 10_000 }).toContain('planted');
    await expect.poll(() => complaints.join('\n'), { timeout: 10_000 }).toContain('connect-src');
    const told = complaints.splice(0).join('\n');
    expect(told).toContain('policy: style-src-attr');
    expect(told).toContain('policy: script-src-elem');
    expect(await page.evaluate(() => 'wasRun' in globalThis)).toBe(false);
  });
});
