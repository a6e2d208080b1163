import { describe, expect, it } from 'vitest';
import { dayAfter, latestDay, planTable } from '../../../src/recording/planTable.ts';
import type { Problem } from '../../../src/scenario/problem.ts';
import { ScenarioError } from '../../../src/scenario/scenarioError.ts';
import { day } from '../../support/planRows.ts';
import { expectWithin } from '../../support/tolerance.ts';

/** A conversion of units, and sums of rounded decimal numbers. */
const ROUNDING = { relative: 1e-12 };

const read = (text: string) => planTable(text, 'starters.csv');

function problemsOf(text: string): readonly Problem[] {
  try {
    read(text);
  } catch (error) {
    if (error instanceof ScenarioError) return error.problems;
    throw error;
  }
  throw new Error('the table was taken');
}

/** Lines of the message, without the name of the file. */
function linesOf(text: string): string[] {
  return new ScenarioError(problemsOf(text) as [Problem]).message.split('\n');
}

const table = (header: string, ...rows: string[]) => `${[header, ...rows].join('\n')}\n`;

describe('a table of starters', () => {
  it('gives every quantity in SI, shares of one, and days', () => {
    const [row] = read(
      table(
        'tag,description,power,voltage,frequency,speed,poles,rated current,power factor,efficiency,locked-rotor current,code letter,' +
          'locked-rotor torque,breakdown torque,design,rotor inertia,load inertia,load kind,load torque,contactor current AC-3,' +
          'contactor current AC-4,life AC-3,life AC-4,contactor mechanical life,interlock mechanical life,switch mechanical life,' +
          'stop by,share of plugging,share of inching,operations per day,counter,counter date,operations since new,contacts changed,spare kit',
        'P1,pulper,10 hp,0.4 kV,50 Hz,1500 rpm,4,14.8 A,0.83,90 %,6.8 times,H,2.2 times,280 %,n,360 g m^2,0.4 kg m^2,Friction,' +
          '20 N m,18 A,9 A,1.2e6,30000,1e7,5e6,2e6,plug,80 %,0.05,120,0,2026-03-31,160000,2025-06-02,kit B',
      ),
    );
    expectWithin(row!.motor.power, 7456.998715822702, ROUNDING, 'ten mechanical horsepower, W');
    expectWithin(row!.motor.speed, 50 * Math.PI, ROUNDING, '1500 r/min, rad/s');
    expectWithin(row!.motor.inertia, 0.36, ROUNDING, 'kg·m²');
    expect(row).toMatchObject({
      tag: 'P1',
      description: 'pulper',
      motor: {
        lineVoltage: 400,
        frequency: 50,
        poles: 4,
        current: 14.8,
        powerFactor: 0.83,
        efficiency: 0.9,
        lockedRotorCurrent: { kind: 'multiple', ofRated: 6.8 },
        codeLetter: 'H',
        lockedRotorTorque: 2.2,
        breakdownTorque: 2.8,
        design: 'N',
      },
      load: { inertia: 0.4, kind: 'friction', torque: 20 },
      contactor: {
        ratedCurrentAc3: 18,
        ratedCurrentAc4: 9,
        lifeAc3: 1.2e6,
        lifeAc4: 30_000,
        mechanicalLife: 1e7,
        interlockMechanicalLife: 5e6,
        switchMechanicalLife: 2e6,
      },
      duty: {
        stopBy: 'plug',
        pluggingShare: 0.8,
        inchingShare: 0.05,
        operationsPerDay: 120,
        counter: 0,
        counterDay: day('2026-03-31'),
        operationsSinceNew: 160_000,
        contactsChanged: day('2025-06-02'),
      },
      inspection: null,
      spareKit: 'kit B',
      gaps: [],
    });
  });

  it('takes what is not stated for not known: empty, a dash, a question mark, no column', () => {
    const [row] = read(table('tag,power,voltage,frequency', 'P1,,-,?'));
    expect(row!.motor).toMatchObject({ power: null, lineVoltage: null, frequency: null, speed: null });
    expect(row!.contactor.lifeAc4).toBeNull();
  });

  it.each([
    ['semicolons', 'tag;power\nP1;7.5 kW\n'],
    ['tabs', 'tag\tpower\nP1\t7.5 kW\n'],
    ['line ends of other systems', 'tag,power\r\nP1,7.5 kW\r\n'],
    ['old line ends', 'tag,power\rP1,7.5 kW\r'],
    ['no last line end', 'tag,power\nP1,7.5 kW'],
    ['a byte order mark', '\uFEFFtag,power\nP1,7.5 kW\n'],
    ['quotes', '"tag","power"\n"P1","7.5 kW"\n'],
    ['empty lines and lines of separators', '\ntag,power\n\n,\nP1,7.5 kW\n,,\n\n'],
    ['capitals, blanks and underscores', ' TAG , Power \n P1 , 7.5 kW \n'],
    ['columns without a head that are empty', 'tag,power,,\nP1,7.5 kW,,\n'],
  ])('is read with %s', (_name, text) => {
    const rows = read(text);
    expect(rows.map(({ tag, motor }) => [tag, motor.power])).toEqual([['P1', 7500]]);
  });

  it('keeps separators, quotes and line breaks inside quotes', () => {
    const rows = read('tag,description\n"P,1","a ""b""\nc"\nP2,d\n');
    expect(rows.map(({ tag, description }) => [tag, description])).toEqual([
      ['P,1', 'a "b"\nc'],
      ['P2', 'd'],
    ]);
  });

  it('says which day is the latest, and which lies after another', () => {
    const rows = read(
      table(
        'tag,contacts changed,counter,counter date,inspected,contact worn',
        'A,2024-02-29,1,2025-01-01,,',
        'B,2023-01-01,,,2026-03-31,10 %',
        'C,,,,,',
      ),
    );
    expect(latestDay(rows)).toBe(day('2026-03-31'));
    expect(latestDay(rows.slice(2))).toBeNull();
    expect(dayAfter(rows, day('2025-06-01'))).toBe('2026-03-31 (B)');
    expect(dayAfter(rows, day('2026-03-31'))).toBeNull();
  });
});

describe('an inspection', () => {
  const inspect = (columns: string, cells: string) => read(table(`tag,${columns}`, `P1,${cells}`))[0]!;

  it('by over-travel or thickness is the used share of the wear allowance', () => {
    // (2 − 1.4)/(2 − 0.5) = 0.4; (3 − 2.1)/(3 − 1) = 0.45.
    const over = inspect(
      'inspected,over-travel new,over-travel now,over-travel limit',
      '2026-03-31,2 mm,1.4 mm,0.5 mm',
    );
    expectWithin(over.inspection?.worn, 0.4, ROUNDING, 'by over-travel');
    expect(over.inspection).toMatchObject({
      day: day('2026-03-31'),
      reading: 'over-travel 1.4 mm, of 2 mm when new and 0.5 mm at the limit',
    });
    const thick = inspect(
      'inspected,contact thickness new,contact thickness now,contact thickness limit',
      '2026-03-31,3 mm,2.1 mm,1 mm',
    );
    expectWithin(thick.inspection?.worn, 0.45, ROUNDING, 'by thickness');
    const beyond = inspect(
      'inspected,over-travel new,over-travel now,over-travel limit',
      '2026-03-31,2 mm,0.2 mm,0.5 mm',
    );
    expectWithin(beyond.inspection?.worn, 1.2, ROUNDING, 'beyond the limit');
  });

  it('may state the share by itself', () => {
    expect(inspect('inspected,contact worn', '2026-03-31,40 %').inspection?.worn).toBe(0.4);
  });

  it.each([
    ['its day', 'contact worn', '40 %', 'the day of the inspection (inspected)'],
    ['its reading', 'inspected', '2026-03-31', /^the reading of the inspection/u],
    [
      'what it is compared with',
      'inspected,over-travel now,over-travel new',
      '2026-03-31,1.4 mm,2 mm',
      'what the reading is compared with (over-travel limit)',
    ],
  ])('that lacks %s is a gap of its row, not an error', (_name, columns, cells, gap) => {
    const row = inspect(columns, cells);
    expect(row.inspection).toBeNull();
    expect(row.gaps).toEqual([typeof gap === 'string' ? gap : expect.stringMatching(gap)]);
  });
});

describe('a table that cannot be used', () => {
  it('names file, line, column, name and tag, the value and what would be right', () => {
    expect(linesOf(table('tag,power,voltage', 'P1,7.5 kW,400 V', 'P2,7.5,400 V'))).toEqual([
      'starters.csv:3:4 power of P2: "7.5" has no unit; expected a power: write `7.5 kW` (as in `7.5 kW`)',
    ]);
  });

  it('lists all that is wrong at once', () => {
    const lines = linesOf(
      table('tag,power,speed,design,contacts changed', 'P1,7.5 kg,1455 rpm,Q,2026-02-30', ',7.5 kW,20,N,'),
    );
    expect(lines.map((line) => line.slice(0, line.indexOf(':', 'starters.csv:2:4'.length)))).toEqual([
      'starters.csv:2:4 power of P1',
      'starters.csv:2:20 design of P1',
      'starters.csv:2:22 contacts changed of P1',
      'starters.csv:3:9 speed',
      'starters.csv:3:1 tag',
    ]);
  });

  it('counts lines and columns past a byte order mark', () => {
    expect(linesOf('\uFEFFtag,powr\nP1,1\n')[0]).toMatch(/^starters\.csv:1:5 header/u);
    expect(linesOf('\uFEFF"tag",power\nP1,1\n')[0]).toMatch(/^starters\.csv:2:4 power of P1/u);
  });

  it('counts lines and columns past quoted line breaks', () => {
    expect(linesOf('tag,description,power\n"P\n1","a\n\nb, c",x\n')[0]).toMatch(
      /^starters\.csv:5:7 power of P/u,
    );
  });

  it.each([
    ['powr', /"powr" is no column of this table; expected `power`$/u],
    ['power [kW]', /"power \[kW\]" is no column of this table; expected `power`; units stand in the cells$/u],
    ['lockd rotor current', /expected `locked-rotor current`$/u],
    ['colour', /"colour" is no column of this table; expected one of tag, description, power/u],
  ])('because of the column %s names the nearest', (name, message) => {
    expect(linesOf(table(`tag,${name}`, 'P1,1'))[0]).toMatch(message);
  });

  it.each([
    ['power', '7,5 kW', /decimal point/u],
    ['power', '7.5 kw h', /not a unit|is not a unit of/u],
    ['power', '-7.5 kW', /out of range; expected above 0/u],
    ['power', '1e999 kW', /too large/u],
    ['poles', '5', /no even number/u],
    ['poles', '4 poles', /no plain number/u],
    ['efficiency', '90.1', /expected .*`90\.1 %`\?/u],
    ['locked-rotor current', '680', /multiple of rated current or amperes/u],
    ['locked-rotor current', '60 times', /from 1 to 20 times/u],
    ['breakdown torque', '28 times', /out of range/u],
    ['code letter', 'I', /is not known here; expected/u],
    ['life AC-3', "1'200'000", /no plain number/u],
    ['life AC-3', '1.200.000', /no plain number/u],
    ['life AC-4', '0', /out of range; expected above 0/u],
    ['stop by', 'plugg', /expected `plug` \(one of plug, coast\)/u],
    ['contacts changed', '31.03.2026', /no date of the calendar; expected year, month and day/u],
    ['contacts changed', '2206-03-31', /a date from 1950 to 2199/u],
    ['counter', '-4', /out of range/u],
    ['operations per day', '1e6', /out of range/u],
    ['over-travel now', '2 m', /out of range/u],
    ['description', 'x'.repeat(201), /too long/u],
  ])('because of %s "%s"', (column, cell, message) => {
    const lines = linesOf(table(`tag,${column}`, `P1,"${cell}"`));
    expect(lines.length).toBe(1);
    expect(lines[0]).toMatch(message);
  });

  it.each([
    [
      'contacts changed,counter,counter date',
      '2026-03-01,5,2026-02-28',
      /counter date of P1: 2026-02-28 is before/u,
    ],
    [
      'contacts changed,inspected,contact worn',
      '2026-03-01,2026-02-28,10 %',
      /inspected of P1: 2026-02-28 is before/u,
    ],
    ['stop by,share of plugging', 'coast,10 %', /above 0 for a starter that coasts/u],
    ['share of plugging,share of inching', '80 %,30 %', /110 % together/u],
    ['counter,operations since new', '500,400', /400 is below the counter/u],
    ['load kind,load torque', 'friction,-5 N m', /load torque of P1: is negative/u],
    ['load kind,load torque', 'none,5 N m', /of kind none/u],
    ['inspected,contact worn,over-travel now', '2026-02-28,10 %,1 mm', /more than one reading/u],
    [
      'inspected,over-travel new,over-travel now,over-travel limit',
      '2026-02-28,2 mm,2.1 mm,1 mm',
      /2\.1 mm is more than when new; expected at most 2 mm/u,
    ],
    [
      'inspected,over-travel new,over-travel now,over-travel limit',
      '2026-02-28,1 mm,1 mm,2 mm',
      /2 mm is not below the value when new/u,
    ],
  ])('because %s contradict each other', (columns, cells, message) => {
    const lines = linesOf(table(`tag,${columns}`, `P1,${cells}`));
    expect(lines.length).toBe(1);
    expect(lines[0]).toMatch(message);
  });

  it.each([
    ['\uFFFD', /holds U\+FFFD, .*; expected text in UTF-8: save the table as UTF-8$/u],
    ['\u0007', /holds U\+0007, which cannot be printed; expected characters that can be printed$/u],
    ['\u001B', /holds U\+001B/u],
    ['\u0085', /holds U\+0085/u],
    ['\u202E', /holds U\+202E, which reorders text on screen/u],
    ['\u2066', /holds U\+2066/u],
    ['\uD800', /holds U\+D800/u],
  ])('because a text holds %j names the place, and what to do', (mark, message) => {
    const lines = linesOf(
      table('tag,description,spare kit', `P1,a,b`, `P2,tr${mark}mie,kit`, `P${mark}3,,k${mark}t`),
    );
    expect(lines.map((line) => line.slice(0, line.indexOf(': ')))).toEqual([
      'starters.csv:3:4 description of P2',
      'starters.csv:4:1 tag',
      `starters.csv:4:${'P'.length + mark.length + '3,,'.length + 1} spare kit`,
    ]);
    for (const line of lines) {
      expect(line).toMatch(message);
      expect(line).not.toContain(mark);
    }
    expect(linesOf(table(`tag,pow${mark}r`, 'P1,1'))).toEqual([expect.stringMatching(message)]);
  });

  it.each([
    ['an empty file', '', /there is nothing in it/u],
    ['blanks only', ' \n\n ', /there is nothing in it/u],
    ['a header alone', 'tag,power\n', /the table has no rows/u],
    ['no tags', 'power\n7.5 kW\n', /no such column; expected a column `tag`/u],
    ['a tag twice', 'tag\nP1\nP2\nP1\n', /:4:1 tag: "P1" stands on line 2 already/u],
    ['a column twice', 'tag,power,Power\nP1,1 kW,2 kW\n', /the column power stands there twice/u],
    ['more fields than heads', 'tag,power\nP1,7.5 kW,400 V\n', /"400 V" stands under no header/u],
    ['an open quote', 'tag,power\nP1,"7.5 kW\nP2,3 kW\n', /:2:1: a quoted field is not closed/u],
    ['bytes that are not text', 'PK\u0003\u0004\0\0tag', /not text/u],
    ['a name that every object has', 'tag,__proto__,constructor\nP1,1,2\n', /is no column/u],
  ])('because of %s', (_name, text, message) => {
    expect(linesOf(text)[0]).toMatch(message);
  });

  it('lists no more than fifty problems of a table that is wrong throughout', () => {
    const problems = problemsOf(table('tag,power', ...Array.from({ length: 200 }, (_, k) => `P${k},7.5`)));
    expect(problems.length).toBe(51);
    expect(problems.at(-1)?.message).toBe('150 further problems are not listed');
  });

  it('because it is too long is refused unread', () => {
    expect(linesOf(`tag\n${'x'.repeat(2_000_001)}`)[0]).toMatch(/million characters are no such table/u);
    expect(linesOf(`tag\n${'x\n'.repeat(20_001)}`)[0]).toMatch(/20001 rows are too many/u);
  });
});
