import { expect, it } from 'vitest';
import type { PointMark } from '../../../src/report/figureSpec.ts';
import { pointMarks } from '../../../src/report/svgPoints.ts';

const BOX = { left: 0, right: 600, top: 0, bottom: 300 };
const STYLE = { theme: 'light', id: 'x', fontSize: 13, narrow: false } as const;

function textsOf(
  points: readonly PointMark[],
  narrow = false,
): { x: number; y: number; anchor: string; text: string }[] {
  const svg = pointMarks(
    points,
    BOX,
    (x) => x,
    (y) => 150 - y,
    { ...STYLE, narrow },
  );
  return [...svg.matchAll(/<text x="([\d.]+)" y="([\d.]+)" text-anchor="(\w+)"[^>]*>([^<]*)</gu)].map(
    ([, x, y, anchor, text]) => ({ x: Number(x), y: Number(y), anchor: anchor!, text: text! }),
  );
}

const point = (x: number, y: number, label: string, more: Partial<PointMark> = {}): PointMark => ({
  x,
  y,
  label,
  quantity: 'torque',
  ...more,
});

it('a label stands above a crest and below a trough, or where its point says', () => {
  const [crest, trough, stated] = textsOf([
    point(50, 100, 'crest'),
    point(250, -100, 'trough'),
    point(450, 100, 'minimum', { place: 'below' }),
  ]);
  expect(crest!.y).toBeLessThan(50);
  expect(trough!.y).toBeGreaterThan(250);
  expect(stated!.y).toBeGreaterThan(50);
});

it('labels of neighbouring points do not lie on each other', () => {
  const [first, second] = textsOf([
    point(100, 20, 'a rather long label'),
    point(140, 22, 'another long label'),
  ]);
  const apart = Math.abs(first!.y - second!.y) >= 13 || first!.anchor !== second!.anchor;
  expect(apart).toBe(true);
});

it('no label is pushed out of the panel to keep clear of another', () => {
  const labels = textsOf([point(480, 20, 'a label of some length'), point(590, 20, 'one at the right edge')]);
  expect(labels.map((label) => label.anchor)).toEqual(['end', 'end']);
});

it('a narrow drawing has the short label where there is one', () => {
  const marks = [point(100, 20, 'breakdown 704 N·m, 3.00 × rated', { short: 'breakdown 704 N·m' })];
  expect(textsOf(marks, true)[0]!.text).toBe('breakdown 704 N·m');
  expect(textsOf(marks)[0]!.text).toBe('breakdown 704 N·m, 3.00 × rated');
});
