import ICAL from 'ical.js';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { foldLine, renderPlanCalendar } from '../../../src/report/renderPlanCalendar.ts';
import { renderPlanCsv } from '../../../src/report/renderPlanCsv.ts';
import { renderPlanHtml } from '../../../src/report/renderPlanHtml.ts';
import { renderPlanTerminal } from '../../../src/report/renderPlanTerminal.ts';
import { planStarters } from '../../../src/survey/plan/planStarters.ts';
import type { StarterWear } from '../../../src/survey/plan/starterWear.ts';
import { day, planRow, type RowParts } from '../../support/planRows.ts';

/** 10 000 plug stops. */
const WEAR: StarterWear = {
  forward: { normal: 1e-6, plug: 1e-6, inch: 1e-3, lifeFactor: { low: 0.5, high: 2 } },
  reverse: { normal: 0, plug: 1e-4, inch: 0, lifeFactor: { low: 0.5, high: 2 } },
  origin: 'stated by hand',
  remarks: ['Assumed: a thing.'],
};
const AS_OF = day('2026-05-02');
const VERSION = { version: '1.2.3' };

const plan = (...parts: RowParts[]) => planStarters(parts.map(planRow), AS_OF, () => WEAR);

/** Changed on 2026-01-01, ten operations a day: expected 2028-09-27, earliest 2027-02-21, latest 2034-07-23. */
const ONE: RowParts = { tag: 'P1', description: 'pulper' };
const LACKING: RowParts = { tag: 'Q9', motor: { power: null } };
const OVERDUE: RowParts = { tag: 'old', duty: { contactsChanged: day('2022-01-01') } };
const NASTY = '<b>&"\',;\\n\u202E=x';

function eventsOf(text: string): InstanceType<typeof ICAL.Event>[] {
  const calendar = new ICAL.Component(ICAL.parse(text));
  return calendar.getAllSubcomponents('vevent').map((component) => new ICAL.Event(component));
}

describe('the calendar', () => {
  it('read by another program has a whole day for each starter', () => {
    const text = renderPlanCalendar(plan(ONE, LACKING), VERSION)!;
    const calendar = new ICAL.Component(ICAL.parse(text));
    expect(calendar.getFirstPropertyValue('version')).toBe('2.0');
    expect(calendar.getFirstPropertyValue('prodid')).toBe('-//countertorque//countertorque 1.2.3//EN');
    const [event, ...others] = eventsOf(text);
    expect(others).toEqual([]);
    expect(event!.startDate.isDate).toBe(true);
    expect(event!.startDate.toString()).toBe('2028-09-27');
    expect(event!.endDate.toString()).toBe('2028-09-28');
    expect(event!.summary).toBe('P1: replace contacts of the reversing contactor');
    expect(event!.component.getFirstPropertyValue('dtstamp')?.toString()).toBe('2026-05-02T00:00:00Z');
    expect(event!.description).toContain('P1, pulper: contacts of the reversing contactor.\n');
    expect(event!.description).toContain('Range: 2027-02-21 to 2034-07-23.\n');
    expect(event!.description).toContain(
      'Hangs most on: life of the contacts (stated by hand), × 0.5 to × 2:',
    );
  });

  it('brings hostile text back as it was, and cuts no line short', () => {
    const text = renderPlanCalendar(plan({ tag: `${NASTY} 電動機 ${'é'.repeat(60)}` }), VERSION)!;
    const [event] = eventsOf(text);
    // The mark that reorders text on screen is taken out, nothing else.
    expect(event!.summary).toBe(
      `<b>&"',;\\n=x 電動機 ${'é'.repeat(60)}: replace contacts of the reversing contactor`,
    );
    expect(text.endsWith('END:VCALENDAR\r\n')).toBe(true);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/u);
    for (const line of text.split('\r\n')) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
  });

  it('keeps a starter’s event the same when the plan is made anew, and different from every other', () => {
    const uids = (...parts: RowParts[]) =>
      eventsOf(renderPlanCalendar(plan(...parts), VERSION)!).map(({ uid }) => uid);
    const [first, second] = uids(ONE, { tag: 'p1' });
    expect(uids({ ...ONE, duty: { operationsPerDay: 20 } })).toEqual([first]);
    expect(second).not.toBe(first);
    expect(first).toMatch(/^starter-[A-Za-z0-9]{20,}@countertorque$/u);
    const sequence = (asOf: number) =>
      eventsOf(
        renderPlanCalendar(
          planStarters([planRow(ONE)], asOf, () => WEAR),
          VERSION,
        )!,
      )[0]!.sequence;
    expect(sequence(AS_OF + 1)).toBeGreaterThan(sequence(AS_OF));
  });

  it('shows what is overdue on the day of the plan', () => {
    const [event] = eventsOf(renderPlanCalendar(plan(OVERDUE), VERSION)!);
    expect(event!.startDate.toString()).toBe('2026-05-02');
    expect(event!.summary).toMatch(/^old: OVERDUE, replace/u);
    expect(event!.description).toContain('Overdue since 2024-09-27.');
  });

  it('is none where nothing falls within thirty years', () => {
    expect(renderPlanCalendar(plan({ duty: { operationsPerDay: 0.01 } }), VERSION)).toBeNull();
    expect(renderPlanCalendar(plan(LACKING), VERSION)).toBeNull();
  });

  it.each([
    ['75 octets stay', 'x'.repeat(75), ['x'.repeat(75)]],
    ['76 are folded', 'x'.repeat(76), ['x'.repeat(75), ' x']],
    // 74 octets and a letter of two.
    ['no letter is cut', `${'x'.repeat(74)}é`, ['x'.repeat(74), ' é']],
    ['nor one beyond the first plane', `${'x'.repeat(73)}\u{1F6E0}`, ['x'.repeat(73), ' \u{1F6E0}']],
    ['the blank counts', 'x'.repeat(75 + 74 + 1), ['x'.repeat(75), ` ${'x'.repeat(74)}`, ' x']],
  ])('folding: %s', (_name, line, folded) => {
    expect(foldLine(line)).toBe(folded.join('\r\n'));
  });
});

/** Switch: 5000 movements at ten a day from 2026-01-01 end on 2027-05-16. Contacts as of P1; the contactor lasts for centuries. */
const SWITCH: RowParts = { tag: 'S1', contactor: { switchMechanicalLife: 5000, mechanicalLife: 1e7 } };
const CONTACTS = 'contacts of the reversing contactor 2028-09-27 (2027-02-21 to 2034-07-23)';

describe('a starter of which another part than the contacts is due first', () => {
  it('has one event, which names the date of the contacts and their kit', () => {
    const [event, ...others] = eventsOf(renderPlanCalendar(plan(SWITCH), VERSION)!);
    expect(others).toEqual([]);
    expect(event!.startDate.toString()).toBe('2027-05-16');
    expect(event!.summary).toBe('S1: replace zero-speed switch (mechanical life)');
    expect(event!.description).toContain(
      `Its contacts have a date of their own: ${CONTACTS}. Spare: kit 18.`,
    );
    expect(event!.description).toContain('Hangs most on: operations per day (stated)');
    const [plain] = eventsOf(renderPlanCalendar(plan(ONE), VERSION)!);
    expect(plain!.description).not.toContain('date of their own');
  });

  it('has one row in the CSV list, with the dates of that part and those of the contacts', () => {
    const rows = Papa.parse<Record<string, string>>(renderPlanCsv(plan(SWITCH)), {
      header: true,
      skipEmptyLines: true,
    }).data;
    expect(rows.length).toBe(1);
    expect(rows[0]).toMatchObject({
      due: 'zero-speed switch (mechanical life)',
      // 5000 movements at twelve and at eight a day: 416.7 and 625 days.
      expected: '2027-05-16',
      earliest: '2027-02-21',
      latest: '2027-09-18',
      spare: 'zero-speed switch',
      any_part_earliest: '2027-02-21',
      contacts: 'contacts of the reversing contactor',
      contacts_expected: '2028-09-27',
      contacts_earliest: '2027-02-21',
      contacts_latest: '2034-07-23',
      contacts_kit: 'kit 18',
    });
  });

  it('has a second line in the terminal and in the report', () => {
    const lines = renderPlanTerminal(plan(SWITCH)).split('\n');
    const at = lines.findIndex((line) => line.startsWith('S1 '));
    expect(lines[at]).toMatch(
      /2027-05-16 +2027-02-21 +2027-09-18 {2}zero-speed switch \(mechanical life\); operations per day$/u,
    );
    expect(lines[at + 1]).toBe(`  also: ${CONTACTS}; after 2056-05-01: contactor (mechanical life)`);
    const html = renderPlanHtml(plan(SWITCH), { units: 'SI', title: 'mill', ...VERSION });
    expect(html).toContain(
      '<th scope="row">S1, also</th><td>contacts of the reversing contactor</td><td class="at">2028-09-27</td><td class="at">2027-02-21</td><td class="at">2034-07-23</td><td>life of the contacts',
    );
    expect(html).toContain('<td>kit 18</td>');
    expect(html).toContain('Due after 2056-05-01: contactor (mechanical life).');
  });

  it('may be due already where only the contacts may', () => {
    // Day 486 of the plan. Contacts 1000 days, at the earliest 417; switch 800 days, at the earliest 667.
    const early: RowParts = {
      tag: 'E1',
      duty: { contactsChanged: day('2025-01-01') },
      contactor: { switchMechanicalLife: 8000 },
    };
    expect(renderPlanTerminal(plan(early))).toContain(
      'May be due already, because the range begins before 2026-05-02: E1 (contacts of the reversing contactor).\n',
    );
  });
});

describe('a starter that cannot be planned', () => {
  const odd = planStarters([planRow({ tag: 'X1' }), planRow(LACKING)], AS_OF, () => ({
    reasons: ['the motor cannot drive this load'],
  }));

  it('is listed with the reason, apart from those that lack data', () => {
    const text = renderPlanTerminal(odd);
    expect(text).toContain(
      '0 starters planned as of 2026-05-02; 1 not planned for lack of data: Q9; 1 cannot be planned: X1.\n',
    );
    expect(text).toContain('\nCannot be planned:\n  X1: the motor cannot drive this load\n');
    const html = renderPlanHtml(odd, { units: 'SI', title: 'mill', ...VERSION });
    expect(html).toContain('<h2>Cannot be planned</h2>');
    expect(html).toContain('<th scope="row">X1</th><td>the motor cannot drive this load</td>');
    const rows = Papa.parse<Record<string, string>>(renderPlanCsv(odd), {
      header: true,
      skipEmptyLines: true,
    });
    expect(rows.data.map(({ tag, state, missing, reason }) => [tag, state, missing, reason])).toEqual([
      ['Q9', 'not planned', 'rated power (power)', ''],
      ['X1', 'cannot be planned', '', 'the motor cannot drive this load'],
    ]);
  });
});

describe('a starter whose counter and stated operations a day do not fit together', () => {
  // Ten a day stated, 3000 counted in 100 days.
  const doubted = plan(ONE, { tag: 'C1', duty: { counter: 3000, counterDay: day('2026-04-11') } });
  const DOUBT = /The counter gives 30 operations a day since the contacts were changed, stated are 10: /u;
  const SENTENCE =
    'Counter and operations per day disagree by more than a factor of 1.5: C1. Its dates stand on both: check them first.';

  it('is named at the top of terminal and report, and the doubt stands at its line', () => {
    const lines = renderPlanTerminal(doubted).split('\n');
    expect(lines).toContain(SENTENCE);
    const at = lines.findIndex((line) => line.startsWith('C1 '));
    expect(lines[at + 1]).toMatch(new RegExp(`^ {2}check: ${DOUBT.source}`, 'u'));
    expect(lines.filter((line) => line.startsWith('  check: ')).length).toBe(1);
    const html = renderPlanHtml(doubted, { units: 'SI', title: 'mill', ...VERSION });
    expect(html).toContain(SENTENCE);
    expect(html).toMatch(DOUBT);
  });

  it('has the doubt before its remarks in the list', () => {
    const { data } = Papa.parse<Record<string, string>>(renderPlanCsv(doubted), { header: true });
    const remarks = (tag: string) => data.find((row) => row.tag === tag)!.remarks;
    expect(remarks('C1')).toMatch(new RegExp(`^${DOUBT.source}.* Assumed: a thing\\.`, 'u'));
    expect(remarks('P1')).not.toMatch(DOUBT);
    expect(renderPlanTerminal(plan(ONE))).not.toMatch(/disagree|check: /u);
  });
});

describe('the day of a plan that nobody stated', () => {
  const HINT =
    '2026-05-02 is the latest date in the table and may be old: give --as-of YYYY-MM-DD for today.';

  it('is said to be that of the table, in terminal and report', () => {
    const options = { units: 'SI', title: 'mill', ...VERSION } as const;
    expect(renderPlanTerminal(plan(ONE), { latestInTable: true }).split('\n')[1]).toBe(HINT);
    expect(renderPlanHtml(plan(ONE), { ...options, latestInTable: true })).toContain(`<p>${HINT}</p>`);
    expect(renderPlanTerminal(plan(ONE))).not.toContain('may be old');
    expect(renderPlanHtml(plan(ONE), options)).not.toContain('may be old');
  });
});

describe('the list as CSV', () => {
  const rowsOf = (text: string) =>
    Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true }).data;

  it('has the planned starters by date and then those that lack data', () => {
    const rows = rowsOf(renderPlanCsv(plan(LACKING, ONE, OVERDUE)));
    expect(rows.map(({ tag, state, expected }) => [tag, state, expected])).toEqual([
      ['old', 'overdue', '2024-09-27'],
      ['P1', 'planned as of 2026-05-02', '2028-09-27'],
      ['Q9', 'not planned', ''],
    ]);
    expect(rows[1]).toMatchObject({
      description: 'pulper',
      due: 'contacts of the reversing contactor',
      earliest: '2027-02-21',
      latest: '2034-07-23',
      life_operations: '10000',
      // 121 days of ten operations.
      used_percent: '12',
      operations_per_day: '10',
      plugging_share_percent: '100',
      spare: 'kit 18',
    });
    expect(rows[1]!.dominant_assumption).toMatch(
      /^life of the contacts \(stated by hand\), x 0\.5 to x 2: 2027-05-16 to /u,
    );
    expect(rows[2]!.missing).toBe('rated power (power)');
  });

  it('holds no formula and brings separators back', () => {
    const [row] = rowsOf(renderPlanCsv(plan({ tag: '=1+1', description: 'a, "b"; c' })));
    expect(row!.tag).toBe("'=1+1");
    expect(row!.description).toBe('a, "b"; c');
  });

  it.each(['=', '+', '-', '@', '|', '＝', '＋', '－', '＠'])(
    'holds no formula that begins with %s',
    (mark) => {
      const [row] = rowsOf(renderPlanCsv(plan({ description: `${mark}cmd` })));
      expect(row!.description).toBe(`'${mark}cmd`);
    },
  );

  it('writes a day ahead of all dates of tables as such', () => {
    // The counter is a million times beyond the life: the day lies thousands of years back.
    const duty = { counter: 1e10, counterDay: day('2026-01-02') };
    const [row] = rowsOf(renderPlanCsv(plan({ duty })));
    expect([row!.expected, row!.state]).toEqual(['before 1950-01-01', 'overdue']);
  });

  it('writes what lies beyond the horizon as such', () => {
    const [row] = rowsOf(renderPlanCsv(plan({ duty: { operationsPerDay: 0.01 } })));
    expect(row!.expected).toBe('after 2056-05-01');
  });
});

describe('the report', () => {
  const html = renderPlanHtml(plan(ONE, OVERDUE, LACKING), { units: 'SI', title: 'mill', ...VERSION });

  it('says what is due when, what it hangs on, what lacks data, which spares are needed, and how it was found', () => {
    expect(html).toContain('2 starters planned as of 2026-05-02; 1 not planned for lack of data: Q9.');
    expect(html).toContain('Overdue: old. Inspect these first.');
    expect(html).toContain(
      '<td class="at">2028-09-27</td><td class="at">2027-02-21</td><td class="at">2034-07-23</td>',
    );
    expect(html).toContain('<th scope="row">Q9</th><td>rated power (power)</td>');
    expect(html).toContain('<th scope="row">2028 Q3</th><td>kit 18</td><td class="number">1</td><td>P1</td>');
    expect(html).toContain('Assumed: a thing.');
    expect(html).toContain('Miner’s rule');
    expect(html).toContain('A date is an estimate');
    expect(html).not.toMatch(/NaN|undefined|Infinity/u);
  });

  it('shows powers in the units asked for', () => {
    expect(html).toContain('7.50 kW');
    const us = renderPlanHtml(plan(ONE), { units: 'us', title: 'mill', ...VERSION });
    expect(us).toContain('10.1 hp');
  });

  it('lets no text of the table become markup', () => {
    const nasty = renderPlanHtml(
      plan({ tag: NASTY, description: NASTY, spareKit: NASTY }, { ...LACKING, tag: '<i>' }),
      {
        units: 'SI',
        title: '</style><script>',
        ...VERSION,
      },
    );
    expect(nasty).not.toMatch(/<b>|<i>|<script|\u202E/u);
    expect(nasty).toContain('&lt;b&gt;');
  });

  it('of a table of which nothing can be planned has no empty tables', () => {
    const empty = renderPlanHtml(plan(LACKING), { units: 'SI', title: 'mill', ...VERSION });
    expect(empty.match(/<table>/gu)?.length).toBe(1);
  });
});

describe('the list in the terminal', () => {
  it('says which starters may be due already', () => {
    // Half the life at twelve a day ends on day 417 from 2025-01-01, at ten a day and the full life on day 1000.
    const early: RowParts = { tag: 'E1', duty: { contactsChanged: day('2025-01-01') } };
    expect(renderPlanTerminal(plan(ONE, OVERDUE, early))).toContain(
      'May be due already, because the range begins before 2026-05-02: E1 (contacts of the reversing contactor).\n',
    );
    expect(renderPlanTerminal(plan(ONE, OVERDUE))).not.toContain('May be due already');
  });

  it('has a line for each starter, what is missing, and the spares by quarter', () => {
    const lines = renderPlanTerminal(plan(ONE, OVERDUE, LACKING)).split('\n');
    expect(lines).toContainEqual(
      expect.stringMatching(
        /^P1 +2028-09-27 +2027-02-21 +2034-07-23 {2}contacts of the reversing contactor; life of the contacts$/u,
      ),
    );
    expect(lines).toContainEqual(expect.stringMatching(/^old +overdue 2024-09-27/u));
    expect(lines).toContain('  Q9: rated power (power)');
    expect(lines).toContainEqual(expect.stringMatching(/^2028 Q3 +kit 18 +1 +0$/u));
  });
});
