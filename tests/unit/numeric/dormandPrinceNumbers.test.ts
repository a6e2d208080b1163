/**
 * The same steps by an independent implementation: `scipy.integrate.DOP853` of SciPy 1.17.1 (NumPy 2.4.6), each step from
 * a fresh solver with `first_step=h, rtol=1e3, atol=1e3`, so that no step is refused; `end` is its state `y` after the first step, `dense` its
 * `dense_output()`, `error` its `_estimate_error_norm` at rtol 1e-6, atol 1e-9, `last` the state after all steps.
 */
import { describe, expect, it } from 'vitest';
import { type Derivatives, dormandPrince, INTERPOLANT_TERMS } from '../../../src/numeric/dormandPrince.ts';
import { integrate } from '../../../src/simulate/integrate.ts';
import { PolynomialStep } from '../../../src/simulate/step.ts';
import { expectAllWithin, expectWithin } from '../../support/tolerance.ts';

/** Restricted three-body problem, mass of the moon as in Hairer, Nørsett, Wanner, II.0. */
const MOON = 0.012277471;
const arenstorf: Derivatives = (_t, y, dydt) => {
  const [x, z, vx, vz] = y as unknown as [number, number, number, number];
  const d1 = ((x + MOON) ** 2 + z ** 2) ** 1.5;
  const d2 = ((x - 1 + MOON) ** 2 + z ** 2) ** 1.5;
  dydt[0] = vx;
  dydt[1] = vz;
  dydt[2] = x + 2 * vz - ((1 - MOON) * (x + MOON)) / d1 - (MOON * (x - 1 + MOON)) / d2;
  dydt[3] = z - 2 * vx - ((1 - MOON) * z) / d1 - (MOON * z) / d2;
};
/** Hairer, Nørsett, Wanner, I, II.0, equations (0.1) and (0.2). */
const ARENSTORF = { start: [0.994, 0, 0, -2.001585106379082], period: 17.06521656015796 };

const lorenz: Derivatives = (_t, y, dydt) => {
  dydt[0] = 10 * (y[1]! - y[0]!);
  dydt[1] = y[0]! * (28 - y[2]!) - y[1]!;
  dydt[2] = y[0]! * y[1]! - (8 / 3) * y[2]!;
};

const vanDerPol: Derivatives = (t, y, dydt) => {
  dydt[0] = y[1]!;
  dydt[1] = (1 - y[0]! * y[0]!) * y[1]! - y[0]! + t * t;
};

const CASES = [
  {
    name: 'the Arenstorf orbit',
    f: arenstorf,
    t0: 0,
    y0: ARENSTORF.start,
    h: 0.002,
    steps: 10,
    error: 1.0988176642921272,
    end: [0.9934070731603838, -0.0038818769551825553, -0.5586596836173301, -1.8302526122149136],
    dense: {
      0.1: [0.9939936933966839, -0.00040018406658156214, -0.0630235151934898, -1.9995890962812835],
      0.5: [0.9938448143190403, -0.001985335817665014, -0.3053465602187763, -1.9536297160381135],
      0.85: [0.9935645442133414, -0.003326336502995863, -0.490032127252755, -1.8727461951845665],
    },
    last: [0.976569102970361, -0.02112413421229494, -0.9082958929805562, -0.545818071258736],
  },
  {
    name: 'Lorenz’ equations',
    f: lorenz,
    t0: 0,
    y0: [1, 1, 1],
    h: 0.05,
    steps: 20,
    error: 0.27116089838242485,
    end: [1.2875547968443872, 2.400160413739971, 0.963806183783305],
    dense: {
      0.1: [1.003193301174078, 1.1298398515560564, 0.9920510554461214],
      0.5: [1.075316956706905, 1.659515774471425, 0.9686198998757715],
      0.85: [1.210062732515302, 2.1642345185681124, 0.9616965757036757],
    },
    last: [-9.378584768777639, -8.35703135760751, 29.362362740950047],
  },
  {
    name: 'Van der Pol’s equation driven by t²',
    f: vanDerPol,
    t0: 0.5,
    y0: [2, 0],
    h: 0.1,
    steps: 10,
    error: 0.002310473200509367,
    end: [1.9922298732979662, -0.14621001555214222],
    dense: {
      0.1: [1.9999135354233846, -0.017189998813657906],
      0.5: [1.997938816397802, -0.07999840687236283],
      0.85: [1.9942854949074496, -0.1276884484403198],
    },
    last: [1.7393409825129793, -0.14098815804809467],
  },
] as const;

describe.each(CASES)('$name beside SciPy’s DOP853', ({ f, t0, y0, h, steps, error, end, dense, last }) => {
  // Sums of a dozen terms in another order, with weights of up to 44 in the stages and 528 in the extension.
  const near = { absolute: 3e-14, relative: 3e-14 };
  const method = dormandPrince(
    f,
    y0,
    t0,
    1e-6,
    y0.map(() => 1e-9),
  );
  const estimated = method.attempt(t0, h);
  const found = [...method.end];
  method.finish(t0, h);
  const terms = new Float64Array(INTERPOLANT_TERMS * y0.length);
  method.interpolant(t0, h, terms, 0);
  const step = new PolynomialStep(t0, t0 + h, t0, h, y0.length, terms, 0);

  it('ends a step in the same state', () => {
    expectAllWithin(found, end, near, 'end');
  });

  it('estimates the same error', () => {
    // A difference of slopes that nearly cancel, over 1e-9 … 1e-6 of the state.
    expectWithin(estimated, error, { relative: 1e-6, absolute: 1e-9 }, 'error');
  });

  it.each(Object.entries(dense))('has the same state at %s of the step', (share, state) => {
    expectAllWithin(
      y0.map((_, i) => step.value(i, t0 + Number(share) * h)),
      state,
      near,
      'state',
    );
  });

  it('is in the same state after many steps', () => {
    method.advance();
    for (let k = 1; k < steps; k++) {
      method.attempt(t0 + k * h, h);
      method.finish(t0 + k * h, h);
      method.advance();
    }
    // What the steps lose to rounding grows with the solution's own divergence.
    expectAllWithin(method.y, last, { relative: 1e-11 }, 'last state');
  });
});

describe('a published orbit', () => {
  it('closes after its period: Hairer, Nørsett, Wanner, Solving Ordinary Differential Equations I, II.0', () => {
    const { start, period } = ARENSTORF;
    const stats = { evaluations: 0, steps: 0 };
    const problem = { size: 4, derivatives: arenstorf as never };
    const tolerances = { relativeTolerance: 1e-13, absoluteTolerance: [1e-13, 1e-13, 1e-13, 1e-13] };
    let end: number[] = [];
    for (const step of integrate(problem, 0, start, period, { ...tolerances, stats, maxSteps: 10_000 }))
      end = [0, 1, 2, 3].map((i) => step.value(i, step.t1));
    // The passages by the moon magnify every error some hundred thousand times, velocities most.
    expectAllWithin(end.slice(0, 2), start.slice(0, 2), { absolute: 1e-7 }, 'place');
    expectAllWithin(end.slice(2), start.slice(2), { absolute: 1e-5 }, 'velocity');
    expect(stats.steps).toBeLessThan(400);
  });
});
