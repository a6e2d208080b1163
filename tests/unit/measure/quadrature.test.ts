import { describe, expect, it } from 'vitest';
import { integral, quadratureOf } from '../../../src/measure/quadrature.ts';
import { GAUSS_POINTS } from '../../../src/numeric/gaussPoints.ts';
import { syntheticTrajectory } from '../../support/syntheticTrajectory.ts';
import { expectWithin } from '../../support/tolerance.ts';

describe('the Gauss points', () => {
  it('integrate every power up to 9 exactly, and not 10', () => {
    for (let power = 0; power <= 9; power++) {
      const sum = GAUSS_POINTS.reduce((total, { x, w }) => total + w * x ** power, 0);
      expectWithin(sum, 1 / (power + 1), { relative: 1e-14 }, `x^${power}`);
    }
    const tenth = GAUSS_POINTS.reduce((total, { x, w }) => total + w * x ** 10, 0);
    expect(Math.abs(tenth * 11 - 1)).toBeGreaterThan(1e-6);
  });
});

describe('integral', () => {
  const cuts = [0, 0.013, 0.0137, 0.05, 0.121];

  it('is exact for a polynomial of degree 9, whatever the cells and limits', () => {
    const p = (t: number) => 10 + 3e3 * t - 5e4 * t ** 2 + 4e10 * t ** 9;
    const P = (t: number) => 10 * t + 1.5e3 * t ** 2 - (5e4 / 3) * t ** 3 + 4e9 * t ** 10;
    const quadrature = quadratureOf(syntheticTrajectory({ iAlpha: p }, cuts));
    for (const [a, b] of [
      [0, 0.121],
      [0.0021, 0.0022],
      [0.013, 0.05],
      [0.0077, 0.1203],
      [0.05, 0.05],
    ] as const)
      expectWithin(integral(quadrature, 'iA', a, b), P(b) - P(a), { absolute: 1e-13 }, `${a} to ${b}`);
  });

  it('of a squared alternating current is exact to 1e-6 of its amplitude times the time', () => {
    const omega = 120 * Math.PI;
    const quadrature = quadratureOf(
      syntheticTrajectory(
        { iAlpha: (t) => 7 * Math.cos(omega * t), iBeta: (t) => 7 * Math.sin(omega * t) },
        cuts,
      ),
    );
    const exact = (t: number) => 49 * (t / 2 + Math.sin(2 * omega * t) / (4 * omega));
    expectWithin(
      integral(quadrature, 'iA2', 0.003, 0.117),
      exact(0.117) - exact(0.003),
      { absolute: 3e-6 },
      'i²t',
    );
    // All three phases together are constant: exact.
    const all = (['iA2', 'iB2', 'iC2'] as const).reduce(
      (sum, key) => sum + integral(quadrature, key, 0.003, 0.117),
      0,
    );
    expectWithin(all, 1.5 * 49 * 0.114, { absolute: 1e-5 }, 'three phases');
  });

  it('moves limits outside the run to its ends', () => {
    const quadrature = quadratureOf(syntheticTrajectory({ iAlpha: () => 2 }, cuts));
    expectWithin(integral(quadrature, 'iA', -5, 3), 2 * 0.121, { relative: 1e-14 }, 'whole run');
  });

  it('sees a jump between segments on its proper side', () => {
    const step = (t: number) => (t < 0.05 ? 1 : 4);
    const quadrature = quadratureOf(syntheticTrajectory({ iAlpha: step }, cuts));
    expectWithin(integral(quadrature, 'iA', 0.04, 0.06), 0.05, { relative: 1e-13 }, 'across the jump');
  });

  it('gives speed times torque as air-gap power', () => {
    const quadrature = quadratureOf(
      syntheticTrajectory({ torque: () => -30, speed: (t) => 100 - 200 * t }, cuts),
    );
    const turned = 100 * 0.121 - 100 * 0.121 ** 2;
    expectWithin(integral(quadrature, 'airGapPower', 0, 0.121), -30 * turned, { relative: 1e-13 }, 'work');
  });
});
