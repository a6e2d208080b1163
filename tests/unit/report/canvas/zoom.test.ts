import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { keyWish, wheelFactor } from '../../../../src/report/canvas/figureKeys.ts';
import {
  chosenSpan,
  clamped,
  following,
  moved,
  type Span,
  sameSpan,
  zoomed,
} from '../../../../src/report/canvas/zoom.ts';
import { expectWithin } from '../../../support/tolerance.ts';

const WHOLE: Span = [1, 5];
/** s: some rounding of numbers of a few seconds. */
const CLOSE = { absolute: 1e-12 };

describe('stretches of an axis', () => {
  it('the whole is no stretch', () => {
    expect(clamped([1, 5], WHOLE)).toBeNull();
    expect(clamped([-3, 9], WHOLE)).toBeNull();
    expect(clamped(null, WHOLE)).toBeNull();
  });

  it('a stretch that hangs over an edge is moved in and keeps its length', () => {
    expect(clamped([0, 1], WHOLE)).toEqual([1, 2]);
    expect(clamped([4.5, 5.5], WHOLE)).toEqual([4, 5]);
  });

  it('enlarging by two halves the length and leaves the place under the hand where it is', () => {
    const [from, to] = zoomed(null, WHOLE, 2, 2)!;
    expectWithin(to - from, 2, CLOSE, 'length');
    expectWithin((2 - from) / (to - from), (2 - 1) / 4, CLOSE, 'place of the hand');
  });

  it('reducing undoes enlarging, and reducing all shows all', () => {
    const [from, to] = zoomed(zoomed([2, 3], WHOLE, 2, 2.4), WHOLE, 0.5, 2.4)!;
    expectWithin(from, 2, CLOSE, 'from');
    expectWithin(to, 3, CLOSE, 'to');
    expect(zoomed([2, 3], WHOLE, 0.1, 2.4)).toBeNull();
  });

  it('is moved by a share of its own length, up to the edge', () => {
    expect(moved([2, 3], WHOLE, 0.5)).toEqual([2.5, 3.5]);
    expect(moved([2, 3], WHOLE, 10)).toEqual([4, 5]);
    expect(moved(null, WHOLE, 1)).toBeNull();
  });

  it('follows what leaves it and stays where it is otherwise', () => {
    expect(following([2, 3], WHOLE, 2.9)).toEqual([2, 3]);
    expectWithin(following([2, 3], WHOLE, 3.2)![0], 3.2 - 1 / 8, CLOSE, 'onwards: an eighth behind it');
    expectWithin(following([2, 3], WHOLE, 1.9)![1], 1.9 + 1 / 8, CLOSE, 'back: an eighth behind it');
    expect(following(null, WHOLE, 4)).toBeNull();
  });

  it('whatever is done, a stretch lies in the whole and is not empty', () => {
    const number = fc.double({ min: -20, max: 20, noNaN: true });
    fc.assert(
      fc.property(
        number,
        number,
        fc.double({ min: 0.01, max: 1e6, noNaN: true }),
        number,
        (a, b, factor, x) => {
          const span = clamped([a, b], WHOLE);
          for (const next of [
            span,
            zoomed(span, WHOLE, factor, x),
            moved(span, WHOLE, x),
            following(span, WHOLE, x),
          ]) {
            const [from, to] = next ?? WHOLE;
            expect(from).toBeGreaterThanOrEqual(WHOLE[0] - 1e-9);
            expect(to).toBeLessThanOrEqual(WHOLE[1] + 1e-9);
            expect(to - from).toBeGreaterThanOrEqual(1e-4 * 4 - 1e-9);
          }
        },
      ),
      { seed: 6, numRuns: 300 },
    );
  });

  it('a hand that hardly moved has chosen nothing', () => {
    const px = (x: number) => 100 * x;
    expect(chosenSpan(2, 2.03, px)).toBeUndefined();
    expect(chosenSpan(3, 2, px)).toEqual([2, 3]);
  });

  it('is the same as another with the same ends', () => {
    expect(sameSpan([1, 2], [1, 2])).toBe(true);
    expect(sameSpan([1, 2], null)).toBe(false);
    expect(sameSpan(null, null)).toBe(true);
  });
});

describe('keys on a picture', () => {
  const stroke = { shift: false, cursor: 2, range: WHOLE, span: null, whole: WHOLE };
  const seek = (key: string, change = {}) => {
    const wish = keyWish({ ...stroke, key, ...change });
    return wish?.kind === 'seek' ? wish.x : undefined;
  };

  it('arrows move the cursor by a two-hundredth of what is visible, ten times that with shift', () => {
    expectWithin(seek('ArrowRight'), 2 + 4 / 200, CLOSE, 'right');
    expectWithin(seek('ArrowLeft', { shift: true }), 2 - 40 / 200, CLOSE, 'left with shift');
    expectWithin(seek('ArrowRight', { span: [1.9, 2.1] }), 2 + 0.2 / 200, CLOSE, 'enlarged');
  });

  it('the cursor stays in the run', () => {
    expect(seek('ArrowLeft', { cursor: 1 })).toBe(1);
    expect(seek('PageUp', { cursor: 4.999 })).toBe(5);
  });

  it('home and end go to the edges of what is visible', () => {
    expect(seek('Home', { span: [2, 3] })).toBe(2);
    expect(seek('End', { span: [2, 3] })).toBe(3);
    expect(seek('End')).toBe(5);
  });

  it('plus and minus enlarge and reduce about the cursor, escape shows all', () => {
    expect(keyWish({ ...stroke, key: '+' })).toEqual({ kind: 'span', span: [1.5, 3.5] });
    expect(keyWish({ ...stroke, key: '-', span: [1.5, 3.5] })).toEqual({ kind: 'span', span: null });
    expect(keyWish({ ...stroke, key: 'Escape', span: [2, 3] })).toEqual({ kind: 'span', span: null });
  });

  it('any other key is left to the page', () => {
    expect(keyWish({ ...stroke, key: 'Tab' })).toBeNull();
  });

  it('a wheel turned back undoes what it did', () => {
    expectWithin(wheelFactor(100) * wheelFactor(-100), 1, CLOSE, 'both turns');
    expect(wheelFactor(-100)).toBeGreaterThan(1);
  });
});
