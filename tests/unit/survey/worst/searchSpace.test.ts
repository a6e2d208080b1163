import { describe, expect, it } from 'vitest';
import type { VariedField } from '../../../../src/survey/spec/survey.ts';
import { searchSpace } from '../../../../src/survey/worst/searchSpace.ts';
import { expectAllWithin, expectWithin } from '../../../support/tolerance.ts';
import { ranged } from './planted.ts';

const ROUNDING = { absolute: 1e-12 };

describe('a field as a coordinate', () => {
  it('meets both bounds exactly and halves them by difference or by ratio', () => {
    const logarithmic: VariedField = { ...ranged(0, 0), spread: { kind: 'logUniform', from: 0.3, to: 30 } };
    const { valuesAt } = searchSpace({ fields: [ranged(0.1, 0.7), logarithmic] });
    expect(valuesAt([0, 0])).toEqual([0.1, 0.3]);
    expect(valuesAt([1, 1])).toEqual([0.7, 30]);
    expectAllWithin(valuesAt([0.5, 0.5]), [0.4, 3], ROUNDING, 'middles');
  });

  it.each([
    { from: 0, to: 360, unit: 'deg', circular: true },
    { from: -180, to: 180, unit: 'deg', circular: true },
    { from: 0, to: 6.2832, unit: 'rad', circular: true },
    { from: 0, to: 180, unit: 'deg', circular: false },
    { from: 0, to: 360, unit: 'ms', circular: false },
    { from: 0, to: 360, unit: 'rad', circular: false },
  ])('from $from to $to $unit is circular: $circular', ({ from, to, unit, circular }) => {
    const { axes, inside, way } = searchSpace({ fields: [ranged(from, to, unit)] });
    expect(axes[0]!.circular).toBe(circular);
    expectWithin(inside([1.1])[0], circular ? 0.1 : 1, ROUNDING, 'past the end');
    expectWithin(inside([-0.1])[0], circular ? 0.9 : 0, ROUNDING, 'before the beginning');
    expectWithin(way([0.9], [0.1])[0], circular ? 0.2 : -0.8, ROUNDING, 'way');
  });
});
