import { readFileSync } from 'node:fs';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { MetricKey, SummaryFile } from '../../../src/index.ts';
import { builtPages } from '../../support/builtPage.ts';
import { runProcess } from '../../support/commandLine.ts';
import {
  button,
  chooseTask,
  difference,
  instant,
  openReady,
  playButton,
  push,
  REMAINDER,
  reading,
  scenarioText,
  seekEnd,
  settled,
  shownNumbers,
  textsOf,
} from '../../support/pageDriver.ts';
import { workFolder, writeInto } from '../../support/workFolder.ts';

const pages = builtPages();

/** Opens the page with the machine at rest and nothing pressed yet. */
async function atRest(): Promise<Page> {
  const { page } = await openReady(pages);
  await button(page, 'Start over').click();
  await settled(page);
  return page;
}

/** What stands at the six poles, in the words beside them. */
function poleWords(page: Page): Promise<string[]> {
  return page.locator('.pole-words').allTextContents();
}

const contactor = (page: Page, name: 'forward' | 'reverse') =>
  page.getByRole('region', { name: `${name} contactor` });

const machine = (page: Page) => page.getByRole('region', { name: 'Motor and load' });

const speed = async (page: Page) => (await reading(page, 'Speed', 'shaft')).value;
const torque = async (page: Page) => (await reading(page, 'Air-gap torque', 'air gap')).value;

/** The table of all figures in a report: label and text of each row. */
function reportRows(html: string): string[] {
  const [, table = ''] = /<caption>All figures of the run<\/caption>(.*?)<\/table>/su.exec(html) ?? [];
  const plain = (markup: string) =>
    markup
      .replaceAll('&lt;', '<')
      .replaceAll('&gt;', '>')
      .replaceAll('&quot;', '"')
      .replaceAll('&#39;', "'")
      .replaceAll('&amp;', '&');
  return [...table.matchAll(/<th scope="row">(.*?)<\/th><td class="number">(.*?)<\/td>/gu)].map(
    ([, label = '', text = '']) => plain(`${label}: ${text}`),
  );
}

/** Numbers of the page that are not those of a summary, in words. */
function wrongNumbers(
  shown: readonly { readonly key: MetricKey; readonly value: string }[],
  metrics: SummaryFile['metrics'],
): string[] {
  return shown
    .map(({ key, value }) => difference(value, metrics[key].value, key))
    .filter((words) => words !== '');
}

describe('time that is let pass', () => {
  it('counts every press, also those before the first is answered', async () => {
    const page = await atRest();
    await page.getByLabel('Instant of the run').press('End');
    const before = await instant(page);
    await button(page, 'Let 1 s pass').evaluate((one: HTMLButtonElement) => {
      for (let i = 0; i < 3; i++) one.click();
    });
    await settled(page);
    await seekEnd(page);
    expect(Number.parseFloat(await instant(page)) - Number.parseFloat(before)).toBeCloseTo(3, 3);
  });

  it('has passed at once: the cursor stands at its end, where the next hand acts', async () => {
    const page = await atRest();
    await page.getByLabel('Instant of the run').press('End');
    const before = Number.parseFloat(await instant(page));
    await button(page, 'Let 1 s pass').click();
    await settled(page);
    expect(Number.parseFloat(await instant(page)) - before).toBeCloseTo(1, 3);
  });

  it('brings whoever wants no motion to its end, and so does a button', async () => {
    const { page } = await openReady(pages, { reducedMotion: 'reduce' });
    await button(page, 'Start over').click();
    await settled(page);
    await push(page, 'Reset');
    await push(page, 'Forward');
    expect(await playButton(page).textContent()).toBe('Play');
    await expect.poll(() => speed(page)).toBeGreaterThan(1455);
    const before = Number.parseFloat(await instant(page));
    await button(page, 'Let 1 s pass').click();
    await settled(page);
    expect(Number.parseFloat(await instant(page)) - before).toBeCloseTo(1, 3);
  });
});

describe('a hand on the buttons', () => {
  it('reverses the machine: torque turns negative, speed passes zero, and the numbers are those of the command line', async () => {
    const page = await atRest();
    await chooseTask(page, 'Change');
    await page.getByRole('combobox', { name: 'Scheme' }).selectOption('direct');
    await settled(page);
    await chooseTask(page, 'Push buttons');
    await page.getByRole('combobox', { name: 'Speed' }).selectOption({ label: 'real time' });
    await push(page, 'Reset');
    await seekEnd(page);

    // Played at real time: what is shown moves by itself and comes to rest at the end of the run.
    await push(page, 'Forward');
    expect(await playButton(page).textContent()).toBe('Pause');
    await expect.poll(() => playButton(page).textContent(), { timeout: 20_000 }).toBe('Play');
    expect(await speed(page)).toBeGreaterThan(1455);
    expect(await torque(page)).toBeGreaterThan(0);
    await expect.poll(() => machine(page).textContent()).toContain('r/min forward');

    // Slowly enough that nothing of what follows has happened yet when the pictures are stopped.
    await page.getByRole('combobox', { name: 'Speed' }).selectOption({ label: '1/500 of real time' });
    await push(page, 'Reverse');
    await button(page, 'Pause').click();
    const seen: string[][] = [await poleWords(page)];
    const events = page.locator('.events');
    const next = async (text: string) => {
      // Within one reversal some thirty things happen.
      for (let i = 0; i < 60; i++) {
        await button(page, 'Next event').click();
        seen.push(await poleWords(page));
        if ((await events.locator('li').first().textContent())?.includes(text) === true) return;
      }
      throw new Error(`no event "${text}" after ${await events.textContent()}`);
    };
    await next('reverse pole');
    await page.getByRole('combobox', { name: 'Speed' }).selectOption({ label: '1/20 of real time' });
    const torques: number[] = [];
    // Step by step through the first two periods of the supply after the reversed contactor has closed.
    for (let i = 0; i < 48; i++) {
      await button(page, 'Step on').click();
      torques.push(await torque(page));
    }
    // Rated torque is 7500 W / (2π 1455 / 60 s); the first torque peak exceeds the rated one several times.
    expect(Math.min(...torques)).toBeLessThan((-3 * 7500 * 60) / (2 * Math.PI * 1455));
    expect(await speed(page)).toBeGreaterThan(0);
    await next('speed passes through zero');
    expect(Math.abs(await speed(page))).toBeLessThan(1);
    expect(await torque(page)).toBeLessThan(0);
    await seekEnd(page);
    expect(await speed(page)).toBeLessThan(-1455);
    await expect.poll(() => machine(page).textContent()).toContain('r/min reverse');

    const stages = (pole: number) =>
      seen.map((words) => words[pole] ?? '').filter((word, i, all) => word !== all[i - 1]);
    for (const pole of [0, 1, 2]) expect(stages(pole)).toEqual(['closed', 'arcing', 'open']);
    for (const pole of [3, 4, 5]) expect(stages(pole)).toEqual(['open', 'closed']);

    const text = await scenarioText(page);
    expect(text).toMatch(/do: press reverse/u);
    const folder = workFolder();
    writeInto(folder, 'run.yaml', text);
    const { exit, out, err } = await runProcess(['run.yaml', '--json', '--out', 'report'], { cwd: folder });
    expect(exit, err).toBe(0);
    const { metrics, finding } = JSON.parse(out) as SummaryFile;
    const shown = await shownNumbers(page);
    expect(shown.length).toBeGreaterThan(20);
    expect(wrongNumbers(shown, metrics)).toEqual([]);
    const html = readFileSync(path.join(folder, 'report', 'report.html'), 'utf8');
    expect(textsOf(shown)).toEqual(reportRows(html).filter((row) => !row.startsWith(REMAINDER)));
    expect(await page.locator('.finding').textContent()).toBe(finding);
    const strip = await page
      .locator('[data-key-number]')
      .evaluateAll((all) =>
        all.map(
          (one) => [one.getAttribute('data-key-number') ?? '', one.getAttribute('value') ?? ''] as const,
        ),
      );
    expect(strip.length).toBeGreaterThanOrEqual(3);
    const named = strip.filter(([key]) => key !== '') as [MetricKey, string][];
    expect(
      wrongNumbers(
        named.map(([key, value]) => ({ key, value })),
        metrics,
      ),
    ).toEqual([]);
  });

  it('shows what the command line prints for the scenario that the page opens with', async () => {
    const { page } = await openReady(pages);
    const folder = workFolder();
    writeInto(folder, 'run.yaml', await scenarioText(page));
    const { exit, out } = await runProcess(['simulate', 'run.yaml', '--json'], { cwd: folder });
    expect(exit).toBe(0);
    const { metrics } = JSON.parse(out) as SummaryFile;
    const shown = await shownNumbers(page);
    expect(shown.length).toBeGreaterThan(20);
    expect(wrongNumbers(shown, metrics)).toEqual([]);
  });

  it('stops by plugging: stop makes the reverse contactor brake to rest, and it drops out', async () => {
    const page = await atRest();
    await push(page, 'Reset');
    await seekEnd(page);
    await push(page, 'Forward');
    await seekEnd(page);
    expect(await speed(page)).toBeGreaterThan(1455);
    await push(page, 'Stop');
    await button(page, 'Pause').click();
    const braking = contactor(page, 'reverse');
    for (let i = 0; i < 60 && !(await braking.textContent())?.includes('closed'); i++)
      await button(page, 'Next event').click();
    expect(await braking.textContent()).toContain('closedBclosedCclosed');
    await seekEnd(page);
    // The zero-speed switch lets go below 60 r/min; what friction leaves is less than a turn in ten seconds.
    expect(Math.abs(await speed(page))).toBeLessThan(6);
    for (const name of ['forward', 'reverse'] as const) {
      expect(await contactor(page, name).textContent()).toContain('armature out');
      expect(await contactor(page, name).textContent()).toContain('coil off');
    }
  });

  it('emergency stop latches: nothing starts while it is in, nor before reset when it is out again', async () => {
    const page = await atRest();
    const emergency = page.locator('.buttons').getByRole('button', { name: 'Emergency stop' });
    await push(page, 'Reset');
    await seekEnd(page);
    await push(page, 'Forward');
    await seekEnd(page);
    expect(await emergency.getAttribute('aria-pressed')).toBe('false');

    await push(page, 'Emergency stop');
    await seekEnd(page);
    expect(await emergency.getAttribute('aria-pressed')).toBe('true');
    await page.locator('.push-place[data-kind=emergencyStop]', { hasText: 'held' }).waitFor();
    expect(Math.abs(await speed(page))).toBeLessThan(6);

    const startsNot = async () => {
      await push(page, 'Forward');
      await seekEnd(page);
      expect(await contactor(page, 'forward').textContent()).toContain('coil off, armature out');
      expect(Math.abs(await speed(page))).toBeLessThan(6);
    };
    await startsNot();
    await push(page, 'Reset');
    await seekEnd(page);
    await startsNot();

    await push(page, 'Emergency stop');
    await seekEnd(page);
    expect(await emergency.getAttribute('aria-pressed')).toBe('false');
    await startsNot();

    await push(page, 'Reset');
    await seekEnd(page);
    await push(page, 'Forward');
    await seekEnd(page);
    expect(await contactor(page, 'forward').textContent()).toContain('coil on, armature in');
    expect(await speed(page)).toBeGreaterThan(1455);
  });

  it('a tripped overload relay stops the machine and is reset by its own button', async () => {
    const page = await atRest();
    await push(page, 'Reset');
    await seekEnd(page);
    await push(page, 'Forward');
    await seekEnd(page);
    const relay = page.getByRole('region', { name: 'Overload relay' });
    expect(await relay.textContent()).toContain('not tripped');
    await push(page, 'Trip overload');
    await seekEnd(page);
    expect(await relay.textContent()).toContain('stays open until it is reset');
    expect(await contactor(page, 'forward').textContent()).toContain('coil off, armature out');
    await push(page, 'Reset overload');
    await seekEnd(page);
    expect(await relay.textContent()).toContain('not tripped');
  });
});
