import { describe, expect, it } from 'vitest';
import { makeErosion } from '../../../../src/assess/wear/makeErosion.ts';
import { making, STATED_CONTACTOR } from '../../../support/contactors.ts';
import { expectWithin } from '../../../support/tolerance.ts';

const EXACT = { relative: 1e-12 };
const device = { ...STATED_CONTACTOR, bounceTime: 0.002 };
/** Three poles at 6 × 10 A r.m.s. for 2 ms: the mean of the rectified sine is 2/π of its crest. */
const CONTAINED = 3 * (2 / Math.PI) * Math.SQRT2 * 60 * 0.002;

describe('make erosion', () => {
  it('is not judged without a bounce time, never zero', () => {
    const { wear, bounceCharge, remark } = makeErosion(making('forward', 60), STATED_CONTACTOR, 400, 50);
    expect(wear).toBeNull();
    expect(bounceCharge).toBeNull();
    expect(remark).toBe('make erosion is not judged because the bounce time is missing');
  });

  it('up to the charge that the durability tests make is in the stated lives', () => {
    const erosion = makeErosion(making('forward', 60, CONTAINED / 3), device, 400, 50);
    expectWithin(erosion.contained, CONTAINED, EXACT, 'contained');
    expectWithin(erosion.bounceCharge, CONTAINED, EXACT, 'charge');
    expectWithin(erosion.wear, 0, { absolute: 1e-15 }, 'wear');
    expect(erosion.remark).toContain('which the stated lives contain');
  });

  it('beyond it wears as the same arc charge does in the AC-3 test', () => {
    // One AC-3 breaking of 10 A wears 1e-6 with (1 + √3)·√2·10/ω; the excess here is twice that charge.
    const perBreaking = ((1 + Math.sqrt(3)) * Math.SQRT2 * 10) / (100 * Math.PI);
    const erosion = makeErosion(making('forward', 60, (CONTAINED + 2 * perBreaking) / 3), device, 400, 50);
    expectWithin(erosion.wear, 2e-6, { relative: 1e-9 }, 'wear');
    expect(erosion.remark).toContain('the excess counts');
  });
});
