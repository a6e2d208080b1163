import { describe, expect, it } from 'vitest';
import { csvText } from '../../../src/recording/csvText.ts';
import { renderSheetCsv } from '../../../src/report/renderSheetCsv.ts';
import { renderSheetHtml } from '../../../src/report/renderSheetHtml.ts';
import { SHEET_COLUMNS, sheetRowText } from '../../../src/report/sheetRow.ts';
import { READING_DEFINITIONS, SHEET_CAUTIONS, summarySentences } from '../../../src/report/sheetSummary.ts';
import type { Scenario } from '../../../src/scenario/scenario.ts';
import type {
  CommissioningRow,
  CommissioningSheet,
  RowResult,
} from '../../../src/survey/commissioning/commissioningSheet.ts';
import type { FinalState } from '../../../src/survey/commissioning/run.ts';
import { commissioningTest } from '../../../src/survey/commissioning/test.ts';
import { benchScenario } from '../survey/commissioningBenches.ts';
import { HOSTILE_TEXTS } from './hostile.ts';

const RPM = Math.PI / 30;

/** A test of plug stop, hand-made. */
const TEST = commissioningTest({
  id: 'stop.forward',
  group: 'stopping',
  title: 'Plug stop from forward',
  hands: 'While it runs forward, press stop and let go.',
  actions: [],
  mark: 1.5,
  markWords: 'stop pressed',
  requirements: [
    { words: 'the reverse contactor brakes', isMet: () => true },
    { words: 'comes to rest', isMet: () => true },
  ],
});

const SHOWS: RowResult = {
  sequence: {
    items: [
      { after: 0, words: 'overload relay trips', speed: null },
      { after: 0.00901, words: 'forward contactor out', speed: null },
      { after: 1.5, words: 'zero-speed switch opens', speed: -41.2 * RPM },
    ],
    more: 0,
  },
  end: { kind: 'rest' },
  readings: {
    before: {
      transformer: { value: 7.21, phase: 'A', from: 0, to: 0.1 },
      hall: { value: 7.22, phase: 'A', from: 0, to: 0.1 },
    },
    operation: {
      transformer: { value: 102.7, phase: 'C', from: 1.6, to: 1.7 },
      hall: { value: 105.4, phase: 'B', from: 1.6, to: 1.7 },
    },
    cutOff: false,
    tachometer: [
      { words: 'before', speed: 1485 * RPM },
      { words: 'fastest the other way', speed: -51.2 * RPM },
      { words: 'at the end', speed: -0.4 * RPM },
    ],
  },
  durations: [
    { words: 'until both contactors are out', value: 0.0093 },
    { words: 'to standstill', value: 1.234 },
    { words: 'to full speed reverse', value: null },
  ],
};

const row = (number: number, more: Partial<CommissioningRow> = {}): CommissioningRow => ({
  number,
  test: TEST,
  verdict: { kind: 'agrees' },
  dangers: [],
  shows: SHOWS,
  ...more,
});

const FAULT = { ...TEST, id: 'fault.x', group: 'faults', remark: 'It is known.' } as const;
const ROWS: readonly CommissioningRow[] = [
  row(1),
  row(2, { verdict: { kind: 'differs', unmet: ['comes to rest'] }, dangers: ['It does not come to rest.'] }),
  row(3, { verdict: { kind: 'notSimulated', reason: 'the integration stopped, early' }, shows: null }),
  row(4, { test: FAULT, dangers: ['It runs up.', 'It burns.'] }),
];

function sheetOf(change: Partial<Scenario> = {}, rows = ROWS): CommissioningSheet {
  const scenario = { ...benchScenario({ scheme: 'plugStop' }), title: 'Belt', ...change };
  return { scenario, control: scenario.starter.control!, rows };
}

const html = (sheet = sheetOf()) => renderSheetHtml(sheet, { units: 'SI', version: '1.2.3' });
const csv = (sheet = sheetOf()) => renderSheetCsv(sheet, { units: 'SI' });

/** Reads RFC 4180 text. */
function parseCsv(text: string): string[][] {
  const table: string[][] = [[]];
  let field = '';
  let quoted = false;
  for (let i = 0; i < text.length; i++) {
    const c = text[i]!;
    if (quoted) {
      if (c !== '"') field += c;
      else if (text[i + 1] === '"') {
        field += '"';
        i++;
      } else quoted = false;
    } else if (c === '"') quoted = true;
    else if (c === ',') {
      table.at(-1)!.push(field);
      field = '';
    } else if (c === '\r' && text[i + 1] === '\n') {
      table.at(-1)!.push(field);
      field = '';
      table.push([]);
      i++;
    } else field += c;
  }
  expect(quoted).toBe(false);
  expect(table.pop()).toEqual([]);
  return table;
}

/** Cells of the printed table's test rows, as text lines. */
function htmlCells(text: string): string[][][] {
  const rows = [...text.matchAll(/<tr class="(?:agrees|differs|notSimulated)[^"]*">(.*?)<\/tr>/gsu)];
  return rows.map(([, inside]) =>
    [...inside!.matchAll(/<t[hd][^>]*>(.*?)<\/t[hd]>/gsu)].map(([, cell]) =>
      [...cell!.matchAll(/<p[^>]*>(.*?)<\/p>/gsu)].map(([, line]) => decode(line!)),
    ),
  );
}

function decode(text: string): string {
  return text
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&amp;', '&');
}

describe('a row', () => {
  it('says what the simulation shows in one sentence with times from the decisive instant', () => {
    expect(sheetRowText(ROWS[0]!, 'SI').shows).toEqual([
      {
        text: 'Overload relay trips at once, forward contactor out after 9 ms, zero-speed switch opens after 1.50 s at −41 r/min; stands at the end.',
      },
    ]);
  });

  it.each<[FinalState, string]>([
    [{ kind: 'rest' }, 'stands at the end.'],
    [{ kind: 'coasts', speed: 900 * RPM }, 'coasts at the end at 900 r/min.'],
    [
      { kind: 'connected', contactor: 'forward', speed: 1485 * RPM },
      'runs forward at the end at 1485 r/min.',
    ],
    [
      { kind: 'connected', contactor: 'reverse', speed: -1485 * RPM },
      'runs reverse at the end at 1485 r/min.',
    ],
    [
      { kind: 'connected', contactor: 'reverse', speed: 900 * RPM },
      'turns forward at the end at 900 r/min, the reverse contactor in.',
    ],
    [
      { kind: 'connected', contactor: 'forward', speed: 0 },
      'stands at the end with the forward contactor in.',
    ],
    [
      { kind: 'shortCircuit', t: 1.527, current: 5000 },
      'line-to-line short circuit after 27 ms, prospective current 5000 A r.m.s.',
    ],
    [
      { kind: 'shortCircuit', t: 1.527, current: null },
      'line-to-line short circuit after 27 ms, nothing in the scenario limits the current.',
    ],
  ])('ends with how the run ended: %j', (end, words) => {
    const text = sheetRowText(row(1, { shows: { ...SHOWS, end } }), 'SI').shows[0]!.text;
    expect(text.slice(text.indexOf('; ') + 2)).toBe(words);
  });

  it('says of a run in which nothing happens that nothing moves, and of a long one that there is more', () => {
    const quiet = { ...SHOWS, sequence: { items: [], more: 0 } };
    expect(sheetRowText(row(1, { shows: quiet }), 'SI').shows[0]!.text).toBe(
      'No contactor moves; stands at the end.',
    );
    const long = { ...SHOWS, sequence: { items: SHOWS.sequence.items.slice(1, 2), more: 7 } };
    expect(sheetRowText(row(1, { shows: long }), 'SI').shows[0]!.text).toBe(
      'Forward contactor out after 9 ms, 7 more changes; stands at the end.',
    );
  });

  it('has the readings in the units of its headings and the duration with what it counts from', () => {
    const text = sheetRowText(ROWS[0]!, 'SI');
    const lines = (key: 'clamp' | 'tachometer' | 'duration') => text[key].map((line) => line.text);
    expect(lines('clamp')).toEqual(['7.21 before', '103 CT (C)', '105 with d.c. (B)']);
    expect(lines('tachometer')).toEqual(['1485 before', '−51 fastest the other way', '0 at the end']);
    expect(lines('duration')).toEqual([
      'from: stop pressed',
      '9 ms until both contactors are out',
      '1.23 s to standstill',
      'not in this run: to full speed reverse',
    ]);
  });

  it('without current reads 0, and after a short circuit reads nothing', () => {
    const nothing = { value: 1e-9, phase: 'A', from: 0, to: 0.1 } as const;
    const still = {
      ...SHOWS,
      readings: { ...SHOWS.readings, before: null, operation: { transformer: nothing, hall: nothing } },
    };
    expect(sheetRowText(row(1, { shows: still }), 'SI').clamp).toEqual([{ text: '0' }]);
    const short: RowResult = {
      ...SHOWS,
      end: { kind: 'shortCircuit', t: 2, current: null },
      readings: { ...SHOWS.readings, before: null, operation: null },
    };
    expect(sheetRowText(row(1, { shows: short }), 'SI').clamp).toEqual([{ text: 'not read: short circuit' }]);
  });

  it('agrees, differs and says in what, or was not simulated and says why', () => {
    const verdicts = ROWS.map((one) => sheetRowText(one, 'SI').verdict.map(({ text }) => text));
    expect(verdicts).toEqual([
      ['agrees'],
      ['differs', 'Not met: comes to rest.'],
      ['not simulated', 'The integration stopped, early.'],
      ['agrees'],
    ]);
  });

  it('of a device fault is in thought only, and says what is dangerous', () => {
    const text = sheetRowText(ROWS[3]!, 'SI');
    expect(text.hands.map((line) => line.text)).toEqual(['In thought only.', TEST.hands]);
    expect(text.expected[1]).toEqual({ text: 'It is known.', kind: 'note' });
    expect(text.shows.slice(1)).toEqual([
      { text: 'Dangerous: It runs up.', kind: 'danger' },
      { text: 'Dangerous: It burns.', kind: 'danger' },
    ]);
  });
});

describe('the summary', () => {
  it('counts the rows that agree and names those that differ, fail and are dangerous', () => {
    expect(summarySentences(ROWS)).toEqual([
      '2 of 3 tests agree with what should happen; no. 2 differs.',
      'Not simulated: no. 3.',
      'Dangerous without any fault: no. 2.',
      'Dangerous with a device fault: no. 4.',
    ]);
  });

  it('says so where all agree, and writes neighbours as a range', () => {
    expect(summarySentences([row(1), row(2)])).toEqual([
      'All 2 tests agree with what should happen.',
      'Without a fault no test shows a dangerous behaviour.',
    ]);
    const many = [1, 2, 3, 5, 6, 8].map((number) =>
      row(number, { verdict: { kind: 'differs', unmet: ['x'] } }),
    );
    expect(summarySentences(many)[0]).toBe(
      '0 of 6 tests agree with what should happen; nos. 1 to 3, 5, 6, 8 differ.',
    );
  });
});

describe('the printed sheet', () => {
  it('has the columns in order in its head, and a cell for each in every row', () => {
    const text = html();
    const heads = [...text.matchAll(/<th scope="col"[^>]*>(.*?)<\/th>/gu)].map(([, words]) => words);
    expect(heads.map((head) => head?.replace('<br>', ''))).toEqual(SHEET_COLUMNS.map(({ head }) => head));
    const cells = htmlCells(text);
    expect(cells.length).toBe(ROWS.length);
    for (const [k, one] of cells.entries()) {
      const expected = sheetRowText(ROWS[k]!, 'SI');
      expect(one.map((lines) => lines.map((line) => line.replaceAll('\u00A0', ' ')))).toEqual(
        SHEET_COLUMNS.map(({ key }) => expected[key].map((line) => line.text)),
      );
    }
  });

  it('leaves the columns for the pencil empty', () => {
    for (const cells of htmlCells(html())) expect(cells.slice(-2)).toEqual([[], []]);
    expect(html()).toMatch(/<td class="measured"><\/td><td class="remarks"><\/td>/u);
  });

  it('has title, summary and every caution before the first row, and what the readings mean after the last', () => {
    const text = html();
    const first = text.indexOf('<table>');
    const last = text.indexOf('</table>');
    const place = (words: string) => {
      const found = decode(text).indexOf(words);
      expect(found).toBeGreaterThan(0);
      return found;
    };
    for (const words of [...SHEET_CAUTIONS, ...summarySentences(ROWS)])
      expect(place(words)).toBeLessThan(first);
    for (const words of READING_DEFINITIONS) expect(place(words)).toBeGreaterThan(last);
    expect(SHEET_CAUTIONS.join(' ')).toMatch(/licensed.*thought experiments.*cooled.*Local codes/su);
    expect(READING_DEFINITIONS.join(' ')).toContain('100 ms');
    expect(text).toContain('IEC 60204-1');
  });

  it('prints on A4 across, keeps a row on one page and repeats its head', () => {
    const text = html();
    expect(text).toContain('@page{size:A4 landscape');
    expect(text).toMatch(/tr\{break-inside:avoid\}/u);
    expect(text).toMatch(/thead\{display:table-header-group\}/u);
    expect(text).toMatch(/counter\(page\)/u);
  });

  it('keeps a number and its unit on one line', () => {
    expect(html()).toContain('after 9\u00A0ms');
    expect(html()).toContain('at −41\u00A0r/min');
  });

  it.each(HOSTILE_TEXTS)('shows a title as text, whatever it is: %j', (title) => {
    const text = html(sheetOf({ title }));
    expect(text).not.toMatch(/<script|<img|onerror=alert\(3\)>|<!-- /u);
    const tags = new Set([...text.matchAll(/<\/?([a-z0-9]+)/gu)].map(([, name]) => name));
    for (const tag of ['script', 'img', 'svg', 'a', 'iframe']) expect(tags).not.toContain(tag);
    expect(text.replaceAll('\n', '')).not.toMatch(/\p{Cc}|[\u202A-\u202E\u2066-\u2069]/u);
    expect(text.match(/<h1>/gu)?.length).toBe(1);
  });

  it('shows a reason as text, whatever it is', () => {
    const reason = '<b onclick="x">&amp;';
    const text = html(sheetOf({}, [row(1, { verdict: { kind: 'notSimulated', reason }, shows: null })]));
    expect(text).not.toContain('<b ');
    expect(htmlCells(text)[0]?.flat()).toContain('<b onclick="x">&amp;.');
  });

  it('shows inertia in the units asked for', () => {
    expect(html()).toContain('kg·m²');
    const us = renderSheetHtml(sheetOf(), { units: 'us', version: '1.2.3' });
    expect(us).toContain('lb·ft²');
    expect(us).not.toContain('kg·m²');
  });
});

describe('the table file', () => {
  it('parses, has the printed columns, and says the same in them', () => {
    const [head, ...rows] = parseCsv(csv());
    const heads = SHEET_COLUMNS.map((column) => column.head);
    const from = head!.indexOf(heads[0]!);
    expect(head!.slice(from, from + heads.length)).toEqual(heads);
    expect(rows.length).toBe(ROWS.length);
    const printed = htmlCells(html());
    for (const [k, fields] of rows.entries()) {
      expect(fields.length).toBe(head!.length);
      const ascii = printed[k]!.map((lines) =>
        lines.join('; ').replaceAll('\u00A0', ' ').replaceAll('−', '-').replaceAll('—', '-'),
      );
      expect(fields.slice(from, from + heads.length).map((field) => field.replace(/^'(?=-)/u, ''))).toEqual(
        ascii,
      );
    }
  });

  it('has the readings as bare numbers, and nothing where there are none', () => {
    const [head, first, , third] = parseCsv(csv());
    const at = (fields: readonly string[], name: string) => fields[head!.indexOf(name)];
    expect(Number(at(first!, 'clamp_transformer_A'))).toBe(102.7);
    expect(Number(at(first!, 'clamp_with_dc_A'))).toBe(105.4);
    expect(Number(at(first!, 'clamp_before_A'))).toBe(7.21);
    expect(at(first!, 'clamp_line')).toBe('B');
    expect(Number(at(first!, 'first_duration_s'))).toBe(0.0093);
    expect(third!.slice(-6)).toEqual(['', '', '', '', '', '']);
  });

  it.each(['=1+1', '+cmd', '-2', '@sum', '=HYPERLINK("http://x","y")'])(
    'gives no spreadsheet a formula: %s',
    (title) => {
      const fields = parseCsv(csv(sheetOf({ title })))
        .slice(1)
        .flat();
      expect(fields[0]).toBe(`'${title}`);
      for (const field of fields.filter((one) => Number.isNaN(Number(one))))
        expect(field).not.toMatch(/^[=+\-@\t\r]/u);
    },
  );

  it.each(['a,b', 'say "no"', 'two\r\nlines', '",",', ' plain ', ''])(
    'quotes what must be quoted: %j',
    (text) => {
      expect(parseCsv(`${csvText(text)},x\r\n`)).toEqual([[text, 'x']]);
    },
  );

  it.each(HOSTILE_TEXTS)('keeps a title in its field, whatever it is: %j', (title) => {
    const rows = parseCsv(csv(sheetOf({ title })));
    expect(new Set(rows.map((fields) => fields.length)).size).toBe(1);
    expect(rows.length).toBe(ROWS.length + 1);
  });
});

describe('a clamp meter', () => {
  it('has no reading where the current ends before a window is over, and the cell says so', () => {
    const cut = { ...SHOWS, readings: { ...SHOWS.readings, operation: null, cutOff: true } };
    const { clamp } = sheetRowText(row(1, { shows: cut }), 'SI');
    expect(clamp.map(({ text }) => text)).toEqual(['7.21 before', '–: no current after contactors open']);
    expect(READING_DEFINITIONS[0]).toContain('“–”: the current ends for good within 100 ms');
  });
});

describe('the heads of the columns', () => {
  it('wrap nowhere but between a reading and its unit', () => {
    expect(html()).toMatch(/thead th\{white-space:nowrap/u);
    expect(html()).toContain('>Clamp meter, <br>A r.m.s.</th>');
    expect(html()).toContain('>No.</th>');
  });

  it('share the whole width', () => {
    const widths = SHEET_COLUMNS.map(({ key }) =>
      Number(new RegExp(`\\.${key}\\{width:([\\d.]+)%`, 'u').exec(html())?.[1]),
    );
    expect(widths.reduce((sum, width) => sum + width, 0)).toBeCloseTo(100, 6);
  });
});
