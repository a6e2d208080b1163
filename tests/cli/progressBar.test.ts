import { Writable } from 'node:stream';
import { expect, it } from 'vitest';
import { progressBar } from '../../src/cli/progressBar.ts';
import { timeLeft } from '../../src/cli/timeLeft.ts';

/** What is written to a stream. */
function stream(properties: object) {
  const written: string[] = [];
  const writable = new Writable({
    write: (chunk, _, done) => {
      written.push(String(chunk));
      done();
    },
  });
  return { written, writable: Object.assign(writable, properties) as NodeJS.WritableStream };
}

const SPEED = { rate: 123.4, seconds: 119.7 };

it.each([
  [0, '1 s'],
  [0.2, '1 s'],
  [59.4, '59 s'],
  [59.6, '1 min'],
  [65, '1 min 5 s'],
  [119.7, '2 min'],
  [569, '9 min 29 s'],
  [599.4, '10 min'],
  [640, '11 min'],
  [2000, '33 min'],
  [3599, '1 h'],
  [41.999 * 3600, '42 h'],
  [41.5 * 3600, '41 h 30 min'],
  [47.999 * 3600, '2 days'],
  [74.2 * 3600, '3 days 2 h'],
])('%f s are told as %s', (seconds, words) => {
  expect(timeLeft(seconds)).toBe(words);
});

it('without a terminal a line is told every few seconds, none twice, and the end once', () => {
  const lines: string[] = [];
  let time = 0;
  const bar = progressBar(
    stream({}).writable,
    (text) => lines.push(text),
    () => time,
  );
  const at = (seconds: number, done: number, speed: typeof SPEED | null) => {
    time = 1000 * seconds;
    bar.update(done, 100, speed);
  };
  at(0, 7, null);
  at(4, 10, null);
  at(6, 20, null);
  at(7, 25, { rate: 4, seconds: 20 });
  at(12, 30, { rate: 2, seconds: 35 });
  at(20, 30, { rate: 2, seconds: 35 });
  at(21, 100, { rate: 20, seconds: 0 });
  bar.stop();
  bar.stop();
  expect(lines).toEqual([
    '20 of 100 runs\n',
    '30 of 100 runs | 2.0 runs/s | 35 s left\n',
    '100 of 100 runs | 20 runs/s\n',
  ]);
});

it('without a terminal nothing is told of a survey that was complete before', () => {
  const lines: string[] = [];
  const bar = progressBar(stream({}).writable, (text) => lines.push(text));
  bar.update(9, 9, null);
  bar.stop();
  expect(lines).toEqual([]);
});

it('on a terminal the bar says nothing of remaining time until it is known', () => {
  const { written, writable } = stream({
    isTTY: true,
    columns: 120,
    cursorTo: () => {},
    clearLine: () => {},
  });
  const bar = progressBar(writable, () => {});
  bar.update(0, 1000, null);
  bar.update(3, 1000, null);
  bar.stop();
  expect(written.join('')).toContain('0 of 1000 runs');
  expect(written.join('')).not.toMatch(/left|runs\/s|NaN|INF/u);
  const later = progressBar(writable, () => {});
  later.update(0, 1000, null);
  later.update(300, 1000, SPEED);
  later.stop();
  expect(written.join('')).toContain('300 of 1000 runs | 123 runs/s | 2 min left');
});
