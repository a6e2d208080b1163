import { describe, expect, it } from 'vitest';
import { LOG_COLUMNS, LOG_OPERATIONS } from '../../../src/recording/logColumns.ts';
import { parseOperationLog } from '../../../src/recording/operationLog.ts';
import { PLAN_COLUMN_NAMES, PLAN_COLUMNS, type PlanColumnName } from '../../../src/recording/planColumns.ts';
import { PLAN_COLUMN_WORDS } from '../../../src/recording/planColumnWords.ts';
import { planTable } from '../../../src/recording/planTable.ts';
import { missingOf } from '../../../src/survey/plan/missingOf.ts';
import { expectPage } from '../../support/generatedPages.ts';
import { cellsOf, tablePage } from '../../support/reference/tablePage.ts';

/** Only one reading of an inspection may stand in a row. */
const READINGS = ['contact worn', 'contact thickness', 'over-travel'] as const;

/** A full row with one of the readings: the first example of every column. */
const fullRow = (reading: (typeof READINGS)[number]) =>
  PLAN_COLUMN_NAMES.filter(
    (name) => name.startsWith(reading) || !READINGS.some((other) => name.startsWith(other)),
  );

/** What a table of one row with these columns lacks. */
function lacks(names: readonly PlanColumnName[]): readonly string[] {
  const [row] = planTable(
    `${names.join()}\n${names.map((name) => cellsOf(PLAN_COLUMNS[name])[0]).join()}\n`,
    't.csv',
  );
  return missingOf(row!);
}

describe('the columns of a plan', () => {
  it('have a meaning, and say what holds without them', () => {
    const wordless = PLAN_COLUMN_NAMES.filter((name) => {
      const { meaning, leftOut } = PLAN_COLUMN_WORDS[name];
      return !/^[A-Z].*\.$/su.test(meaning) || leftOut === '';
    });
    expect(wordless).toEqual([]);
  });

  it.each(PLAN_COLUMN_NAMES)('%s: the parser reads each example', (name) => {
    const cells = cellsOf(PLAN_COLUMNS[name]);
    expect(cells.length).toBeGreaterThan(0);
    for (const [k, cell] of cells.entries()) {
      const table = name === 'tag' ? `tag\n${cell}\n` : `tag,${name}\nP${k},${cell}\n`;
      // A torque without its kind of load is read, and asked for later.
      expect(planTable(table, 't.csv').length, cell).toBe(1);
    }
  });

  it.each(READINGS)(
    'that are needed in a row with %s are those without which it is not planned',
    (reading) => {
      const names = fullRow(reading);
      expect(lacks(names)).toEqual([]);
      for (const name of names) {
        if (name === 'tag') continue;
        // "needed, or …": another column of the full row stands for it.
        const isNeeded = /^needed(?!, or)/u.test(PLAN_COLUMN_WORDS[name].leftOut);
        const found = lacks(names.filter((other) => other !== name));
        expect(found.length > 0, `${name}: ${found.join()}`).toBe(isNeeded);
      }
      expect(() => planTable('power\n7.5 kW\n', 't.csv')).toThrow('tag');
    },
  );

  it('that stand for each other are needed where both are missing', () => {
    const without = (...gone: PlanColumnName[]) =>
      lacks(fullRow('over-travel').filter((name) => !gone.includes(name))).length;
    const pairs = PLAN_COLUMN_NAMES.flatMap((name) => {
      const [, other] = /^needed, or ([a-z ]+?)$/u.exec(PLAN_COLUMN_WORDS[name].leftOut) ?? [];
      const known = PLAN_COLUMN_NAMES.find((column) => column === other);
      return known === undefined ? [] : [[name, known] as const];
    });
    expect(pairs.length).toBeGreaterThanOrEqual(3);
    for (const [name, other] of pairs) expect(without(name, other), `${name}, ${other}`).toBeGreaterThan(0);
  });
});

describe('the columns of a log', () => {
  it('are read by every name, with every example and every word', () => {
    const { time, operation } = LOG_COLUMNS;
    const words = Object.values(LOG_OPERATIONS).flatMap((kind) => kind.words);
    for (const at of time.names)
      for (const what of operation.names)
        for (const cell of time.examples)
          for (const word of [...words, ...operation.examples])
            expect(
              parseOperationLog(`${at},${what}\n${cell},${word}\n`, 'l.csv').operations.length,
              `${at} ${what} ${cell} ${word}`,
            ).toBe(1);
  });
});

it('the page of tables is what the code says', () => {
  expectPage('examples/guides/table-reference.md', tablePage());
});
