import { describe, expect, it } from 'vitest';
import { mixedBits } from '../../../../src/survey/draws/mixedBits.ts';
import { randomStream } from '../../../../src/survey/draws/randomStream.ts';

/** Correlation of two lists. */
function correlation(a: readonly number[], b: readonly number[]): number {
  const mean = (list: readonly number[]) => list.reduce((sum, x) => sum + x, 0) / list.length;
  const [ma, mb] = [mean(a), mean(b)];
  const cross = (p: readonly number[], mp: number, q: readonly number[], mq: number) =>
    p.reduce((sum, x, i) => sum + (x - mp) * (q[i]! - mq), 0);
  return cross(a, ma, b, mb) / Math.sqrt(cross(a, ma, a, ma) * cross(b, mb, b, mb));
}

/** Draw number `draw` of streams 0 … 3999, or of their seeds. */
const firstDraws = (draw: number, streamOf: (k: number) => () => number) =>
  Array.from({ length: 4000 }, (_, k) => {
    const next = streamOf(k);
    for (let skipped = 0; skipped < draw; skipped++) next();
    return next();
  });

describe('random streams', () => {
  it('give the same numbers for the same seed and stream', () => {
    const [a, b] = [randomStream(5, 9), randomStream(5, 9)];
    for (let i = 0; i < 20; i++) expect(a()).toBe(b());
  });

  it.each([
    ['streams of one seed', (k: number) => randomStream(1, k)],
    ['streams of large numbers', (k: number) => randomStream(1, 2 ** 32 * k + 7)],
    ['seeds', (k: number) => randomStream(k, 0)],
  ])('are uniform and not correlated over neighbouring %s', (_name, streamOf) => {
    const draws = [0, 1, 2].map((draw) => firstDraws(draw, streamOf));
    // A correlation of 4000 independent pairs deviates by 1/√4000 = 0.016; 4 deviations.
    for (const list of draws) {
      expect(Math.abs(correlation(list.slice(1), list.slice(0, -1)))).toBeLessThan(0.064);
      // Kolmogorov and Smirnov, 1 % point 1.63/√n.
      const greatest = list
        .toSorted((x, y) => x - y)
        .reduce((most, x, i) => Math.max(most, Math.abs(x - i / 4000), Math.abs(x - (i + 1) / 4000)), 0);
      expect(greatest * Math.sqrt(4000)).toBeLessThan(1.63);
    }
    expect(Math.abs(correlation(draws[0]!, draws[1]!))).toBeLessThan(0.064);
    expect(Math.abs(correlation(draws[0]!, draws[2]!))).toBeLessThan(0.064);
  });

  it('differ from one another among sixty thousand, and from those 2^32 further on', () => {
    const first = new Set<number>();
    for (let k = 0; k < 60_000; k++) first.add(randomStream(1, k)());
    // Of 53 bits none coincide among so many but by a chance of 1e-6; of states of 32 bits one or two would.
    expect(first.size).toBe(60_000);
    expect(first.has(randomStream(1, 2 ** 32)())).toBe(false);
    expect(randomStream(0, 3)()).not.toBe(randomStream(1, 3)());
  });

  it('stay between 0 and 1', () => {
    const next = randomStream(3, 2 ** 53 - 1);
    const draws = Array.from({ length: 2000 }, next);
    expect(draws.every((u) => u > 0 && u < 1)).toBe(true);
  });
});

describe('mixed bits', () => {
  it('change by half when a bit of the word changes', () => {
    const ones = (word: number) => word.toString(2).replaceAll('0', '').length;
    for (let bit = 0; bit < 32; bit++) {
      let changed = 0;
      for (let word = 0; word < 200; word++)
        changed += ones((mixedBits(word) ^ mixedBits(word ^ (1 << bit))) >>> 0);
      // Of 32 bits 16 on average; over 200 words the mean deviates by 0.2 where all bits are independent.
      expect(Math.abs(changed / 200 - 16), `bit ${bit}`).toBeLessThan(1);
    }
  });

  it('are whole numbers of 32 bits, of which no two words share one', () => {
    const seen = new Set(Array.from({ length: 50_000 }, (_, word) => mixedBits(word * 85_899)));
    expect(seen.size).toBe(50_000);
    expect([...seen].every((bits) => Number.isInteger(bits) && bits >= 0 && bits < 2 ** 32)).toBe(true);
  });
});
