import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { builtPages, PROJECTOR, TELEPHONE } from '../../support/builtPage.ts';
import { exampleText } from '../../support/examples.ts';
import { forms } from '../../support/longForms.ts';
import {
  applyText,
  axeViolations,
  button,
  chooseTask,
  hand,
  instant,
  openReady,
  playButton,
  push,
  seekEnd,
  settled,
  TASK_NAMES,
} from '../../support/pageDriver.ts';

const pages = builtPages();

const SCREENS = [
  { screen: 'projector', viewport: PROJECTOR, themes: ['light', 'dark'] as const },
  { screen: 'telephone', viewport: TELEPHONE, themes: forms(['light', 'dark'] as const, ['dark'] as const) },
] as const;

/** What axe finds, with the name of what is looked at before it. */
async function found(page: Page, what: string): Promise<string[]> {
  return (await axeViolations(page)).map((violation) => `${what}: ${violation}`);
}

describe.each(SCREENS)('on a $screen', ({ viewport, themes }) => {
  it.each(themes)('axe finds no violation in any task, %s', async (colorScheme) => {
    const { page } = await openReady(pages, { viewport, colorScheme });
    const violations: string[] = [];
    for (const task of TASK_NAMES) {
      await chooseTask(page, task);
      if (task === 'Judge') await hand(page).getByRole('table').first().waitFor();
      violations.push(...(await found(page, task)));
    }
    expect(violations).toEqual([]);
  });

  it('nothing is wider than the screen', async () => {
    const { page } = await openReady(pages, { viewport });
    for (const task of TASK_NAMES) {
      await chooseTask(page, task);
      const width = await page.evaluate(() => document.documentElement.scrollWidth);
      expect(width, task).toBeLessThanOrEqual(viewport.width);
    }
  });
});

it.each(forms(['light', 'dark'] as const, ['light'] as const))(
  'axe finds nothing when a run is refused, pinned, or covered, %s',
  async (colorScheme) => {
    const { page } = await openReady(pages, { colorScheme });
    const violations: string[] = [];
    await chooseTask(page, 'Change');
    await button(page, 'Pin this run').click();
    await page.locator('[data-adjustable=loadInertia] input[type=range]').press('PageUp');
    await settled(page);
    violations.push(...(await found(page, 'pinned')));
    await applyText(page, exampleText('what-happens-after-the-stop-button.yaml').replace('400 V', '400'));
    await page.getByRole('list', { name: 'Problems' }).waitFor();
    violations.push(...(await found(page, 'refused')));
    await applyText(page, exampleText('what-happens-after-the-stop-button.yaml'));
    await chooseTask(page, 'Class');
    await button(page, 'Begin here').click();
    await page.getByRole('heading', { name: 'Your task' }).waitFor();
    violations.push(...(await found(page, 'covered')));
    await page.locator('.questions input').first().fill('nonsense');
    violations.push(...(await found(page, 'guess not understood')));
    await button(page, 'Reveal all answers').click();
    await page.locator('canvas').first().waitFor();
    violations.push(...(await found(page, 'revealed')));
    expect(violations).toEqual([]);
  },
);

it('in large print axe finds nothing either, and nothing is wider than the screen', async () => {
  const { page } = await openReady(pages);
  await page.getByRole('banner').getByLabel('large print').check();
  expect(await found(page, 'large print')).toEqual([]);
  const width = await page.evaluate(() => document.documentElement.scrollWidth);
  expect(width).toBeLessThanOrEqual(PROJECTOR.width);
});

it('whoever asks for less motion sees nothing move by itself', async () => {
  const { page } = await openReady(pages, { reducedMotion: 'reduce' });
  await button(page, 'Start over').click();
  await settled(page);
  await push(page, 'Reset');
  await seekEnd(page);
  const pressed = await instant(page);
  await push(page, 'Forward');
  expect(await playButton(page).textContent()).toBe('Play');
  // What the hand did has happened: the cursor stands at its end at once, instead of moving there.
  const before = await instant(page);
  expect(Number.parseFloat(before)).toBeGreaterThan(Number.parseFloat(pressed));
  // Some pictures of the display later it still stands where it was.
  await page.evaluate(async () => {
    for (let i = 0; i < 20; i++) await new Promise((resolve) => requestAnimationFrame(resolve));
  });
  expect(await instant(page)).toBe(before);
  expect(await page.evaluate(() => document.getAnimations().length)).toBe(0);
  // What is asked for moves all the same.
  await playButton(page).click();
  await expect.poll(() => instant(page)).not.toBe(before);
});
