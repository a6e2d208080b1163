import { describe, expect, it } from 'vitest';
import { displayWidth } from '../../../src/report/displayWidth.ts';
import { renderWearJson } from '../../../src/report/renderWearJson.ts';
import { renderWearTerminal } from '../../../src/report/renderWearTerminal.ts';
import type { WearFile } from '../../../src/report/wearFile.ts';
import type { WearReport } from '../../../src/report/wearReport.ts';
import { HOSTILE_TEXTS } from './hostile.ts';

const basis = { generic: true, lowFactor: 0.25, highFactor: 4, origin: 'generic curve' };

const REPORT: WearReport = {
  scenario: { title: 'Belt' },
  logName: 'log.csv',
  asOf: '2026-03-01',
  basis: { forward: basis, reverse: { ...basis, generic: false } },
  method: 'Mean over 13 runs.',
  wear: {
    counts: { start: 30, stop: 0, plugStop: 29, reversal: 0, inch: 1 },
    first: '2026-01-01',
    last: '2026-03-01',
    contactors: {
      forward: {
        used: null,
        left: null,
        replacement: null,
        missing: ['wear is not known because the wear of inching is missing'],
      },
      reverse: {
        used: { value: 0.25, low: 0.0625, high: 0.5 },
        left: { value: 0.75, low: 0.5, high: 0.9375 },
        replacement: { value: '2026-08-25', low: '2026-04-30', high: null },
        missing: [],
      },
    },
    remarks: ['the contacts are taken as new at the first line of the log'],
  },
};

const page = (text: string) => text.replaceAll(/\s+/gu, ' ');

describe('the wear of a log in the terminal', () => {
  it('names first what is used up most, and says what is not judged and why', () => {
    const text = page(renderWearTerminal(REPORT, { colour: false }));
    expect(text).toContain('The contacts of the reverse contactor are used up most: 25 %, range 6.3 to 50 %');
    expect(text).toContain('nothing is left on 2026-08-25. The wear of the other contactor is not known.');
    expect(text).toContain('30 × start, 29 × plug stop, 1 × inch');
    expect(text).toContain('Forward contactor: used not judged');
    expect(text).toContain('Not judged, forward contactor: wear is not known because the wear of inching');
    // 30 days of March, 30 + 31 + 30 + 31 of April to July, 25 of August: 177 days.
    expect(text).toContain('177 days away');
  });

  it('asks for new contacts where nothing is left', () => {
    const used = { value: 1.2, low: 0.6, high: 2.4 };
    const none = { value: 0, low: 0, high: 0.4 };
    const reverse = { ...REPORT.wear.contactors.reverse, used, left: none };
    const report = {
      ...REPORT,
      wear: { ...REPORT.wear, contactors: { ...REPORT.wear.contactors, reverse } },
    };
    const text = page(renderWearTerminal(report, { colour: false }));
    expect(text).toContain('are used up by this reckoning (120 %, range 60 to 240 %): replace them.');
    expect(renderWearTerminal(report, { colour: true })).toContain('\u001B[1;31m');
  });

  it('tells small shares with two significant digits, and what is left as finely', () => {
    const used = { value: 0.000189, low: 0.0000948, high: 0.00047 };
    const left = { value: 1 - used.value, low: 1 - used.high, high: 1 - used.low };
    const reverse = { ...REPORT.wear.contactors.reverse, used, left };
    const contactors = { ...REPORT.wear.contactors, reverse };
    const text = page(
      renderWearTerminal({ ...REPORT, wear: { ...REPORT.wear, contactors } }, { colour: false }),
    );
    expect(text).toContain('are used up most: 0.019 %, range 0.0095 to 0.047 %');
    // 100 less 0.0189, 0.047 and 0.00948
    expect(text).toContain('Reverse contactor: left 99.981 % range 99.953 to 99.9905 %');
  });

  it.each([
    ['2056-02-01', 'at this rhythm nothing is left on 2056-02-01.'],
    // 30 years are planned for; the day after them is not named, nor is one beyond the calendar.
    ['2063-01-01', 'at this rhythm the contacts last beyond 2056-02-'],
    [null, 'at this rhythm the contacts last beyond 2056-02-'],
  ])('says what a rhythm leads to: %s', (value, words) => {
    const replacement = { value, low: value, high: value };
    const reverse = { ...REPORT.wear.contactors.reverse, replacement };
    const contactors = { ...REPORT.wear.contactors, reverse };
    const report = { ...REPORT, wear: { ...REPORT.wear, contactors } };
    expect(page(renderWearTerminal(report, { colour: false }))).toContain(words);
  });

  it.each(HOSTILE_TEXTS)('keeps to 80 columns and lets no control through: %j', (title) => {
    const text = renderWearTerminal({ ...REPORT, scenario: { title }, logName: title }, { colour: false });
    for (const line of text.split('\n')) expect(displayWidth(line)).toBeLessThanOrEqual(80);
    expect(text.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\u202A-\u202E\u2066-\u2069]/u);
  });
});

it('the JSON carries ranges, days left, and reasons in place of numbers', () => {
  const data: WearFile = JSON.parse(renderWearJson(REPORT, { version: '1' }));
  expect(data.contactors.reverse).toEqual({
    used: { value: 0.25, low: 0.0625, high: 0.5 },
    left: { value: 0.75, low: 0.5, high: 0.9375 },
    replacement: { value: '2026-08-25', low: '2026-04-30', high: null },
    daysLeft: 177,
    generic: false,
    basis: 'generic curve',
    missing: [],
  });
  expect(data.contactors.forward).toMatchObject({ used: null, daysLeft: null, generic: true });
  expect(data.contactors.forward.missing[0]).toContain('inching');
});
