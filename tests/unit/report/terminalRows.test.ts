import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { displayWidth } from '../../../src/report/displayWidth.ts';
import { rowLines } from '../../../src/report/terminalRows.ts';

const word = fc.stringMatching(/^[a-z0-9×−]{1,9}$/u);
const words = (most: number) => fc.array(word, { maxLength: most }).map((parts) => parts.join(' '));
const rows = fc.array(fc.record({ label: word, value: words(3), note: words(12) }), {
  minLength: 1,
  maxLength: 5,
});

describe('rows of the terminal', () => {
  it('hold every word of value and note in order, at any width that holds the longest word', () => {
    fc.assert(
      fc.property(rows, fc.integer({ min: 14, max: 90 }), (table, width) => {
        const lines = rowLines(table, 12, 6, width);
        const shown = lines.map((line) => line.head + line.note);
        for (const line of shown) expect(displayWidth(line.trimEnd())).toBeLessThanOrEqual(width);
        const all = shown.join(' ').replaceAll(/\s+/gu, ' ');
        for (const row of table) for (const value of row.value.split(' ')) expect(all).toContain(value);
        const notes = lines
          .map((line) => line.note)
          .join(' ')
          .trim()
          .replaceAll(/\s+/gu, ' ');
        expect(notes).toBe(
          table
            .map((row) => row.note)
            .filter((note) => note !== '')
            .join(' '),
        );
      }),
    );
  });

  it('the value column grows with the longest value, and all values end in the same column', () => {
    const lines = rowLines(
      [
        { label: 'Current', value: '25 160 A crest', note: '21 × rated' },
        { label: 'Time', value: '1 s', note: '' },
      ],
      10,
      6,
      80,
    );
    expect(lines.map((line) => line.head)).toEqual([
      'Current   25 160 A crest  ',
      'Time                 1 s  ',
    ]);
  });
});
