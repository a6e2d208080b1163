import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, it } from 'vitest';
import { builtPage } from '../../support/buildPage.ts';
import { builtPages, keptOffline, openExplorable, turnInertia, usable } from '../../support/builtPage.ts';

const pages = builtPages();

/** The browser looks for a new version when it has nothing better to do. */
const PATIENCE = { timeout: 30_000, interval: 100 };

it('once kept, the page opens, runs and explores with the server gone', async () => {
  const { page, context, server } = await pages.open({ serviceWorkers: 'allow' });
  await usable(page);
  await keptOffline(page);
  await server.close();
  await context.setOffline(true);
  await page.reload();
  await usable(page);
  await turnInertia(page);
  await openExplorable(page);
});

it('a link opens offline too: what follows the address is no part of it', async () => {
  const { page, context, server } = await pages.open({ serviceWorkers: 'allow' });
  await usable(page);
  await keptOffline(page);
  await server.close();
  await context.setOffline(true);
  for (const address of [`${server.address}?from=mail`, `${server.address}index.html`]) {
    await page.goto(address);
    await usable(page);
  }
});

it('a new version replaces the old one as a whole, when no page of the old one is open any more', async () => {
  const folder = mkdtempSync(path.join(tmpdir(), 'countertorque-page-'));
  cpSync(await builtPage(), folder, { recursive: true });
  const change = (file: string, from: RegExp, to: string) => {
    const text = readFileSync(path.join(folder, file), 'utf8');
    expect(text).toMatch(from);
    writeFileSync(path.join(folder, file), text.replace(from, to));
  };
  try {
    const { page: old, context, server } = await pages.open({ folder, serviceWorkers: 'allow' });
    await keptOffline(old);
    const title = await old.title();
    change('index.html', /<title>.*<\/title>/u, '<title>The next version</title>');
    change('serviceWorker.js', /(?<="?version"?:["'`])[0-9a-f]{16}/u, '0123456789abcdef');

    await old.reload();
    expect(await old.title()).toBe(title);
    const waiting = () =>
      old.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.waiting?.state);
    await expect.poll(waiting, PATIENCE).toBe('installed');
    const kept = () => old.evaluate(async () => (await caches.keys()).length);
    expect(await kept()).toBe(2);
    await old.close();

    const next = await context.newPage();
    const titleNow = async () => {
      // The change-over takes a moment after the last page has gone: a page opened before it still belongs to the old version.
      await next.goto('about:blank');
      await next.goto(server.address, { waitUntil: 'domcontentloaded' });
      return next.title();
    };
    await expect.poll(titleNow, PATIENCE).toBe('The next version');
    expect(await next.evaluate(async () => (await caches.keys()).length)).toBe(1);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
