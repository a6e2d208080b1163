import { readFileSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { ScenarioError } from '../../../src/index.ts';
import { placeWords } from '../../../src/scenario/edit/placeWords.ts';
import type { Problem } from '../../../src/scenario/problem.ts';
import { builtPages } from '../../support/builtPage.ts';
import { runCommand } from '../../support/commandLine.ts';
import { exampleText } from '../../support/examples.ts';
import { forms } from '../../support/longForms.ts';
import { button, chooseTask, drop, libraryRun, openReady, saved, settled } from '../../support/pageDriver.ts';
import { workFolder, writeInto } from '../../support/workFolder.ts';

const pages = builtPages();

const EXAMPLE = exampleText('what-happens-after-the-stop-button.yaml');
const OTHER = exampleText('may-this-belt-be-plugged.yaml');

const editor = (page: Page) => page.locator('#scenario-text');
const heading = (page: Page) => page.locator('h1').textContent();
const problems = (page: Page) => page.getByRole('list', { name: 'Problems' });

/** What the parser finds wrong with a text. */
function problemsOf(text: string): readonly Problem[] {
  try {
    libraryRun(text);
  } catch (error) {
    if (error instanceof ScenarioError) return error.problems;
    throw error;
  }
  throw new Error('nothing is wrong with this text');
}

/** What is shown of the run: it must not change while a text cannot be run. */
const runShown = (page: Page) => page.locator('.numbers').textContent();

/** A number as files write it. */
const NUMBER = /[-−]?\d+(?:\.\d+)?(?:e[-+]?\d+)?/gu;
/** Two processors round differently in the last digits; what is zero up to rounding has none that is the same. */
const ROUNDING = 1e-9;

/** Shown numbers below a thousand-millionth: what the energy ledger leaves over is such a one. */
const SHOWN_NOTHING = /-?\d+(?:\.\d+)? × 10⁻(?:⁹|[¹²][⁰¹²³⁴-⁹])/gu;

/** The first places where two files differ: in words at all, in numbers by more than rounding. Drawings and data for plots are left out. */
function unlike(one: string, other: string): string[] {
  const bare = (text: string) =>
    text
      .replaceAll(/<script.*?<\/script>|<svg.*?<\/svg>|'sha256-[^']*'/gsu, '')
      .replaceAll('−', '-')
      .replaceAll(SHOWN_NOTHING, '0');
  const [a, b] = [bare(one), bare(other)];
  if (a.replaceAll(NUMBER, '#') !== b.replaceAll(NUMBER, '#')) return ['the words differ'];
  const theirs = b.match(NUMBER) ?? [];
  return (a.match(NUMBER) ?? [])
    .map((mine, i) => [mine, theirs[i] ?? ''] as const)
    .filter(
      ([mine, its]) => !(Math.abs(Number(mine) - Number(its)) <= ROUNDING * (1 + Math.abs(Number(its)))),
    )
    .map(([mine, its]) => `${mine} for ${its}`)
    .slice(0, 5);
}

describe('files dropped onto the page', () => {
  it('a good one is run, shown and saved again byte for byte', async () => {
    const { page } = await openReady(pages);
    await drop(page, 'belt.yaml', OTHER);
    await expect.poll(() => heading(page)).toBe(libraryRun(OTHER).view.scenario.title);
    await settled(page);
    expect(await editor(page).inputValue()).toBe(OTHER);
    expect(await page.locator('.finding').textContent()).toBe(libraryRun(OTHER).view.finding);
    const file = await saved(page, () => button(page, 'Save as .yaml').click());
    expect(file.name).toBe('belt.yaml');
    expect(file.text).toBe(OTHER);
  });

  it('one whose lines end in a carriage return alone is opened with those of today, which is said', async () => {
    const { page } = await openReady(pages);
    await drop(page, 'old.yaml', OTHER.replaceAll('\n', '\r'));
    await expect.poll(() => heading(page)).toBe(libraryRun(OTHER).view.scenario.title);
    expect(await editor(page).inputValue()).toBe(OTHER);
    await page.getByText('line ends of this file').waitFor();
  });

  it('one changed by a hand is saved with that line changed and every other byte as it was', async () => {
    const { page } = await openReady(pages);
    await chooseTask(page, 'Change');
    const field = page.getByLabel('Load inertia, number with unit');
    await field.fill('0.2 kg m^2');
    await field.press('Enter');
    await settled(page);
    await chooseTask(page, 'Files');
    const file = await saved(page, () => button(page, 'Save as .yaml').click());
    const lines = file.text.split('\n');
    const changed = EXAMPLE.split('\n').flatMap((line, i) => (line === lines[i] ? [] : [[line, lines[i]]]));
    expect(changed).toEqual([
      ['  inertia: 0.16 kg m^2 # blade and arbor', '  inertia: 0.2 kg m^2 # blade and arbor'],
    ]);
    expect(lines).toHaveLength(EXAMPLE.split('\n').length);
  });

  it('each error is listed with its line and column, its button puts the caret there, and the last run stays, marked', async () => {
    const { page } = await openReady(pages);
    const before = await runShown(page);
    const bad = EXAMPLE.replace('lineVoltage: 400 V', 'lineVoltage: 400')
      .replace('inertia: 0.036 kg m^2', 'inertia: heavy')
      .replace('closingTime: 18 ms', 'closingTme: 18 ms');
    await drop(page, 'bad.yaml', bad);
    const expected = problemsOf(bad);
    expect(expected.length).toBeGreaterThanOrEqual(3);
    await problems(page).waitFor();
    const items = problems(page).getByRole('listitem');
    await expect.poll(() => items.allTextContents()).toEqual(expected.map(placeWords));
    expect(await editor(page).inputValue()).toBe(bad);
    for (const [i, { line, column }] of expected.entries()) {
      await items.nth(i).getByRole('button').click();
      const place = await editor(page).evaluate((area: HTMLTextAreaElement) => {
        const head = area.value.slice(0, area.selectionStart).split('\n');
        return {
          line: head.length,
          column: (head.at(-1)?.length ?? 0) + 1,
          here: document.activeElement === area,
        };
      });
      expect(place).toEqual({ line, column, here: true });
    }
    expect(await runShown(page)).toBe(before);
    const marked = page.getByText(/pictures.* still .* the last one that was/iu);
    expect(await marked.isVisible()).toBe(true);

    await editor(page).fill(EXAMPLE);
    await button(page, 'Apply').click();
    await settled(page);
    expect(await problems(page).count()).toBe(0);
    expect(await marked.count()).toBe(0);
  });

  it.each([
    ['bytes that are no text', 'photo.yaml', [0x89, 0x50, 0x4e, 0x47, 0xff, 0xfe, 0, 1], /not text/u],
    ['two megabytes', 'large.yaml', 'x'.repeat(2 ** 21), /2097152 bytes/u],
  ] as const)('of %s nothing is opened, and it is said why', async (_, name, content, words) => {
    const { page } = await openReady(pages);
    const before = await runShown(page);
    await drop(page, name, content);
    await problems(page).waitFor();
    expect(await problems(page).textContent()).toMatch(words);
    expect(await problems(page).textContent()).toContain(name);
    expect(await editor(page).inputValue()).toBe(EXAMPLE);
    expect(await runShown(page)).toBe(before);
    // A good one after it clears the words away.
    await drop(page, 'good.yaml', OTHER);
    await expect.poll(() => heading(page)).toBe(libraryRun(OTHER).view.scenario.title);
    expect(await problems(page).count()).toBe(0);
  });

  it.each([
    ['nothing', 'empty.yaml', ''],
    ['anchors and aliases', 'anchors.yaml', EXAMPLE.replace('0.16 kg m^2', '&j 0.16 kg m^2')],
    [
      'YAML that does not close',
      'open.yaml',
      EXAMPLE.replace('speed: 1455 rpm, current: 14.6 A }', 'speed: '),
    ],
    ['a web page', 'page.yaml', '<!doctype html><script>alert(1)</script>'],
  ] as const)('a file of %s is refused with the words of the parser', async (_, name, content) => {
    const { page } = await openReady(pages);
    const before = await runShown(page);
    await drop(page, name, content);
    await problems(page).waitFor();
    const items = problems(page).getByRole('listitem');
    const said = (await items.allTextContents()).join('\n');
    for (const problem of problemsOf(content)) expect(said).toContain(problem.message);
    expect(await runShown(page)).toBe(before);
  });

  it('markup in title and description is text, on the page and in the files it makes', async () => {
    const hostile = '<img src=x onerror="alert(1)"><script>alert(2)</script>&amp;';
    const text = OTHER.replace(/^title: .*$/mu, `title: '${hostile}'`).replace(
      /^description: .*(?:\n {2}.*)*$/mu,
      `description: '${hostile}'`,
    );
    const { page, complaints } = await openReady(pages);
    const elements = () => page.evaluate(() => document.querySelectorAll('img, script:not([src])').length);
    const before = await elements();
    await drop(page, 'hostile.yaml', text);
    await expect.poll(() => heading(page)).toBe(hostile);
    await settled(page);
    for (const task of ['Push buttons', 'Change', 'Class', 'Files'] as const) {
      await chooseTask(page, task);
      expect(await elements()).toBe(before);
    }
    await chooseTask(page, 'Class');
    await button(page, 'Begin here').click();
    await page.getByRole('heading', { name: 'Your task' }).waitFor();
    expect(await elements()).toBe(before);
    const sheet = await saved(page, () => button(page, 'Answer sheet to print').click());
    expect(sheet.text).not.toMatch(/<img|<script/iu);
    expect(complaints).toEqual([]);
  });
});

describe('files that the page makes', () => {
  const VIEWS = [
    {
      kind: 'Commissioning sheet',
      example: 'what-happens-after-the-stop-button.yaml',
      args: ['sheet', 'run.yaml', '--out', 'out'],
    },
    {
      kind: 'Calculation note',
      example: 'what-does-a-full-reversal-cost.yaml',
      args: ['suitability', 'run.yaml', '--out', 'out'],
    },
    {
      kind: 'Report of the run',
      example: 'what-does-a-full-reversal-cost.yaml',
      args: ['run.yaml', '--out', 'out'],
    },
  ] as const;

  it.each(forms(VIEWS, VIEWS.slice(0, 1)))(
    '$kind: the same content as the command line makes of the text',
    async ({ kind, example, args }) => {
      const { page, context, complaints } = await openReady(pages);
      const text = exampleText(example);
      await drop(page, 'run.yaml', text);
      await expect.poll(() => editor(page).inputValue()).toBe(text);
      await settled(page);
      await button(page, kind).click();
      const buttons = page.getByRole('button', { name: /^Save (?!as)/u });
      await buttons.first().waitFor();
      const folder = workFolder();
      writeInto(folder, 'run.yaml', text);
      const { exit, err } = await runCommand(folder, args);
      // 0: done; 4: done, and plugging does not suit.
      expect([0, 4], err).toContain(exit);
      for (const one of await buttons.all()) {
        const name = ((await one.textContent()) ?? '').replace(/^Save /u, '');
        const { text: content } = await saved(page, () => one.click());
        const made = readFileSync(path.join(folder, 'out', name), 'utf8');
        expect(unlike(content, made), name).toEqual([]);
        if (!name.endsWith('.html')) continue;
        const opened = await context.newPage();
        opened.on('pageerror', (error) => complaints.push(`${name}: ${error.message}`));
        opened.on('console', (message) => {
          if (message.type() === 'error') complaints.push(`${name}: ${message.text()}`);
        });
        writeInto(folder, 'saved.html', content);
        await opened.goto(pathToFileURL(path.join(folder, 'saved.html')).href);
        expect(await opened.locator('h1').count()).toBe(1);
        await opened.close();
      }
    },
  );

  it('are still there after a look at another task', async () => {
    const { page } = await openReady(pages);
    await chooseTask(page, 'Files');
    await button(page, 'Commissioning sheet').click();
    const made = page.getByRole('button', { name: /^Save (?!as)/u });
    await made.first().waitFor();
    const count = await made.count();
    await chooseTask(page, 'Change');
    await chooseTask(page, 'Files');
    expect(await made.count()).toBe(count);
    await drop(page, 'belt.yaml', OTHER);
    await expect.poll(() => made.count()).toBe(0);
  });

  it('nothing is offered for a text that cannot be run', async () => {
    const { page } = await openReady(pages);
    await drop(page, 'bad.yaml', EXAMPLE.replace('400 V', '400'));
    await problems(page).waitFor();
    for (const { kind } of VIEWS) expect(await button(page, kind).isDisabled()).toBe(true);
  });

  it('a sheet of a starter without a control circuit is refused in words', async () => {
    const { page } = await openReady(pages);
    await drop(page, 'belt.yaml', OTHER);
    await expect.poll(() => heading(page)).toBe(libraryRun(OTHER).view.scenario.title);
    await button(page, 'Commissioning sheet').click();
    await page.locator('.downloads').getByText('no control circuit').waitFor();
  });

  it('a picture is saved as drawing, pixels and numbers', async () => {
    const { page } = await openReady(pages);
    const figure = page.locator('.time-picture');
    await figure.getByText('Save', { exact: true }).click();
    const svg = await saved(page, () => figure.getByRole('button', { name: /SVG/u }).click());
    expect(svg.text).toMatch(/^(?:<\?xml[^>]*>\s*)?<svg /u);
    const png = await saved(page, () => figure.getByRole('button', { name: /PNG/u }).click());
    expect([...png.bytes.subarray(0, 4)]).toEqual([0x89, 0x50, 0x4e, 0x47]);
    const csv = await saved(page, () => figure.getByRole('button', { name: /CSV/u }).click());
    expect(csv.text.split('\n').length).toBeGreaterThan(100);
  });
});
