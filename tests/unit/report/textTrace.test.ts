import { describe, expect, it } from 'vitest';
import { textTrace } from '../../../src/report/textTrace.ts';

const x = Float64Array.from({ length: 1000 }, (_, i) => i);

describe('a trace in text', () => {
  it('shows a peak one sample wide, whatever the width', () => {
    const y = x.map((value) => (value === 617 ? 5 : 0));
    const { lines } = textTrace(x, y, [0, 5], { columns: 20, rows: 4, ascii: true });
    expect(lines[0]?.indexOf('#')).toBe(Math.floor((617 / 999) * 20));
  });

  it('has as many lines and characters as asked for, and zero on the line it names', () => {
    const { lines, zeroLine } = textTrace(
      x,
      x.map(() => -1),
      [-3, 1],
      { columns: 30, rows: 9, ascii: true },
    );
    expect(lines).toHaveLength(9);
    expect(lines.map((line) => line.length)).toEqual(Array(9).fill(30));
    // Zero is a quarter of the way down from 1 to −3: 0.25 × 8 = line 2.
    expect(zeroLine).toBe(2);
    expect(lines[zeroLine]).toBe('-'.repeat(30));
  });

  it('fills braille dots in both halves of a cell for a constant trace', () => {
    const { lines } = textTrace(
      x,
      x.map(() => 1),
      [0, 1],
      { columns: 3, rows: 1, ascii: false },
    );
    // Dots 1 and 4 on top (U+2809), and dot 7 of the zero line at the bottom.
    expect(lines).toEqual(['\u2849\u2849\u2849']);
  });
});
