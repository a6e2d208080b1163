import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { finding } from '../../../src/report/findings.ts';
import { applyEdits } from '../../../src/scenario/edit/applyEdits.ts';
import {
  FAULT_KINDS,
  FAULT_NAMES,
  type FaultField,
  type FaultKind,
  faultFields,
  newFault,
  withFaultField,
} from '../../../src/scenario/edit/faultFields.ts';
import type { StarterFault } from '../../../src/scenario/scenario.ts';
import { builtPages } from '../../support/builtPage.ts';
import { exampleText } from '../../support/examples.ts';
import { forms } from '../../support/longForms.ts';
import {
  applyText,
  button,
  chooseTask,
  libraryRun,
  openReady,
  scenarioText,
  settled,
  tableDifferences,
} from '../../support/pageDriver.ts';

const pages = builtPages();

/** s; a machine that stalls or coasts is not followed for longer. */
const END = 4;

const PLUG_STOP = applyEdits(exampleText('what-happens-after-the-stop-button.yaml'), [
  { kind: 'endTime', value: END },
]).text;

/** Both contactors of this one hold themselves in, so that each of their auxiliary contacts is there to fail. */
const REVERSING = PLUG_STOP.replace('scheme: plug to stop', 'scheme: reversing directly')
  .replace(/^ {4}memoryRelay: .*\n/mu, '')
  .replace(/^ {4}emergencyStop: .*\n/mu, '')
  .replace('do: press stop', 'do: press reverse');

type Choice = Extract<FaultField, { kind: 'choice' }>;

/** Every combination of what can be chosen about a kind of fault. */
function everyFault(kind: FaultKind): StarterFault[] {
  const first = newFault(kind);
  return faultFields(first)
    .filter((field): field is Choice => field.kind === 'choice')
    .reduce(
      (faults, { name, options }) =>
        faults.flatMap((fault) => Object.keys(options).map((value) => withFaultField(fault, name, value))),
      [first],
    );
}

const scenarioOf = (kind: FaultKind) => (kind === 'auxiliaryContact' ? REVERSING : PLUG_STOP);

/** Chooses a fault's fields in the one row of faults. */
async function chooseFields(page: Page, fault: StarterFault): Promise<void> {
  for (const field of faultFields(fault)) {
    if (field.kind !== 'choice') continue;
    const select = page.locator('.fault-fields').getByRole('combobox', { name: field.label, exact: true });
    if ((await select.inputValue()) === field.value) continue;
    await select.selectOption(field.value);
    await settled(page);
  }
}

/** What differs between the page and what the library makes of the text in the editor. */
interface Wrong {
  /** Sentences: the finding and what must be known first. */
  readonly words: string[];
  readonly numbers: string[];
}

async function compare(page: Page, text: string, name: string, wrong: Wrong): Promise<void> {
  const run = libraryRun(text);
  const said = [
    ...(await page.locator('.finding').allTextContents()),
    ...(await page.locator('.alarms p.alarm').allTextContents()),
  ];
  const wanted = [finding(run.result, 'SI'), ...run.view.alarms];
  if (said.join('\n') !== wanted.join('\n')) wrong.words.push(`${name}: ${said.join(' ')}`);
  wrong.numbers.push(...(await tableDifferences(page, run)).map((words) => `${name}: ${words}`));
}

/** A difference says the same in all forms of a fault: the first ones are enough to read. */
const READ = 12;

function expectNothing(wrong: Wrong): void {
  expect(wrong.words).toEqual([]);
  expect(wrong.numbers.slice(0, READ)).toEqual([]);
}

it('every fault, in its forms, shows what the library makes of it', async () => {
  const { page } = await openReady(pages);
  const wrong: Wrong = { words: [], numbers: [] };
  for (const kind of FAULT_KINDS) {
    const plain = scenarioOf(kind);
    await applyText(page, plain);
    await chooseTask(page, 'Change');
    await page.getByRole('combobox', { name: 'One more' }).selectOption({ label: FAULT_NAMES[kind] });
    await button(page, 'Add').click();
    await settled(page);
    const every = everyFault(kind);
    const some = [every[0]!, ...(every.length > 1 ? [every.at(-1)!] : [])];
    for (const fault of forms(every, some)) {
      await chooseFields(page, fault);
      const { text, refusal } = applyEdits(plain, [{ kind: 'faults', faults: [fault] }]);
      expect(refusal).toBeNull();
      await compare(page, text, JSON.stringify(fault), wrong);
    }
    // What was chosen is what is saved: the text says it as the library writes it.
    const last = every.at(-1);
    expect(await scenarioText(page)).toBe(
      applyEdits(plain, [{ kind: 'faults', faults: last === undefined ? [] : [last] }]).text,
    );
  }
  expectNothing(wrong);
});

it('a supply that comes back and one that goes earlier take their instants from the fields', async () => {
  const { page } = await openReady(pages);
  await applyText(page, PLUG_STOP);
  await chooseTask(page, 'Change');
  await page.getByRole('combobox', { name: 'One more' }).selectOption('supplyLost');
  await button(page, 'Add').click();
  await settled(page);
  const fields = page.locator('.fault-fields');
  await fields.getByLabel('Until (empty: never)').fill('1.25 s');
  await fields.getByLabel('Until (empty: never)').press('Enter');
  await settled(page);
  await fields.getByRole('textbox', { name: 'From', exact: true }).fill('1200 ms');
  await fields.getByRole('textbox', { name: 'From', exact: true }).press('Enter');
  await settled(page);
  const fault = { kind: 'supplyLost', from: 1.2, until: 1.25 } as const;
  const { text } = applyEdits(PLUG_STOP, [{ kind: 'faults', faults: [fault] }]);
  const wrong: Wrong = { words: [], numbers: [] };
  await compare(page, text, 'supply lost for 50 ms', wrong);
  expectNothing(wrong);
});

it('faults added without waiting for the runs between them are all there', async () => {
  const { page } = await openReady(pages);
  await applyText(page, PLUG_STOP);
  await chooseTask(page, 'Change');
  const kinds = ['lostPhase', 'deadPole', 'supplyLost'] as const;
  await page.evaluate((all) => {
    const select = document.querySelector<HTMLSelectElement>('.fault-add select');
    const add = document.querySelector<HTMLButtonElement>('.fault-add button');
    if (select === null || add === null) throw new Error('nothing to add faults with');
    for (const kind of all) {
      select.value = kind;
      select.dispatchEvent(new Event('change', { bubbles: true }));
      add.click();
    }
  }, kinds);
  await settled(page);
  expect(await page.locator('.faults li').count()).toBe(kinds.length);
  const { text } = applyEdits(PLUG_STOP, [{ kind: 'faults', faults: kinds.map(newFault) }]);
  expect(await scenarioText(page)).toBe(text);
});

it('a fault that the starter cannot have is refused in words, and nothing changes', async () => {
  const { page } = await openReady(pages);
  await chooseTask(page, 'Change');
  const before = await page.locator('.numbers').textContent();
  await page.getByRole('combobox', { name: 'One more' }).selectOption('auxiliaryContact');
  await button(page, 'Add').click();
  await settled(page);
  const fields = page.locator('.fault-fields');
  await fields.getByRole('combobox', { name: 'Contact', exact: true }).selectOption('holdIn');
  await settled(page);
  await fields.getByRole('combobox', { name: 'Contactor' }).selectOption('reverse');
  await settled(page);
  await page.getByRole('alert').getByText('hold-in contact that is not there').waitFor();
  // The list says what is run, not what was asked for.
  expect(await fields.getByRole('combobox', { name: 'Contactor' }).inputValue()).toBe('forward');
  await page.getByRole('button', { name: /^Take away/u }).click();
  await settled(page);
  expect(await page.locator('.numbers').textContent()).toBe(before);
  expect(await page.locator('.alarms').textContent()).not.toContain('hold-in contact');
});
