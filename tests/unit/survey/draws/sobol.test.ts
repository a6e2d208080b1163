import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DIRECTION_ROWS } from '../../../../src/survey/draws/directionRows.ts';
import { randomStream } from '../../../../src/survey/draws/randomStream.ts';
import { MOST_SOBOL_DIMENSIONS, plainSobol, sobolPoint } from '../../../../src/survey/draws/sobol.ts';

const CELLS = 2 ** 32;
const anySeed = fc.integer({ min: 0, max: 2 ** 32 - 1 });
const counted = <T>(length: number, of: (i: number) => T) => Array.from({ length }, (_, i) => of(i));

/** x^power modulo a polynomial over the two-element field, all as bits. */
function powerOfX(power: number, polynomial: number, degree: number): number {
  const times = (a: number, b: number) => {
    let product = 0;
    for (let left = a, right = b; right !== 0; right >>>= 1) {
      if (right & 1) product ^= left;
      left <<= 1;
      if (left >>> degree) left ^= polynomial;
    }
    return product;
  };
  let result = 1;
  for (let square = degree === 1 ? 2 ^ polynomial : 2, left = power; left !== 0; left >>>= 1) {
    if (left & 1) result = times(result, square);
    square = times(square, square);
  }
  return result;
}

const primeFactors = (n: number): number[] => {
  for (let p = 2; p * p <= n; p++) if (n % p === 0) return [p, ...primeFactors(n / p)];
  return n > 1 ? [n] : [];
};

describe('the table of direction numbers', () => {
  it('holds a primitive polynomial in each row, none twice, and odd first numbers of 1, 2, 3 … bits', () => {
    const polynomials = DIRECTION_ROWS.map(([a, ...m]) => 2 ** m.length + 2 * a! + 1);
    expect(new Set(polynomials).size).toBe(127);
    DIRECTION_ROWS.forEach(([, ...m], row) => {
      const order = 2 ** m.length - 1;
      // Primitive: x has the order 2^s − 1 and no smaller one.
      expect(powerOfX(order, polynomials[row]!, m.length)).toBe(1);
      for (const factor of primeFactors(order))
        if (order > 1) expect(powerOfX(order / factor, polynomials[row]!, m.length)).not.toBe(1);
      m.forEach((number, k) => {
        expect(number % 2).toBe(1);
        expect(number).toBeLessThan(2 ** (k + 1));
      });
    });
  });
});

describe('the plain sequence', () => {
  it('begins as its authors print it', () => {
    // First points in three dimensions as printed with the program of Joe and Kuo, new-joe-kuo-6.
    const printed = [
      [0, 0, 0],
      [0.5, 0.5, 0.5],
      [0.75, 0.25, 0.25],
      [0.25, 0.75, 0.75],
      [0.375, 0.375, 0.625],
      [0.875, 0.875, 0.125],
      [0.625, 0.125, 0.875],
      [0.125, 0.625, 0.375],
      [0.1875, 0.3125, 0.9375],
      [0.6875, 0.8125, 0.4375],
    ];
    expect(printed.map((_, i) => counted(3, (d) => plainSobol(i, d) / CELLS))).toEqual(printed);
  });

  it.each([
    [
      5,
      [
        3758096384, 536870912, 536870912, 2684354560, 536870912, 2684354560, 3758096384, 536870912,
        1610612736, 536870912,
      ],
    ],
    [
      100,
      [
        1107296256, 3321888768, 2986344448, 1442840576, 4194304000, 301989888, 1912602624, 167772160,
        838860800, 1979711488,
      ],
    ],
    [
      2730,
      [
        286261248, 11534336, 3933208576, 3880779776, 2888826880, 2454716416, 3887071232, 2821718016,
        2486173696, 1771044864,
      ],
    ],
    [
      4095,
      [
        4042260480, 1435500544, 1058013184, 2238709760, 2492465152, 2922381312, 416284672, 1481637888,
        3025141760, 1123024896,
      ],
    ],
  ])(
    'has the same point %i in dimensions 2 … 128 as SciPy 1.17.1 (stats.qmc.Sobol, 32 bits)',
    (index, cells) => {
      const dimensions = [1, 2, 9, 19, 36, 52, 74, 100, 119, 127];
      expect(dimensions.map((d) => plainSobol(index, d))).toEqual(cells);
    },
  );
});

describe('the scrambled sequence', () => {
  it('puts one of every 2^m points into each of 2^m strata of each coordinate, wherever it is begun', () => {
    fc.assert(
      fc.property(anySeed, fc.integer({ min: 0, max: 6 }), fc.nat({ max: 20 }), (seed, m, block) => {
        const points = counted(2 ** m, (i) => sobolPoint(block * 2 ** m + i, MOST_SOBOL_DIMENSIONS, seed));
        for (let d = 0; d < MOST_SOBOL_DIMENSIONS; d++)
          expect(new Set(points.map((point) => Math.floor(point[d]! * 2 ** m))).size).toBe(2 ** m);
      }),
      { numRuns: 6, seed: 1 },
    );
  });

  it('puts one of 2^m points into each box of area 2^-m on the first two coordinates', () => {
    const points = counted(256, (i) => sobolPoint(i, 2, 7));
    for (let wide = 0; wide <= 8; wide++) {
      const boxes = points.map(
        ([x, y]) => `${Math.floor(x! * 2 ** wide)} ${Math.floor(y! * 2 ** (8 - wide))}`,
      );
      expect(new Set(boxes).size, `2^${wide} columns`).toBe(256);
    }
  });

  it('makes each point by itself uniform over the seeds', () => {
    // Each of 16 boxes gets 1600/16 = 100 on average; 5 deviations are 48.
    for (const index of [0, 1, 1000]) {
      const boxes = new Array<number>(16).fill(0);
      for (let seed = 0; seed < 1600; seed++) {
        const [x, y] = sobolPoint(index, 2, seed);
        const box = 4 * Math.floor(4 * x!) + Math.floor(4 * y!);
        boxes[box] = boxes[box]! + 1;
      }
      for (const count of boxes) expect(Math.abs(count - 100)).toBeLessThan(48);
    }
  });

  it('moves points of one half apart from those of the other, unlike a shift', () => {
    // A digital shift flips the same bits of every point; nested scrambling does not.
    const flips = counted(64, (i) => ((sobolPoint(i, 1, 3)[0]! * CELLS - 0.5) ^ plainSobol(i, 0)) >>> 0);
    expect(new Set(flips.map((bits) => bits >>> 31)).size).toBe(1);
    for (const bit of [30, 29, 28])
      expect(new Set(flips.map((bits) => (bits >>> bit) & 1)).size, `bit ${bit}`).toBe(2);
  });

  it('integrates a smooth function ten times as exactly as pseudo-random draws', () => {
    // The product of 1 + (x − ½) over five coordinates has the integral 1.
    const error = (pointOf: (i: number) => number[]) => {
      let sum = 0;
      for (let i = 0; i < 1024; i++) sum += pointOf(i).reduce((product, x) => product * (0.5 + x), 1);
      return sum / 1024 - 1;
    };
    const meanSquare = (errors: number[]) => errors.reduce((sum, e) => sum + e * e, 0) / errors.length;
    const quasi = meanSquare(counted(8, (seed) => error((i) => sobolPoint(i, 5, seed))));
    const pseudo = meanSquare(
      counted(8, (seed) =>
        error((i) => {
          const next = randomStream(seed, i);
          return counted(5, next);
        }),
      ),
    );
    // Variance of the product: (13/12)^5 − 1 = 0.492; of a mean of 1024 draws 4.8e-4.
    expect(pseudo).toBeGreaterThan(1e-4);
    expect(pseudo).toBeLessThan(2e-3);
    expect(Math.sqrt(quasi)).toBeLessThan(Math.sqrt(pseudo) / 10);
  });

  it('is another one for another seed, and stays inside the cube in the middles of its cells', () => {
    expect(sobolPoint(0, 3, 1)).not.toEqual(sobolPoint(0, 3, 2));
    for (let i = 0; i < 500; i++)
      expect(sobolPoint(CELLS - 1 - i, 3, i).every((x) => x > 0 && x < 1 && (x * CELLS) % 1 === 0.5)).toBe(
        true,
      );
  });

  it('refuses points and dimensions that it does not have', () => {
    expect(() => sobolPoint(CELLS, 2, 1)).toThrow(/point 4294967296: a Sobol sequence has points 0 to/u);
    expect(() => sobolPoint(0.5, 2, 1)).toThrow(RangeError);
    expect(() => sobolPoint(0, 129, 1)).toThrow(/129 dimensions: .* up to 128/u);
  });
});
