import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { builtPages } from '../../support/builtPage.ts';
import { longIt } from '../../support/longForms.ts';
import {
  button,
  hand,
  instant,
  openReady,
  playButton,
  reading,
  settled,
  TASK_NAMES,
  type TaskName,
} from '../../support/pageDriver.ts';

const pages = builtPages();

/** No task has more places that the tabulator stops at. */
const MOST_STOPS = 250;

/** What has the focus: its name, and how the eye finds it. */
interface Focus {
  readonly name: string;
  readonly visible: boolean;
}

function focus(page: Page): Promise<Focus> {
  return page.evaluate(() => {
    const at = document.activeElement;
    if (at === null || at === document.body) return { name: 'nothing', visible: false };
    const { outlineStyle, outlineWidth } = getComputedStyle(at);
    const { width, height } = at.getBoundingClientRect();
    const name = `${at.tagName} ${at.getAttribute('aria-label') ?? at.textContent?.trim().slice(0, 40)}`;
    return {
      name,
      visible: outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 1 && width > 0 && height > 0,
    };
  });
}

/** Goes on with the tabulator until something has the focus. */
async function tabTo(page: Page, target: Locator): Promise<void> {
  await target.waitFor();
  for (let i = 0; i < MOST_STOPS; i++) {
    if (await target.evaluate((element) => element === document.activeElement)) {
      expect(await focus(page)).toMatchObject({ visible: true });
      return;
    }
    await page.keyboard.press('Tab');
  }
  throw new Error(`the tabulator never comes to ${target}`);
}

/** Chooses a task from the top of the page. */
async function turnTo(page: Page, task: TaskName): Promise<void> {
  await tabTo(page, page.getByRole('navigation').getByRole('button', { name: task, exact: true }));
  await page.keyboard.press('Enter');
  await page.locator('[aria-current=page]', { hasText: task }).waitFor();
}

/** Asserts that the focus is not lost once everything has come to rest. */
async function keepsFocus(page: Page, after: string): Promise<void> {
  await settled(page);
  // What loses it by being taken away or disabled does so with the next picture of the display.
  await page.evaluate(async () => {
    for (let i = 0; i < 3; i++) await new Promise((resolve) => requestAnimationFrame(resolve));
  });
  expect((await focus(page)).name, `focus after ${after}`).not.toBe('nothing');
}

/** Goes to a button and presses it; the focus must not be lost by it. */
async function press(page: Page, target: Locator, key: 'Enter' | 'Space' = 'Enter'): Promise<void> {
  const name = (await target.textContent()) ?? '';
  await tabTo(page, target);
  await page.keyboard.press(key);
  await keepsFocus(page, name);
}

const timePicture = (page: Page) => page.getByRole('slider', { name: 'Time of the cursor' });
const scrub = (page: Page) => page.getByRole('slider', { name: 'Instant of the run' });

describe('with the keyboard alone', () => {
  it('every stop of the tabulator shows itself in every task, and they end', async () => {
    const { page } = await openReady(pages);
    const hidden: string[] = [];
    for (const task of TASK_NAMES) {
      await turnTo(page, task);
      if (task === 'Judge') await hand(page).getByRole('table').first().waitFor();
      await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
      let stops = 0;
      for (; stops < MOST_STOPS; stops++) {
        await page.keyboard.press('Tab');
        const { name, visible } = await focus(page);
        if (name === 'nothing') break;
        if (!visible) hidden.push(`${task}: ${name}`);
      }
      expect(stops, task).toBeGreaterThan(20);
      expect(stops, task).toBeLessThan(MOST_STOPS);
    }
    expect(hidden).toEqual([]);
  });

  it('the machine is started and plugged, with Enter and with the space bar', async () => {
    const { page } = await openReady(pages);
    const station = page.locator('.buttons');
    const machine = page.getByRole('region', { name: 'Motor and load' });
    await press(page, button(page, 'Start over'));
    await press(page, station.getByRole('button', { name: 'Reset', exact: true }));
    await tabTo(page, scrub(page));
    await page.keyboard.press('End');
    await press(page, station.getByRole('button', { name: 'Forward', exact: true }), 'Space');
    await tabTo(page, scrub(page));
    await page.keyboard.press('End');
    await expect.poll(() => machine.textContent()).toContain('forward');
    await press(page, station.getByRole('button', { name: 'Stop', exact: true }));
    await tabTo(page, scrub(page));
    await page.keyboard.press('End');
    await expect.poll(() => machine.textContent()).toContain('at rest');
  });

  it('time plays, stops, steps and is scrubbed', async () => {
    const { page } = await openReady(pages);
    await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
    await page.keyboard.press('Space');
    expect(await playButton(page).textContent()).toBe('Pause');
    await page.keyboard.press('Space');
    expect(await playButton(page).textContent()).toBe('Play');
    const before = await instant(page);
    await page.keyboard.press('.');
    const after = await instant(page);
    expect(Number.parseFloat(after)).toBeGreaterThan(Number.parseFloat(before));
    await page.keyboard.press(',');
    expect(await instant(page)).toBe(before);
    await tabTo(page, scrub(page));
    await page.keyboard.press('Home');
    await expect.poll(() => instant(page)).toBe('0.0000 s');
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => instant(page)).not.toBe('0.0000 s');
    await press(page, button(page, 'Next event'), 'Space');
    await press(page, button(page, 'Previous event'));
  });

  it('the cursor is moved along the picture, and the picture enlarged, reduced and shown whole', async () => {
    const { page } = await openReady(pages);
    await tabTo(page, timePicture(page));
    await page.keyboard.press('Home');
    const at = async () => Number(await timePicture(page).getAttribute('aria-valuenow'));
    const start = await at();
    await page.keyboard.press('ArrowRight');
    await expect.poll(at).toBeGreaterThan(start);
    const small = (await at()) - start;
    await page.keyboard.press('Shift+ArrowRight');
    await expect.poll(at).toBeGreaterThan(start + 5 * small);
    await expect.poll(() => timePicture(page).getAttribute('aria-valuetext')).toContain('r/min');
    const whole = page.locator('.stretches').getByRole('button', { name: 'whole run' });
    expect(await whole.getAttribute('aria-pressed')).toBe('true');
    await page.keyboard.press('+');
    await expect.poll(() => whole.getAttribute('aria-pressed')).toBe('false');
    await page.keyboard.press('Escape');
    await expect.poll(() => whole.getAttribute('aria-pressed')).toBe('true');
    await page.keyboard.press('+');
    await page.keyboard.press('-');
    await expect.poll(() => whole.getAttribute('aria-pressed')).toBe('true');
    await page.keyboard.press('End');
    expect((await reading(page, 'Speed', 'shaft')).text).not.toBe('');
    await keepsFocus(page, 'the cursor');
  });

  it('a quantity is turned, a number typed and taken back, a scheme chosen', async () => {
    const { page } = await openReady(pages);
    await turnTo(page, 'Change');
    const adjuster = page.locator('[data-adjustable=loadInertia]');
    const output = adjuster.locator('output');
    await tabTo(page, adjuster.getByRole('slider'));
    await page.keyboard.press('ArrowRight');
    await settled(page);
    await expect.poll(() => output.textContent()).not.toBe('0.160 kg·m²');
    const field = adjuster.getByRole('textbox');
    await tabTo(page, field);
    await page.keyboard.press('Control+a');
    await page.keyboard.type('heavy');
    await page.keyboard.press('Enter');
    await adjuster.getByRole('alert').waitFor();
    await page.keyboard.press('Escape');
    await expect.poll(() => adjuster.getByRole('alert').count()).toBe(0);
    await page.keyboard.press('Control+a');
    await page.keyboard.type('0.25 kg m^2');
    await page.keyboard.press('Enter');
    await expect.poll(() => output.textContent()).toBe('0.250 kg·m²');
    await keepsFocus(page, 'a typed number');
    await tabTo(page, page.getByRole('combobox', { name: 'Scheme' }));
    await page.keyboard.press('ArrowUp');
    await expect.poll(() => page.getByRole('combobox', { name: 'Scheme' }).inputValue()).toBe('direct');
    await keepsFocus(page, 'a scheme');
  });

  longIt('the explorable chart is opened', async () => {
    const { page } = await openReady(pages);
    await tabTo(page, page.getByText('Explore in detail', { exact: true }));
    await page.keyboard.press('Enter');
    await page.locator('.main-svg').first().waitFor();
    await keepsFocus(page, 'opening the chart');
  });
});

describe('the focus is not lost', () => {
  it('by pinning and unpinning', async () => {
    const { page } = await openReady(pages);
    await turnTo(page, 'Change');
    await press(page, button(page, 'Pin this run'));
    await press(page, button(page, 'Unpin'));
  });

  it('by adding a fault and taking it away', async () => {
    const { page } = await openReady(pages);
    await turnTo(page, 'Change');
    await press(page, button(page, 'Add'));
    await press(page, page.getByRole('button', { name: /^Take away/u }));
  });

  longIt('by applying what was written', async () => {
    const { page } = await openReady(pages);
    await turnTo(page, 'Files');
    await tabTo(page, page.locator('#scenario-text'));
    await page.keyboard.press('Control+Home');
    await page.keyboard.type('# mine\n');
    await press(page, button(page, 'Apply'));
  });

  longIt('by asking for files', async () => {
    const { page } = await openReady(pages);
    await turnTo(page, 'Files');
    await press(page, button(page, 'Commissioning sheet'));
    await page.getByRole('button', { name: 'Save sheet.html' }).waitFor();
    await keepsFocus(page, 'the sheet');
  });

  it('by beginning a lesson, revealing one answer, revealing all, and setting another task', async () => {
    const { page } = await openReady(pages);
    await turnTo(page, 'Class');
    await press(page, button(page, 'Begin here'));
    await tabTo(page, page.locator('.questions input').first());
    await page.keyboard.type('250');
    await press(page, button(page, 'Reveal the answer: Peak current'));
    await press(page, button(page, 'Reveal all answers'));
    await press(page, button(page, 'Set another task'));
  });

  longIt('by going from the strip to the judgement', async () => {
    const { page } = await openReady(pages);
    await press(page, button(page, 'why, and at other angles'));
  });
});
