import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fnv1a } from '../../../src/recording/fnv1a.ts';
import { lineOfRow, rowOfLine } from '../../../src/recording/journalLine.ts';
import type { SurveyRow } from '../../../src/survey/spec/survey.ts';

const SHAPE = { fields: 2, metrics: 3 };

const ROW: SurveyRow = {
  run: 17,
  values: [0.1, -0],
  status: 'failed',
  reason: 'a "short"\ncircuit, 3 Ω',
  metrics: [5e-324, null, 1.7976931348623157e308],
  verdict: { outcome: 'notSuitable', decisive: 'stopTime heat' },
};

// Test vectors of the hash's authors (from memory; RFC 9923 lists the same).
it.each([
  ['', '811c9dc5'],
  ['a', 'e40c292c'],
  ['foobar', 'bf9cf968'],
])('the hash of %j is the published one', (text, hash) => {
  expect(fnv1a(text)).toBe(hash);
});

describe('a row as a line', () => {
  it('comes back with every bit, the sign of zero included', () => {
    const number = fc.double({ noNaN: true, noDefaultInfinity: true });
    const rows = fc.record({
      run: fc.nat(),
      values: fc.tuple(number, number),
      status: fc.constantFrom('good' as const, 'refused' as const, 'failed' as const, 'unbalanced' as const),
      reason: fc.option(fc.string({ unit: 'binary' })),
      metrics: fc.tuple(fc.option(number), fc.option(number), fc.option(number)),
      verdict: fc.option(
        fc.record(
          { outcome: fc.constant('suitable' as const), decisive: fc.string() },
          { noNullPrototype: true },
        ),
      ),
    });
    fc.assert(
      fc.property(rows, (row) => {
        const line = lineOfRow(row);
        expect(line).not.toMatch(/[\n\r]/u);
        // toStrictEqual tells −0 from 0.
        expect(rowOfLine(line, SHAPE)).toStrictEqual({ ...row });
      }),
      { seed: 7, numRuns: 200 },
    );
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY])('is refused with %d in it', (value) => {
    expect(() => lineOfRow({ ...ROW, metrics: [value, null, 1] })).toThrow(/expected a finite number/u);
  });

  it('is known as damaged when any one character is another or is missing', () => {
    const line = lineOfRow(ROW);
    expect(rowOfLine(line, SHAPE)).toEqual(ROW);
    for (let at = 0; at < line.length; at += 1) {
      const other = line[at] === '1' ? '2' : '1';
      expect(rowOfLine(line.slice(0, at) + other + line.slice(at + 1), SHAPE)).toBeNull();
      expect(rowOfLine(line.slice(0, at) + line.slice(at + 1), SHAPE)).toBeNull();
    }
  });

  it('of a survey with other numbers of fields or metrics is not taken', () => {
    expect(rowOfLine(lineOfRow(ROW), { fields: 1, metrics: 3 })).toBeNull();
    expect(rowOfLine(lineOfRow(ROW), { fields: 2, metrics: 2 })).toBeNull();
  });

  it.each(['', 'null', '[]', '{}', '[17]', '\0\0\0'])('is not %j', (line) => {
    expect(rowOfLine(line, SHAPE)).toBeNull();
  });
});
