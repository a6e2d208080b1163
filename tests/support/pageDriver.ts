import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Locator, Page } from 'playwright-core';
import { expect } from 'vitest';
import { type MetricKey, parseScenarioWithOrigins, type RunResult, simulate } from '../../src/index.ts';
import type { UnitSystem } from '../../src/report/formatQuantity.ts';
import { metricLabel } from '../../src/report/keyNumbers.ts';
import type { RunView } from '../../src/report/live/runView.ts';
import { runViewOf } from '../../src/report/live/runViewOf.ts';
import type { BuiltPages, OpenOptions, OpenPage } from './builtPage.ts';

/** Names of the page's tasks. */
export type TaskName = 'Push buttons' | 'Change' | 'Judge' | 'Class' | 'Files';

/** The tasks in the order of their buttons. */
export const TASK_NAMES: readonly TaskName[] = ['Push buttons', 'Change', 'Judge', 'Class', 'Files'];

/** Waits until the newest input has been run and what came of it is shown. */
export async function settled(page: Page): Promise<void> {
  await page.locator('main[aria-busy=false]').waitFor();
}

/** ms */
const PATIENCE = 20_000;

/** Opens the page and waits for its first run; a dialog is a complaint like any other. */
export async function openReady(pages: BuiltPages, options: OpenOptions = {}): Promise<OpenPage> {
  const opened = await pages.open(options);
  // Whatever does not come within this long does not come; the test then still says what it waited for.
  opened.page.setDefaultTimeout(PATIENCE);
  opened.page.on('dialog', (dialog) => {
    opened.complaints.push(`dialog: ${dialog.message()}`);
    void dialog.dismiss();
  });
  await settled(opened.page);
  return opened;
}

/** Turns to a task. */
export async function chooseTask(page: Page, task: TaskName): Promise<void> {
  await page.getByRole('navigation').getByRole('button', { name: task, exact: true }).click();
}

/** What the left column shows. */
export function hand(page: Page): Locator {
  return page.getByRole('region', { name: 'What you do' });
}

/** A button anywhere on the page by its whole name. */
export function button(page: Page, name: string): Locator {
  return page.getByRole('button', { name, exact: true });
}

/** The scenario's text as the editor shows it; leaves the page at Files. */
export async function scenarioText(page: Page): Promise<string> {
  await chooseTask(page, 'Files');
  return page.locator('#scenario-text').inputValue();
}

/** Writes a text into the editor and applies it; leaves the page at Files. */
export async function applyText(page: Page, text: string): Promise<void> {
  await chooseTask(page, 'Files');
  const editor = page.locator('#scenario-text');
  if ((await editor.inputValue()) === text) return;
  await editor.fill(text);
  await button(page, 'Apply').click();
  await settled(page);
}

/** Presses a button of the station and waits for the run that comes of it. */
export async function push(page: Page, name: string): Promise<void> {
  await page.locator('.buttons').getByRole('button', { name, exact: true }).click();
  await settled(page);
}

/** Moves to the end of the run. */
export async function seekEnd(page: Page): Promise<void> {
  await page.getByLabel('Instant of the run').press('End');
  await expect.poll(() => playButton(page).textContent()).toBe('Play');
}

/** The button that says Play while nothing moves and Pause while it does. */
export function playButton(page: Page): Locator {
  return page.locator('.transport-play');
}

/** The instant of the playhead in words. */
export async function instant(page: Page): Promise<string> {
  return (await page.locator('.transport-time').textContent()) ?? '';
}

/** A value under the cursor, as it is shown and as a number in the unit that is shown. */
export async function reading(
  page: Page,
  panel: string,
  label: string,
): Promise<{ readonly text: string; readonly value: number }> {
  const text =
    (await page
      .locator('.readouts > div')
      .filter({ has: page.locator('dt', { hasText: panel }) })
      .locator('dd')
      .filter({ hasText: label })
      .locator('.readouts-value')
      .textContent()) ?? '';
  return { text, value: Number.parseFloat(text.replaceAll('−', '-').replaceAll(/\s/gu, '')) };
}

/** One figure of the page's table. */
export interface ShownNumber {
  readonly key: MetricKey;
  /** SI as text, '' where there is none. */
  readonly value: string;
  readonly label: string;
  readonly text: string;
}

/** Every figure of the page's table, in its order. */
export function shownNumbers(page: Page): Promise<ShownNumber[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll<HTMLDataElement>('data[data-key]')].map((data) => ({
      key: (data.dataset.key ?? '') as MetricKey,
      value: data.value,
      label: data.closest('tr')?.querySelector('summary')?.textContent ?? '',
      text: data.textContent,
    })),
  );
}

/** What the library makes of a text: the same functions as behind the command line. */
export interface LibraryRun {
  readonly result: RunResult;
  readonly view: RunView;
}

/** Runs a text in this process. */
export function libraryRun(text: string, units: UnitSystem = 'SI'): LibraryRun {
  const { scenario } = parseScenarioWithOrigins(text, { fileName: 'scenario.yaml' });
  const result = simulate(scenario);
  return { result, view: runViewOf(result, units) };
}

/** The page's numbers are the command line's, relative. */
const SAME = 1e-9;
/** SI; what is smaller is zero up to rounding. */
const NOTHING = 1e-12;
/** Share of the throughput up to which the energy ledger is taken to close. */
const CLOSES = 1e-6;

/**
 * What the energy ledger leaves over, as a share: the sum of all errors of rounding and nothing else, so that no digit of it survives
 * another processor. It is compared as the share that it is.
 */
const REMAINDER_KEY: MetricKey = 'ledgerResidual';

/** What is wrong with a number on the page, '' where it is the expected one; null stands for a figure that the run does not have. */
export function difference(shown: string, expected: number | null, key: MetricKey): string {
  if (expected === null || shown === '')
    return (expected === null) === (shown === '') ? '' : `${key}: ${shown} for ${expected}`;
  const error = Math.abs(Number(shown) - expected);
  const allowed = key === REMAINDER_KEY ? CLOSES : NOTHING + SAME * Math.abs(expected);
  return error <= allowed ? '' : `${key}: ${shown} for ${expected}, ${error / Math.abs(expected)} off`;
}

/** Name of the ledger's remainder. */
export const REMAINDER = metricLabel(REMAINDER_KEY).label;

/** Label and text of every row but that of the ledger's remainder. */
export function textsOf(rows: readonly { readonly label: string; readonly text: string }[]): string[] {
  return rows.filter(({ label }) => label !== REMAINDER).map(({ label, text }) => `${label}: ${text}`);
}

/** How the page's table differs from the library's for a run: numbers beyond 1e-9 and every other letter. */
export async function tableDifferences(page: Page, { result, view }: LibraryRun): Promise<string[]> {
  const shown = await shownNumbers(page);
  const wanted = textsOf(view.numbers.flatMap((group) => group.rows));
  const texts = textsOf(shown);
  return [
    ...(texts.length === wanted.length ? [] : [`${texts.length} rows for ${wanted.length}`]),
    ...texts.flatMap((text, i) => (text === wanted[i] ? [] : [`"${text}" for "${wanted[i]}"`])),
    ...shown.map(({ key, value }) => difference(value, result.metrics[key].value, key)),
  ].filter((one) => one !== '');
}

/** A file that the page hands over. */
export interface SavedFile {
  readonly name: string;
  readonly bytes: Buffer;
  readonly text: string;
}

/** Does something that saves a file and returns the file. */
export async function saved(page: Page, doing: () => Promise<unknown>): Promise<SavedFile> {
  const [download] = await Promise.all([page.waitForEvent('download'), doing()]);
  const bytes = readFileSync(await download.path());
  return { name: download.suggestedFilename(), bytes, text: bytes.toString('utf8') };
}

/** Drops a file onto the page as a hand would. */
export async function drop(page: Page, name: string, content: string | readonly number[]): Promise<void> {
  await page.evaluate(
    ([fileName, data]) => {
      const part = typeof data === 'string' ? data : new Uint8Array(data);
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([part], fileName));
      for (const type of ['dragover', 'drop'])
        document.body.dispatchEvent(new DragEvent(type, { dataTransfer, bubbles: true, cancelable: true }));
    },
    [name, content] as const,
  );
}

/** What axe finds wrong by all its rules, as `rule: elements`; nothing is left out. */
export async function axeViolations(page: Page): Promise<string[]> {
  const axe = createRequire(import.meta.url)('axe-core') as typeof import('axe-core');
  // Evaluated from outside: the page's policy would not let a script element in.
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(axe.source);
  return page.evaluate(async () => {
    const { axe } = globalThis as typeof globalThis & { axe: typeof import('axe-core') };
    const { violations } = await axe.run({ resultTypes: ['violations'] });
    return violations.map(
      ({ id, nodes }) =>
        `${id}: ${nodes.map(({ html, failureSummary }) => `${html} ${failureSummary ?? ''}`).join(' | ')}`,
    );
  });
}

/** Number of pages of a PDF. */
export function pdfPages(pdf: Buffer): number {
  return pdf.toString('latin1').match(/\/Type\s*\/Page\b/gu)?.length ?? 0;
}
