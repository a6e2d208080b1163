import { describe, expect, it } from 'vitest';
import { parseOperationLog } from '../../../src/recording/operationLog.ts';
import { formatProblem } from '../../../src/scenario/problem.ts';
import { ScenarioError } from '../../../src/scenario/scenarioError.ts';

const parse = (text: string) => parseOperationLog(text, 'log.csv');
const events = (text: string) => parse(text).operations.map(({ event }) => event);

function problemsOf(text: string) {
  try {
    parse(text);
  } catch (error) {
    if (error instanceof ScenarioError) return error.problems;
    throw error;
  }
  throw new Error('nothing was found wrong');
}

describe('a log of operations', () => {
  it('is read in every word for the kinds', () => {
    expect(
      events(
        'time,operation\n2026-01-01T08:00,start\n2026-01-01T08:01,coast\n2026-01-01T08:02,stop\n2026-01-01T08:03,plug stop\n2026-01-01T08:04,reversal\n2026-01-01T08:05,inch\n',
      ),
    ).toEqual(['start', 'stop', 'stop', 'plugStop', 'reversal', 'inch']);
  });

  it.each([
    ['semicolons', 'time;operation\n2026-01-01;start\n2026-01-02;inch\n'],
    ['tabs', 'time\toperation\n2026-01-01\tstart\n2026-01-02\tinch\n'],
    ['a byte order mark', '\uFEFFtime,operation\n2026-01-01,start\n2026-01-02,inch\n'],
    ['CRLF', 'time,operation\r\n2026-01-01,start\r\n2026-01-02,inch\r\n'],
    ['CR alone', 'time,operation\r2026-01-01,start\r2026-01-02,inch\r'],
    ['quotes', '"time","operation"\n"2026-01-01","start"\n"2026-01-02","inch"\n'],
    ['no line end at the end', 'time,operation\n2026-01-01,start\n2026-01-02,inch'],
    ['empty lines and blanks', '\n time , operation \n\n 2026-01-01 , start \n ,\n2026-01-02,  inch\n\n'],
    [
      'columns the other way round among others',
      'operator,operation,time\nA,start,2026-01-01\nB,inch,2026-01-02\n',
    ],
    ['capitals', 'Time,Operation\n2026-01-01,START\n2026-01-02,Inch\n'],
    ['the other names of the columns', 'date,kind\n2026-01-01,start\n2026-01-02,inch\n'],
  ])('is read with %s', (_name, text) => {
    expect(parse(text)).toMatchObject({ operations: [{ event: 'start' }, { event: 'inch' }], remarks: [] });
  });

  it('out of order is sorted, with a remark', () => {
    const log = parse('time,operation\n2026-01-02,inch\n2026-01-01,start\n2026-01-03,stop\n');
    expect(log.operations.map(({ event }) => event)).toEqual(['start', 'inch', 'stop']);
    expect(log.remarks).toEqual(['1 of 3 lines are earlier than the line before them: sorted']);
  });

  it('counts a line that repeats another once, with a remark', () => {
    const log = parse(
      'time,operation\n2026-01-01T08:00:00,start\n2026-01-01T08:00:00,start\n2026-01-01T08:00:00,plug stop\n',
    );
    expect(log.operations.map(({ event }) => event)).toEqual(['start', 'plugStop']);
    expect(log.remarks).toEqual(['1 line repeats another with the same time and kind: counted once']);
  });

  it('counts all operations of a day that has no times', () => {
    expect(parse('time,operation\n2026-01-01,start\n2026-01-01,start\n')).toMatchObject({
      operations: [{}, {}],
      remarks: [],
    });
  });

  it('with offsets in some lines only says how it takes the others', () => {
    const log = parse('time,operation\n2026-01-01T08:00+01:00,start\n2026-01-01T08:30,stop\n');
    expect(log.remarks.join()).toContain('taken as universal time');
    expect(log.operations[1]!.time.seconds - log.operations[0]!.time.seconds).toBe(5400);
  });

  it('of more lines than a table that people write may have is read', () => {
    const lines = Array.from(
      { length: 25_000 },
      (_, k) =>
        `2026-01-${String(1 + Math.floor(k / 1000)).padStart(2, '0')},${k % 2 === 0 ? 'start' : 'coast'}`,
    );
    expect(parse(`time,operation\n${lines.join('\n')}\n`).operations).toHaveLength(25_000);
  });
});

describe('what is wrong with a log', () => {
  it('is said with line, column, value and what would be right, all at once', () => {
    const problems = problemsOf(
      'time,operation\n2026-02-30,start\n2026-01-01,plugstop\n,start\n2026-01-01,\n2026-01-05,start\n',
    );
    expect(problems.map(({ line, column, path, code, found }) => [line, column, path, code, found])).toEqual([
      [2, 1, 'time', 'notANumber', '2026-02-30'],
      [3, 12, 'operation', 'unknownWord', 'plugstop'],
      [4, 1, 'time', 'missingKey', ''],
      [5, 12, 'operation', 'missingKey', ''],
    ]);
    expect(formatProblem(problems[1]!)).toBe(
      'log.csv:3:12 operation: "plugstop" is no kind of operation; expected `plug stop` (one of start, coast, plug stop, reversal, inch)',
    );
  });

  it('in a row of too few fields is the field that is not there', () => {
    const [problem] = problemsOf('time,operation\n2026-01-01\n');
    expect(problem).toMatchObject({ line: 2, path: 'operation', code: 'missingKey' });
  });

  it.each([
    ['no header', '2026-01-01,start\n', ['missingKey', 'missingKey']],
    ['one column missing', 'time,who\n2026-01-01,A\n', ['missingKey']],
    ['a column twice', 'time,date,operation\n2026-01-01,2026-01-01,start\n', ['duplicateKey']],
    ['a header alone', 'time,operation\n', ['empty']],
    ['nothing', '  \n\n', ['empty']],
    ['bytes that are no text', 'time,operation\n\0', ['notText']],
    ['an open quote', 'time,operation\n"2026-01-01,start\n', ['syntax']],
  ])('%s is refused', (_name, text, codes) => {
    expect(problemsOf(text).map(({ code }) => code)).toEqual(codes);
  });

  it('words that every object has are no kinds of operation', () => {
    for (const word of ['constructor', '__proto__', 'toString'])
      expect(problemsOf(`time,operation\n2026-01-01,${word}\n`)[0]?.code).toBe('unknownWord');
  });

  it('a log of hostile length is refused unread', () => {
    expect(problemsOf(' '.repeat(60_000_001))[0]?.code).toBe('tooLarge');
  });

  it('a log wrong in every line is reported up to a length that can be read', () => {
    const lines = Array.from({ length: 5000 }, () => 'yesterday,start').join('\n');
    const problems = problemsOf(`time,operation\n${lines}\n`);
    expect(problems.length).toBeGreaterThan(99);
    expect(problems.length).toBeLessThan(110);
  });

  it('a long value is shortened in the message', () => {
    const [problem] = problemsOf(`time,operation\n${'x'.repeat(5000)},start\n`);
    expect(problem!.message.length).toBeLessThan(300);
    expect(problem!.found!.length).toBeLessThan(300);
  });
});
