import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placeLabels, spreadPositions, textWidth } from '../../../src/report/svgLayout.ts';

const SIZE = 12;
const RIGHT = 900;
const marks = fc
  .array(
    fc.record({
      x: fc.double({ min: 60, max: 800, noNaN: true }),
      label: fc.string({ minLength: 1, maxLength: 34 }),
    }),
    {
      maxLength: 12,
    },
  )
  .map((list) => list.sort((a, b) => a.x - b.x));

function span(label: { x: number; label: string; end: boolean }): [number, number] {
  const width = textWidth(label.label, SIZE);
  return label.end ? [label.x - width, label.x] : [label.x, label.x + width];
}

describe('event labels', () => {
  it('no two labels in one row overlap', () => {
    fc.assert(
      fc.property(marks, (list) => {
        const placed = placeLabels(list, RIGHT, SIZE);
        for (const [i, a] of placed.entries()) {
          for (const b of placed.slice(i + 1)) {
            if (a.row !== b.row) continue;
            const [a0, a1] = span(a);
            const [b0, b1] = span(b);
            expect(a1 < b0 || b1 < a0).toBe(true);
          }
        }
      }),
    );
  });

  it('no label passes the right edge', () => {
    fc.assert(
      fc.property(marks, (list) => {
        for (const label of placeLabels(list, RIGHT, SIZE)) expect(span(label)[1]).toBeLessThanOrEqual(RIGHT);
      }),
    );
  });

  it('no line of a later event rises through a label that starts at its own line', () => {
    fc.assert(
      fc.property(marks, (list) => {
        const placed = placeLabels(list, RIGHT, SIZE);
        for (const [i, label] of placed.entries()) {
          if (label.end) continue;
          for (const later of placed.slice(i + 1)) {
            if (later.x <= span(label)[1]) expect(later.row).toBeLessThan(label.row);
          }
        }
      }),
    );
  });
});

describe('labels beside curves', () => {
  it('keep their distance when there is room, and stay inside', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -50, max: 250, noNaN: true }), { minLength: 1, maxLength: 8 }),
        (wanted) => {
          const placed = spreadPositions(wanted, 14, 0, 200).sort((a, b) => a - b);
          expect(placed[0]).toBeGreaterThanOrEqual(0);
          expect(placed.at(-1)).toBeLessThanOrEqual(200);
          // 1e-9 px: rounding of the sums.
          for (let i = 1; i < placed.length; i += 1)
            expect(placed[i]! - placed[i - 1]!).toBeGreaterThanOrEqual(14 - 1e-9);
        },
      ),
    );
  });
});
