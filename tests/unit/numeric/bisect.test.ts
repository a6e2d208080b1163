import { describe, it } from 'vitest';
import { bisect } from '../../../src/numeric/bisect.ts';
import { expectWithin } from '../../support/tolerance.ts';

describe('bisect', () => {
  it.each([
    ['rising', (x: number) => x * x - 2],
    ['falling', (x: number) => 2 - x * x],
  ])('finds the root of a %s function to the last bit', (_name, f) => {
    expectWithin(bisect(f, 0, 2), Math.SQRT2, { relative: 2 * Number.EPSILON }, 'root');
  });

  it('finds a root close to zero with full relative accuracy', () => {
    expectWithin(
      bisect((x) => x - 1e-9, 0, 1),
      1e-9,
      { relative: 1e-6 },
      'root',
    );
  });
});
