import {
  appendFileSync,
  copyFileSync,
  existsSync,
  mkdirSync,
  readFileSync,
  renameSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { hostname } from 'node:os';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { JOURNAL_NAME, openJournal } from '../../../src/pool/journal.ts';
import { lineOfRow } from '../../../src/recording/journalLine.ts';
import { headerOf, rowsOf } from '../../support/pool/testJournal.ts';
import { testSurvey } from '../../support/pool/testSurvey.ts';
import { workFolder } from '../../support/workFolder.ts';

const survey = testSurvey(6);
const header = headerOf(survey);

/** A journal that holds some runs, closed. */
function journalWith(...runs: number[]): string {
  const name = path.join(workFolder(), 'deep', JOURNAL_NAME);
  const journal = openJournal(name, header);
  journal.add(rowsOf(survey, runs));
  journal.close();
  return name;
}

/** Opens, reads and closes. */
function runsIn(name: string): number[] {
  const journal = openJournal(name, header);
  journal.close();
  return [...journal.rows()].map(({ run }) => run);
}

const lines = (name: string) => readFileSync(name, 'utf8').split('\n');

describe('a journal', () => {
  it('gives its rows in the order of the runs, whatever the order they came in, again and again', () => {
    const journal = openJournal(path.join(workFolder(), JOURNAL_NAME), header);
    journal.add(rowsOf(survey, [4, 5]));
    journal.add(rowsOf(survey, [0, 2]));
    const expected = rowsOf(survey, [0, 2, 4, 5]);
    expect([...journal.rows()]).toStrictEqual(expected);
    journal.close();
    expect([...journal.rows()]).toStrictEqual(expected);
    expect([0, 1, 2, 3].map(journal.has)).toEqual([true, false, true, false]);
  });

  it('is gone on with where it ends, also after more rows than one block of the file', () => {
    const large = testSurvey(3000);
    const name = path.join(workFolder(), JOURNAL_NAME);
    const even = Array.from({ length: 1500 }, (_, index) => 2 * index);
    const first = openJournal(name, headerOf(large));
    first.add(rowsOf(large, even));
    first.close();
    const second = openJournal(name, headerOf(large));
    expect(second.done).toBe(1500);
    second.add(
      rowsOf(
        large,
        even.map((run) => run + 1),
      ),
    );
    second.close();
    expect([...second.rows()]).toStrictEqual(
      rowsOf(
        large,
        Array.from({ length: 3000 }, (_, run) => run),
      ),
    );
  });

  it('that was cut off within its last line loses that run and no other, wherever it was cut', () => {
    const name = journalWith(0, 1, 2);
    const whole = readFileSync(name);
    const begin = whole.lastIndexOf('\n', whole.length - 2) + 1;
    for (const end of [begin, begin + 1, whole.length - 2, whole.length - 1]) {
      writeFileSync(name, whole);
      truncateSync(name, end);
      expect(runsIn(name)).toEqual([0, 1]);
      expect(readFileSync(name).length).toBe(begin);
    }
  });

  it('that was cut off within its first line begins anew', () => {
    const name = journalWith();
    const whole = readFileSync(name);
    for (const end of [0, 1, 40, whole.length - 1]) {
      truncateSync(name, end);
      expect(runsIn(name)).toEqual([]);
      expect(readFileSync(name)).toEqual(whole);
    }
  });

  it('counts a line that stands twice once', () => {
    const name = journalWith(0, 1);
    appendFileSync(name, `${lines(name)[1]}\n`);
    expect(runsIn(name)).toEqual([0, 1]);
  });

  it('with two different lines for one run is refused', () => {
    const name = journalWith(0, 1);
    const [row] = rowsOf(survey, [1]);
    appendFileSync(name, `${lineOfRow({ ...row!, metrics: [3, null] })}\n`);
    expect(() => runsIn(name)).toThrow(
      /runs\.journal:4: run 1 stands here a second time, and with other figures/u,
    );
  });

  it('with a damaged line in its middle is refused with the number of the line', () => {
    const name = journalWith(0, 1, 2);
    const text = readFileSync(name, 'utf8');
    const [, , second] = lines(name);
    writeFileSync(name, text.replace(second!, second!.replace(/\d(?=,)/u, '9')));
    expect(() => runsIn(name)).toThrow(
      /runs\.journal:3: this line is damaged; expected .*--fresh .*--out DIR/u,
    );
  });

  it('with a run beyond its list is refused', () => {
    const name = journalWith(0);
    const [row] = rowsOf(survey, [1]);
    appendFileSync(name, `${lineOfRow({ ...row!, run: 6 })}\n`);
    expect(() => runsIn(name)).toThrow(/:3: run 6 is none of this journal's/u);
  });

  it('with a damaged first line is refused', () => {
    const name = journalWith(0);
    writeFileSync(name, readFileSync(name, 'utf8').replace('"count":6', '"count":-6'));
    expect(() => runsIn(name)).toThrow(/:1: its first line is damaged; expected .*--fresh .*--out DIR/u);
    writeFileSync(name, readFileSync(name, 'utf8').replace('"count":-6', '"count":6').replace('0.7', '0.8'));
    expect(() => runsIn(name)).toThrow(/:1: its first line is damaged/u);
  });

  it.each(['any text', 'any text\nof several lines\n', '{"kind":3}\n'])('is not the file %j', (text) => {
    const name = journalWith();
    writeFileSync(name, text);
    expect(() => runsIn(name)).toThrow(/it is no journal of a survey/u);
    expect(readFileSync(name, 'utf8')).toBe(text);
  });

  it.each([
    [{ ...header, program: '9.9.8' }, /version 9\.9\.9 of the program, not 9\.9\.8/u],
    [headerOf({ ...survey, seed: 2 }), /another survey: the seed changed/u],
    [headerOf({ ...survey, base: { ...survey.base, text: 'x' } }), /the scenario's text changed/u],
    [headerOf(testSurvey(7)), /the fields or their values changed/u],
    [headerOf(survey, { index: 0, of: 2 }), /it is of shard 1\/1, not 1\/2/u],
  ])('of something else is refused with what differs and what can be done (%#)', (other, message) => {
    const name = journalWith(0);
    expect(() => openJournal(name, other)).toThrow(message);
    expect(() => openJournal(name, other)).toThrow(/expected .*--fresh.*--out/u);
    const fresh = openJournal(name, other, { fresh: true });
    fresh.close();
    expect([...fresh.rows()]).toEqual([]);
  });

  it('is gone on with when only title, description or the name of a file changed', () => {
    const name = journalWith(0);
    const renamed = { ...survey, title: 'Other', base: { ...survey.base, fileName: 'b.yaml' } };
    openJournal(name, headerOf(renamed)).close();
  });

  it('that cannot be written is refused with the reason', () => {
    const folder = workFolder();
    mkdirSync(path.join(folder, JOURNAL_NAME));
    writeFileSync(path.join(folder, 'taken'), '');
    const open = (name: string) => () => openJournal(path.join(folder, name), header, { fresh: true });
    expect(open(JOURNAL_NAME)).toThrow(/it is a folder; expected a folder that can be written to/u);
    expect(open(path.join('taken', JOURNAL_NAME))).toThrow(/a file stands where a folder is needed/u);
    expect(existsSync(path.join(folder, `${JOURNAL_NAME}.lock`))).toBe(false);
  });
});

describe('a journal in use', () => {
  const away = (name: string) => {
    renameSync(path.dirname(name), `${path.dirname(name)}er`);
  };
  const replaced = (name: string) => {
    copyFileSync(name, `${name}.copy`);
    renameSync(`${name}.copy`, name);
  };
  it.each([
    ['whose folder was removed', (name: string) => rmSync(path.dirname(name), { recursive: true })],
    ['that was removed', (name: string) => rmSync(name)],
    ['whose folder was given another name', away],
    ['in whose place another file was put', replaced],
  ])('%s takes no more rows and does not end well', (_, change) => {
    const name = journalWith(0);
    const journal = openJournal(name, header);
    journal.add(rowsOf(survey, [1]));
    change(name);
    const message =
      /runs\.journal: it was removed, moved or replaced while it was written; expected to be left/u;
    expect(() => journal.add(rowsOf(survey, [2]))).toThrow(message);
    expect(journal.done).toBe(2);
    expect(() => journal.close()).toThrow(message);
    // Not the lock of whoever made the folder anew.
    expect(existsSync(`${name}.lock`)).toBe(false);
  });
});

describe('a lock', () => {
  const lockOf = (name: string) => `${name}.lock`;

  it('keeps a second opening off until the first is closed', () => {
    const name = path.join(workFolder(), JOURNAL_NAME);
    const journal = openJournal(name, header);
    expect(() => openJournal(name, header)).toThrow(/this process is at work on it/u);
    expect(existsSync(lockOf(name))).toBe(true);
    journal.close();
    expect(existsSync(lockOf(name))).toBe(false);
    openJournal(name, header).close();
  });

  it.each([
    ['a living process', { process: process.ppid, computer: hostname() }, `process ${process.ppid}`],
    ['another computer', { process: 1, computer: 'elsewhere' }, 'process 1 on "elsewhere"'],
  ])('of %s is left alone', (_, lock, holder) => {
    const name = journalWith(0);
    writeFileSync(lockOf(name), JSON.stringify(lock));
    expect(() => openJournal(name, header)).toThrow(`${holder} is at work on it`);
    expect(JSON.parse(readFileSync(lockOf(name), 'utf8'))).toEqual(lock);
  });

  it.each([
    // Above any number that a system gives.
    ['of a process that has ended', JSON.stringify({ process: 2 ** 30, computer: hostname() })],
    [
      'of an earlier process with the same number',
      JSON.stringify({ process: process.pid, computer: hostname() }),
    ],
  ])('%s is taken over', (_, text) => {
    const name = journalWith(0);
    writeFileSync(lockOf(name), text);
    expect(runsIn(name)).toEqual([0]);
    expect(existsSync(lockOf(name))).toBe(false);
  });
});
