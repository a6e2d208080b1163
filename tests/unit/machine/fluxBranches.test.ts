import { describe, expect, it } from 'vitest';
import type { FluxBranch } from '../../../src/machine/fluxBranch.ts';
import { leakageLaw } from '../../../src/machine/leakageLaw.ts';
import { magnetisingCurve } from '../../../src/machine/magnetisingCurve.ts';
import { expectWithin } from '../../support/tolerance.ts';
import {
  leakageFlux,
  MAIN_SATURATION,
  magnetisingCurrent,
  magnetisingSlope,
  mainFlux,
  RATED_FLUX,
} from './saturableMachine.ts';

/** Six points with an initial foot, a knee and a steep end. */
const POINTS = [0.3, 0.7, 0.9, 1, 1.1, 1.3].map((flux, k) => ({
  flux,
  current: [4, 8, 10.5, 13, 18, 40][k]!,
}));

describe('the leakage law', () => {
  const L = 1.4e-3;
  const saturation = { current: 80, remaining: 0.3 };

  it.each([0, 0.5e-3])(
    'is inverted to a few roundings at currents from 1 µA to 1 MA, series inductance %d H',
    (series) => {
      const law = leakageLaw(L, saturation, series);
      for (let i = 1e-6; i < 1e6; i *= 1.37) {
        const flux = leakageFlux(L, saturation, i) + series * i;
        expectWithin(law.flux(i), flux, { relative: 4e-16 }, `flux at ${i} A`);
        // λ(i) bends by less than a factor 1/r, so that roundings of λ grow by that at most.
        expectWithin(law.current(flux), i, { relative: 4e-15 }, `current at ${i} A`);
      }
      expect(law.current(0)).toBe(0);
    },
  );

  it('has the full inductance at small current and the remaining part of it at large current', () => {
    const law = leakageLaw(L, saturation);
    expectWithin(law.slopeAtZero, 1 / L, { relative: 1e-15 }, 'slope at zero');
    expectWithin(law.slope(0, 0), 1 / L, { relative: 1e-15 }, 'slope at no current');
    // What is left of the saturable part is 0.7/0.3·(I/i)³.
    const i = 1e5 * saturation.current;
    expectWithin(law.slope(law.flux(i), i), 1 / (0.3 * L), { relative: 1e-14 }, 'slope at large current');
  });

  it('with nothing to saturate is a plain inductance', () => {
    const law = leakageLaw(L, { current: 80, remaining: 1 }, 1e-3);
    expectWithin(law.current(0.5), 0.5 / (L + 1e-3), { relative: 4e-16 }, 'current');
  });
});

describe('the magnetising curve', () => {
  it('goes through the origin and every point, rising', () => {
    const curve = magnetisingCurve(POINTS);
    expect(curve.current(0)).toBe(0);
    for (const { flux, current } of POINTS)
      expectWithin(curve.current(flux), current, { relative: 1e-15 }, `current at ${flux} Wb`);
    for (let flux = 0; flux < 2; flux += 1e-3) expect(curve.slope(flux, 0)).toBeGreaterThan(0);
  });

  it('is straight up to the first point, and beyond the last one along its tangent there', () => {
    const curve = magnetisingCurve(POINTS);
    expectWithin(curve.current(0.1), 4 / 3, { relative: 1e-14 }, 'a third of the way to the first point');
    const end = curve.slope(1.3, 40);
    expectWithin(curve.current(1.7), 40 + 0.4 * end, { relative: 1e-14 }, 'current beyond');
    expectWithin(curve.slope(1.7, 0), end, { relative: 1e-15 }, 'slope beyond');
    expect(end).toBeGreaterThanOrEqual((40 - 18) / 0.2);
  });

  it('has no corner at any point', () => {
    const curve = magnetisingCurve(POINTS);
    for (const { flux } of POINTS) {
      const before = curve.slope(flux * (1 - 1e-12), 0);
      // Second derivatives are of the order of slope over spacing: 1e-12 of that.
      expectWithin(before, curve.slope(flux, 0), { relative: 1e-10 }, `slope at ${flux} Wb`);
    }
  });

  it('through two points is straight, then a parabola, then straight', () => {
    const curve = magnetisingCurve(MAIN_SATURATION);
    for (let pu = 0.01; pu < 3; pu += 0.013) {
      const flux = pu * RATED_FLUX;
      expectWithin(curve.current(flux), magnetisingCurrent(flux), { relative: 1e-13 }, 'current');
      expectWithin(curve.slope(flux, 0), magnetisingSlope(flux), { relative: 1e-13 }, 'slope');
      expectWithin(
        mainFlux(magnetisingCurrent(flux)),
        flux,
        { relative: 1e-13 },
        'inverse used in these tests',
      );
    }
  });

  it('through one point is a straight line', () => {
    const curve = magnetisingCurve([{ current: 6, flux: 1.5 }]);
    for (const flux of [0.2, 1.5, 7])
      expectWithin(curve.current(flux), 4 * flux, { relative: 1e-15 }, 'current');
  });

  it('keeps rising where a point has the slope fall to a tenth', () => {
    const curve = magnetisingCurve([
      { current: 10, flux: 1 },
      { current: 11, flux: 2 },
      { current: 20, flux: 3 },
    ]);
    for (let flux = 0; flux < 4; flux += 1e-3) expect(curve.slope(flux, 0)).toBeGreaterThanOrEqual(0);
  });
});

describe.each<readonly [string, FluxBranch, number]>([
  ['a leakage path', leakageLaw(1.4e-3, { current: 80, remaining: 0.3 }, 2e-4), 0.6],
  ['a magnetising curve', magnetisingCurve(POINTS), 1.6],
])('%s', (_name, branch, largest) => {
  it('has the derivative of its current for slope', () => {
    const h = 1e-5 * largest;
    for (let part = 0.003; part < 1; part += 0.0337) {
      const flux = part * largest;
      const difference = (branch.current(flux + h) - branch.current(flux - h)) / (2 * h);
      // Second differences: h² of the third derivative, and a step of the second derivative at points of the curve.
      expectWithin(
        branch.slope(flux, branch.current(flux)),
        difference,
        { relative: 1e-4 },
        `slope at ${flux} Wb`,
      );
    }
  });

  it('stores the area ∫ i dλ', () => {
    // Simpson's rule on a grid that meets the points of the curve.
    const cells = 1600;
    const h = largest / cells;
    let area = 0;
    for (let n = 0; n < cells; n++) {
      const at = (x: number) => branch.current((n + x) * h);
      area += (h / 6) * (at(0) + 4 * at(0.5) + at(1));
      const flux = (n + 1) * h;
      expectWithin(
        branch.energy(flux, branch.current(flux)),
        area,
        { relative: 1e-9 },
        `energy at ${flux} Wb`,
      );
    }
  });
});
