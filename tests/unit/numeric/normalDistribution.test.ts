import { describe, expect, it } from 'vitest';
import { inverseNormalDistribution, normalDistribution } from '../../../src/numeric/normalDistribution.ts';
import { exponentialOf, PI, rootOf, toFixed, ulpsFrom } from '../../support/fixedPoint.ts';
import { numbersOf } from '../../support/numbersOf.ts';
import { errorInTolerances } from '../../support/tolerance.ts';

const ONE = toFixed(1);
const times = (a: bigint, b: bigint) => (a * b) / ONE;

/** The distribution function in fixed point with hundreds of digits, by its series about 0. */
function exactly(x: number): bigint {
  const exact = toFixed(Math.abs(x));
  const square = times(exact, exact);
  let sum = 0n;
  for (let term = exact, odd = 3n; term !== 0n; term = times(term, square) / odd, odd += 2n) sum += term;
  const share = (times(exponentialOf(-square / 2n), sum) * ONE) / rootOf(2n * PI);
  return x < 0 ? ONE / 2n - share : ONE / 2n + share;
}

describe('the normal distribution function', () => {
  it.each([
    ['near the mean', 40, (share: number) => 3.1 * share - 1.55],
    ['in the upper tail', 20, (share: number) => 1.5 + 8 * share],
    ['in the lower tail', 40, (share: number) => -1.5 - 8 * share],
    ['in the far lower tail', 12, (share: number) => -9 - 20 * share],
  ])('is right to 20 units in the last place %s', (_name, count, map) => {
    for (const x of numbersOf(count, map))
      expect(Math.abs(ulpsFrom(exactly(x), normalDistribution(x))), String(x)).toBeLessThan(20);
  });

  // Abramowitz and Stegun, Handbook of Mathematical Functions, table 26.1, from memory: as many digits as
  // stand here.
  it.each([
    [0, 0.5],
    [0.5, 0.691462461274013],
    [1, 0.841344746068543],
    [2, 0.977249868051821],
    [3, 0.99865010196837],
  ])('is as printed at %f', (x, printed) => {
    expect(errorInTolerances(normalDistribution(x), printed, { absolute: 1e-15 })).toBeLessThanOrEqual(1);
  });

  it('has limits', () => {
    expect(normalDistribution(Number.NEGATIVE_INFINITY)).toBe(0);
    expect(normalDistribution(Number.POSITIVE_INFINITY)).toBe(1);
    expect(normalDistribution(Number.NaN)).toBeNaN();
    expect(normalDistribution(-37)).toBeGreaterThan(0);
    expect(normalDistribution(-1e9)).toBe(0);
  });
});

describe('its inverse', () => {
  // The first three: the check values printed with the algorithm (AS 241, from memory). The others:
  // percentage points of the normal distribution in any table of statistics, such as Abramowitz and Stegun,
  // table 26.5, from memory.
  it.each([
    [0.25, -0.6744897501960817],
    [0.001, -3.090232306167814],
    [1e-20, -9.26234008979841],
    [0.9, 1.2815515655446004],
    [0.95, 1.6448536269514722],
    [0.975, 1.959963984540054],
    [0.99, 2.3263478740408408],
    [0.995, 2.5758293035489004],
    [0.9995, 3.2905267314919255],
  ])('is as printed at %d', (p, printed) => {
    // The last bit of p beside 1 is worth up to 1e-14 here.
    expect(errorInTolerances(inverseNormalDistribution(p), printed, { relative: 2e-14 })).toBeLessThanOrEqual(
      1,
    );
  });

  it.each([
    ['in the middle', (share: number) => 0.08 + 0.84 * share],
    ['in the lower tail', (share: number) => 10 ** (-1.1 - 10 * share)],
    ['in the far lower tail', (share: number) => 10 ** (-11 - 280 * share)],
  ])('is undone by the distribution function %s', (_name, map) => {
    // An error of x shows about x² times as large in a small p; 20 units more for the function itself.
    for (const p of numbersOf(300, map)) {
      const x = inverseNormalDistribution(p);
      expect(Math.abs(normalDistribution(x) / p - 1), String(p)).toBeLessThan(1e-15 * x * x + 4.4e-15);
    }
  });

  it('rises without a step where the formulas meet', () => {
    for (const seam of [0.075, 0.925, 1.3887943864964021e-11]) {
      const before = inverseNormalDistribution(seam * (1 - 1e-12));
      const after = inverseNormalDistribution(seam * (1 + 1e-12));
      expect(after).toBeGreaterThan(before);
      expect(after - before).toBeLessThan(1e-10);
    }
  });

  it('has limits and refuses what is no probability', () => {
    expect(inverseNormalDistribution(0)).toBe(Number.NEGATIVE_INFINITY);
    expect(inverseNormalDistribution(1)).toBe(Number.POSITIVE_INFINITY);
    expect(inverseNormalDistribution(0.5)).toBe(0);
    for (const p of [-1e-9, 1.1, Number.NaN])
      expect(() => inverseNormalDistribution(p)).toThrow(/no probability: 0 to 1/u);
  });
});
