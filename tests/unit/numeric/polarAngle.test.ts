import { describe, expect, it } from 'vitest';
import { polarAngle } from '../../../src/numeric/polarAngle.ts';
import { cosineOf, PI, sineOf, toFixed, ulpsFrom } from '../../support/fixedPoint.ts';
import { numbersOf } from '../../support/numbersOf.ts';

const SPECIAL = [0, -0, 1, -1, Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];

/** The exact angle of (x, y), from one that is near it: the sine of the difference is a cross product over a dot product. */
function exactAngle(y: number, x: number): bigint {
  const near = toFixed(Math.atan2(y, x));
  const [c, s] = [cosineOf(near), sineOf(near)];
  const one = toFixed(1);
  const tangent = ((toFixed(y) * c - toFixed(x) * s) * one) / (toFixed(x) * c + toFixed(y) * s);
  return near + tangent;
}

describe('the angle of a vector', () => {
  it('is right to a unit in the last place all around', () => {
    for (const share of numbersOf(300, (value) => value)) {
      const angle = 2 * Math.PI * share - Math.PI;
      const [x, y] = [3 * Math.cos(angle), 3 * Math.sin(angle)];
      expect(Math.abs(ulpsFrom(exactAngle(y, x), polarAngle(y, x))), `${x} ${y}`).toBeLessThan(1);
    }
  });

  it('is right to a unit beside the axes and the diagonals, in any size', () => {
    for (const small of [1e-20, 1e-9, 1e-3, 0.236, 0.237, 0.72, 0.721, 0.999, 1.001, 1e3, 1e9])
      for (const sign of [1, -1])
        expect(Math.abs(ulpsFrom(exactAngle(small, sign), polarAngle(small, sign)))).toBeLessThan(1);
  });

  it('is the engine’s on the axes, at infinity and where it is none', () => {
    for (const x of SPECIAL)
      for (const y of SPECIAL) expect(polarAngle(y, x), `${y}, ${x}`).toBe(Math.atan2(y, x));
    expect(Math.abs(ulpsFrom(PI, Math.PI))).toBeLessThan(0.5);
  });
});
