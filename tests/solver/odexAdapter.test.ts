import { describe, expect, it } from 'vitest';
import type { OdeProblem } from '../../src/simulate/integrate.ts';
import { integrateByOdex as integrate } from '../../src/simulate/odexAdapter.ts';
import { SimulationError } from '../../src/simulate/simulationError.ts';
import type { Step } from '../../src/simulate/step.ts';
import { errorInTolerances, expectWithin } from '../support/tolerance.ts';

/** x'' = −x: [cos t, −sin t] from [1, 0]. */
const CIRCLE: OdeProblem = {
  size: 2,
  derivatives: (_t, y, dydt) => {
    dydt[0] = y[1]!;
    dydt[1] = -y[0]!;
  },
};

function optionsOf(relativeTolerance: number, maxSteps = 10_000) {
  return {
    relativeTolerance,
    absoluteTolerance: [relativeTolerance, relativeTolerance],
    stats: { evaluations: 0, steps: 0 },
    maxSteps,
  };
}

function failureOf(work: () => unknown): SimulationError {
  try {
    work();
  } catch (error) {
    if (error instanceof SimulationError) return error;
    throw error;
  }
  throw new Error('nothing was thrown');
}

describe('the solver adapter', () => {
  it('is as accurate as its tolerance, with work that grows slowly as the tolerance tightens', () => {
    for (const [tolerance, mostEvaluations] of [
      [1e-6, 700],
      [1e-9, 1200],
      [1e-11, 1600],
    ] as const) {
      const options = optionsOf(tolerance);
      let last = 0;
      for (const step of integrate(CIRCLE, 0, [1, 0], 20, options)) last = step.value(0, step.t1);
      // Errors of about ten steps add up.
      expectWithin(last, Math.cos(20), { absolute: 30 * tolerance }, 'cos 20');
      expect(options.stats.evaluations).toBeLessThan(mostEvaluations);
    }
  });

  it('keeps stored interpolants exact after later steps', () => {
    const steps: Step[] = [];
    for (const step of integrate(CIRCLE, 0, [1, 0], 20, optionsOf(1e-9))) steps.push(step);
    expect(steps.length).toBeGreaterThan(5);
    for (const step of steps)
      for (const share of [0, 0.21, 0.5, 0.83, 1]) {
        const t = step.t0 + share * (step.t1 - step.t0);
        // The dense output is less accurate than the step ends, by up to a hundred here.
        expectWithin(step.value(0, t), Math.cos(t), { absolute: 1e-6 }, `x at ${t}`);
        expectWithin(step.value(1, t), -Math.sin(t), { absolute: 1e-6 }, `x' at ${t}`);
      }
  });

  it('joins its steps without gap and ends at the end time to the last bit or its neighbour', () => {
    for (const [t0, tEnd] of [
      [0, 0.7],
      [0.1, 0.3],
      [1.2345678, 1.2345679],
      [5, 5 + 1e-9],
      [-1, 0.5],
    ] as const) {
      let at: number = t0;
      for (const step of integrate(CIRCLE, t0, [1, 0], tEnd, optionsOf(1e-8))) {
        expect(step.t0).toBe(at);
        expect(step.t1).toBeGreaterThan(step.t0);
        at = step.t1;
      }
      expectWithin(at, tEnd, { absolute: 2 * Number.EPSILON * Math.max(1, Math.abs(tEnd)) }, 'end');
    }
  });

  it('refuses a derivative that is not a number at once, with its time and component', () => {
    const options = optionsOf(1e-6);
    const problem: OdeProblem = {
      size: 2,
      derivatives: (t, y, dydt) => {
        dydt[0] = y[1]!;
        dydt[1] = t > 0.5 ? Number.NaN : 0;
      },
    };
    const failure = failureOf(() => [...integrate(problem, 0, [0, 1], 1, options)]);
    expect(failure.code).toBe('nonFiniteValue');
    expect(failure.time).toBeGreaterThan(0.5);
    expect(failure.time).toBeLessThanOrEqual(1);
    expect(failure.message).toBe('state 1 of 2 has the derivative NaN');
    expect(options.stats.evaluations).toBeLessThan(300);
  });

  it('refuses an infinite derivative as well', () => {
    const problem: OdeProblem = {
      size: 1,
      derivatives: (_t, y, dydt) => {
        dydt[0] = 1 / (y[0]! - y[0]!);
      },
    };
    const failure = failureOf(() => [...integrate(problem, 0, [1], 1, optionsOf(1e-6))]);
    expect(failure.code).toBe('nonFiniteValue');
    expect(failure.message).toContain('Infinity');
  });

  it('counts steps over several integrations and ends at the limit with the time it has reached', () => {
    const options = optionsOf(1e-9, 20);
    const first = [...integrate(CIRCLE, 0, [1, 0], 5, options)];
    expect(first.length).toBeLessThan(20);
    const failure = failureOf(() => [...integrate(CIRCLE, 0, [1, 0], 1000, options)]);
    expect(failure.code).toBe('stepLimit');
    expect(failure.time).toBeGreaterThan(0);
    expect(failure.time).toBeLessThan(1000);
    expect(options.stats.steps).toBe(21);
  });

  it('lets the caller stop by breaking out, and two integrations run side by side', () => {
    const a = integrate(CIRCLE, 0, [1, 0], 20, optionsOf(1e-9));
    const b = integrate(CIRCLE, 0, [0, 1], 20, optionsOf(1e-9));
    for (const step of a) {
      const other = b.next();
      if (other.done === true || step.t1 > 10) break;
      expectWithin(step.value(0, step.t1), Math.cos(step.t1), { absolute: 1e-7 }, 'first');
      expectWithin(
        other.value.value(0, other.value.t1),
        Math.sin(other.value.t1),
        { absolute: 1e-7 },
        'second',
      );
    }
  });

  it('does not change the initial state it was given', () => {
    const y0 = [1, 0];
    for (const _step of integrate(CIRCLE, 0, y0, 3, optionsOf(1e-6)));
    expect(y0).toEqual([1, 0]);
  });

  it('integrates to an end time of zero (which the package itself takes for no end)', () => {
    let last = Number.NaN;
    let end = Number.NaN;
    for (const step of integrate(CIRCLE, -1, [1, 0], 0, optionsOf(1e-9))) {
      last = step.value(0, step.t1);
      end = step.t1;
      if (step.t1 > 1) break;
    }
    expectWithin(end, 0, { absolute: 1e-15 }, 'end');
    expectWithin(last, Math.cos(1), { absolute: 1e-7 }, 'x');
  });

  it('weighs each state by its own absolute tolerance', () => {
    // A state of size 1e-6 beside one of size 1: with an absolute tolerance of its size it is resolved, without it is not.
    const small: OdeProblem = {
      size: 2,
      derivatives: (_t, y, dydt) => {
        dydt[0] = 40 * y[1]!;
        dydt[1] = -40 * y[0]!;
      },
    };
    const errorWith = (absolute: number) => {
      const options = {
        ...optionsOf(1e-14),
        relativeTolerance: 1e-12,
        absoluteTolerance: [absolute, absolute],
      };
      let last = 0;
      for (const step of integrate(small, 0, [1e-6, 0], 2, options)) last = step.value(0, step.t1);
      return errorInTolerances(last, 1e-6 * Math.cos(80), { absolute: 1e-13 });
    };
    expect(errorWith(1e-15)).toBeLessThan(1);
    expect(errorWith(1e-7)).toBeGreaterThan(10);
  });
});
