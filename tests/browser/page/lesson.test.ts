import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { answersOf } from '../../../src/report/lesson/answers.ts';
import { judgeGuess } from '../../../src/report/lesson/judgeGuess.ts';
import { QUESTIONS, type QuestionKey } from '../../../src/report/lesson/question.ts';
import { builtPages, type OpenOptions, PROJECTOR, TELEPHONE } from '../../support/builtPage.ts';
import { exampleText } from '../../support/examples.ts';
import {
  applyText,
  button,
  chooseTask,
  hand,
  libraryRun,
  openReady,
  pdfPages,
  saved,
  settled,
  shownNumbers,
} from '../../support/pageDriver.ts';
import { workFolder, writeInto } from '../../support/workFolder.ts';

const pages = builtPages();

const EXAMPLE = exampleText('what-happens-after-the-stop-button.yaml');

/** A judgement of the example takes a second, ms. */
const JUDGED_WITHIN = 4000;

/** Opens the page and begins a lesson of predictions there. */
async function begun(options: OpenOptions = {}): Promise<Page> {
  const { page } = await openReady(pages, options);
  await chooseTask(page, 'Class');
  await button(page, 'Begin here').click();
  await page.getByRole('heading', { name: 'Your task' }).waitFor();
  await settled(page);
  return page;
}

it('before it is revealed no picture and no number of the run is in the document; afterwards all are', async () => {
  const page = await begun();
  const { view } = libraryRun(EXAMPLE);
  const answers = answersOf(view);
  expect(answers.size).toBeGreaterThanOrEqual(5);
  const all = async () =>
    (await page.locator('html').evaluate((html) => html.outerHTML)).replaceAll('&nbsp;', ' ');
  const covered = async () => {
    expect(
      await page.locator('canvas, data[data-key], data[data-key-number], .readouts, .finding').count(),
    ).toBe(0);
    const html = await all();
    expect(html).not.toContain(view.finding);
    for (const [key, answer] of answers)
      if (answer.question.kind === 'number') expect(html, key).not.toContain(answer.text);
  };
  await covered();

  const questions = page.locator('.questions > li');
  await questions.filter({ hasText: 'highest current' }).locator('input').fill('5 x rated');
  await questions.filter({ hasText: 'largest air-gap torque' }).locator('input').fill('300');
  await questions.filter({ hasText: 'parting of the contacts to zero' }).locator('input').fill('0,7 s');
  await covered();
  // One answer is seen; the run stays covered for the others, and the guess is locked.
  await button(page, 'Reveal the answer: Time to stop').click();
  const stop = questions.filter({ hasText: 'parting of the contacts to zero' });
  expect(await stop.textContent()).toContain(answers.get('stopTime')?.text);
  expect(await page.locator('canvas, data[data-key]').count()).toBe(0);
  expect(await stop.locator('input').isDisabled()).toBe(true);

  await button(page, 'Reveal all answers').click();
  await page.locator('canvas').first().waitFor();
  expect((await shownNumbers(page)).length).toBeGreaterThan(20);
  const outcomes = await questions.locator('.outcome').allTextContents();
  expect(outcomes).toHaveLength(answers.size);
  const outcome = (key: QuestionKey) => outcomes[[...answers.keys()].indexOf(key)] ?? '';
  for (const [key, { text }] of answers) expect(outcome(key)).toContain(text);
  const torque = answers.get('worstTorque')?.value ?? 0;
  expect(outcome('worstTorque')).toContain(judgeGuess(300, torque, QUESTIONS.worstTorque));
  expect(outcome('worstTorque')).toContain('wrong sign');
  expect(outcome('stopTime')).toContain('within 10 %');
});

it.each([
  ['a projector', PROJECTOR],
  ['a telephone', TELEPHONE],
] as const)('on %s nothing of the revealed questions is cut or scrolls sideways', async (_, viewport) => {
  const page = await begun({ viewport });
  await page.locator('.questions input').first().fill('250 A');
  await button(page, 'Reveal all answers').click();
  await page.locator('.outcome').first().waitFor();
  const wide = await page
    .locator('.questions, .questions *')
    .evaluateAll((list) =>
      list
        .filter((one) => one.clientWidth > 0 && one.scrollWidth > one.clientWidth + 1)
        .map((one) => one.outerHTML.slice(0, 80)),
    );
  expect(wide).toEqual([]);
});

it('a revealed answer stays, on the page and on the sheet, when another scenario is run', async () => {
  const page = await begun();
  await page.locator('.questions input').first().fill('250 A');
  await button(page, 'Reveal all answers').click();
  const before = await page.locator('.outcome').allTextContents();
  const sheet = () => saved(page, () => button(page, 'Answer sheet as CSV').click());
  const first = await sheet();
  await applyText(page, EXAMPLE.replace(/^title: .*$/mu, 'title: Another one').replace('400 V', '380 V'));
  await chooseTask(page, 'Class');
  expect(await page.locator('.outcome').allTextContents()).toEqual(before);
  expect((await sheet()).text).toBe(first.text);
});

it('while a text is refused the sheet is still about the run that is shown', async () => {
  const page = await begun();
  const sheet = () => saved(page, () => button(page, 'Answer sheet as CSV').click());
  const first = await sheet();
  await applyText(page, 'title: [');
  await chooseTask(page, 'Class');
  expect((await sheet()).text).toBe(first.text);
});

it('a link made before is taken away when what it is made of changes, and none is made of a refused text', async () => {
  const { page } = await openReady(pages);
  await chooseTask(page, 'Class');
  const link = page.getByLabel('Link, whole scenario and task included');
  await button(page, 'Make a link').click();
  await link.waitFor();
  await page.getByRole('checkbox', { name: 'Rotor heat' }).uncheck();
  await expect.poll(() => link.count()).toBe(0);
  expect(await page.getByText('The link is copied.').count()).toBe(0);
  await button(page, 'Make a link').click();
  await link.waitFor();
  await applyText(page, 'title: [');
  await chooseTask(page, 'Class');
  expect(await button(page, 'Make a link').isDisabled()).toBe(true);
  expect(await button(page, 'Begin here').isDisabled()).toBe(true);
  expect(await hand(page).textContent()).toContain('no scenario that can be run');
});

it('a task chosen meanwhile uncovers nothing, the judgement included', async () => {
  const page = await begun();
  const answers = answersOf(libraryRun(EXAMPLE).view);
  for (const task of ['Push buttons', 'Change', 'Judge', 'Files'] as const) {
    await chooseTask(page, task);
    const text = (await page.locator('body').textContent()) ?? '';
    for (const key of ['peakCurrent', 'worstTorque', 'stopTime'] as const)
      expect(text, `${key} under ${task}`).not.toContain(answers.get(key)?.text);
    expect(await page.locator('canvas').count(), task).toBe(0);
  }
  await chooseTask(page, 'Judge');
  // The judgement of a covered run would tell its figures; it must not come however long one waits.
  await page
    .locator('.judge .criteria')
    .waitFor({ timeout: JUDGED_WITHIN })
    .catch(() => undefined);
  expect(await page.locator('.judge .criteria').count()).toBe(0);
});

it('predictions and answers are saved as one sheet, in which no field can become a formula', async () => {
  const page = await begun();
  await page.getByLabel('Your name').fill('=HYPERLINK("x")');
  await page.locator('.questions input').first().fill('250 A');
  await button(page, 'Reveal all answers').click();
  const { name, text } = await saved(page, () => button(page, 'Answer sheet as CSV').click());
  expect(name).toBe('answer-sheet.csv');
  const [head, ...lines] = text.trimEnd().split('\r\n');
  expect(head).toBe('part,item,student,run,comparison');
  expect(lines.find((line) => line.includes('HYPERLINK'))).toContain("'=HYPERLINK");
  const questions = lines.filter((line) => line.startsWith('question,'));
  expect(questions).toHaveLength(answersOf(libraryRun(EXAMPLE).view).size);
  expect(questions[0]).toContain('250 A crest');
  expect(questions[0]).toContain(answersOf(libraryRun(EXAMPLE).view).get('peakCurrent')?.text);
});

it('the sheet before revealing holds the predictions and no answer', async () => {
  const page = await begun();
  await page.locator('.questions input').first().fill('250 A');
  const { text } = await saved(page, () => button(page, 'Answer sheet as CSV').click());
  expect(text).toContain('250 A crest');
  for (const { question, text: answer } of answersOf(libraryRun(EXAMPLE).view).values())
    if (question.kind === 'number') expect(text).not.toContain(answer.replaceAll('−', '-'));
});

it('the handout prints questions and axes on one sheet and the answers on another, without any script', async () => {
  const { page, context, complaints } = await openReady(pages);
  await chooseTask(page, 'Class');
  const { text } = await saved(page, () => button(page, 'Handout with answers').click());
  expect(text).not.toMatch(/<script/iu);
  const folder = workFolder();
  writeInto(folder, 'handout.html', text);
  const handout = await context.newPage();
  handout.on('console', (message) => complaints.push(message.text()));
  await handout.goto(pathToFileURL(path.join(folder, 'handout.html')).href);
  expect(await handout.locator('svg').count()).toBeGreaterThan(0);
  const content = (await handout.locator('body').textContent()) ?? '';
  for (const { question, text: answer } of answersOf(libraryRun(EXAMPLE).view).values()) {
    expect(content).toContain(question.sentence);
    expect(content).toContain(answer);
  }
  for (const format of ['A4', 'Letter'])
    expect(pdfPages(await handout.pdf({ format })), format).toBeGreaterThanOrEqual(2);
});
