/**
 * Textbook problems after J. J. Moré, B. S. Garbow, K. E. Hillstrom, Testing Unconstrained Optimization Software, ACM TOMS 7
 * (1981): functions, starts and minima from memory, the minima also evident from the formulas.
 */
import { describe, expect, it } from 'vitest';
import { leastSquares } from '../../../src/numeric/leastSquares.ts';
import { expectAllWithin, expectWithin } from '../../support/tolerance.ts';

const rosenbrock = ([x, y]: readonly number[]) => [10 * (y! - x! * x!), 1 - x!];

describe('leastSquares', () => {
  it.each([
    ['the usual start', [-1.2, 1]],
    ['ten times as far', [-12, 10]],
    ['a hundred times as far', [-120, 100]],
  ])('follows the valley of Rosenbrock’s function from %s', (_name, start) => {
    const { x, cost } = leastSquares({ residuals: rosenbrock }, start);
    // The minimum is exactly zero: only the rounding of the differences is left.
    expectAllWithin(x, [1, 1], { absolute: 1e-8 }, 'minimum');
    expect(cost).toBeLessThan(1e-16);
  });

  it('gives the same with the Jacobian in closed form', () => {
    const jacobian = ([x]: readonly number[]) => [
      [-20 * x!, 10],
      [-1, 0],
    ];
    const { x } = leastSquares({ residuals: rosenbrock, jacobian }, [-1.2, 1]);
    expectAllWithin(x, [1, 1], { absolute: 1e-10 }, 'minimum');
  });

  it('finds the minimum of Freudenstein and Roth’s function that its start leads to, where the residuals are not zero', () => {
    const residuals = ([x, y]: readonly number[]) => [
      -13 + x! + ((5 - y!) * y! - 2) * y!,
      -29 + x! + ((y! + 1) * y! - 14) * y!,
    ];
    const { x, cost } = leastSquares({ residuals }, [0.5, -2]);
    // Published to six digits; sum of squares 48.9842….
    expectAllWithin(x, [11.4128, -0.896805], { relative: 1e-5 }, 'local minimum');
    expectWithin(2 * cost, 48.9842, { relative: 2e-6 }, 'sum of squares');
  });

  it('converges to the singular minimum of Powell’s function', () => {
    const residuals = ([a, b, c, d]: readonly number[]) => [
      a! + 10 * b!,
      Math.sqrt(5) * (c! - d!),
      (b! - 2 * c!) ** 2,
      Math.sqrt(10) * (a! - d!) ** 2,
    ];
    const { x } = leastSquares({ residuals }, [3, -1, 0, 1]);
    // The Jacobian loses its rank there, so that only linear convergence is to be had.
    expectAllWithin(x, [0, 0, 0, 0], { absolute: 1e-2 }, 'minimum');
  });

  it('fits a badly scaled problem of two unequal unknowns', () => {
    // Powell's badly scaled function: 10⁴·x·y = 1, e^−x + e^−y = 1.0001.
    const residuals = ([x, y]: readonly number[]) => [
      1e4 * x! * y! - 1,
      Math.exp(-x!) + Math.exp(-y!) - 1.0001,
    ];
    const { x } = leastSquares({ residuals }, [0, 1], { maxIterations: 1000 });
    // Published to four digits.
    expectAllWithin(x, [1.098e-5, 9.106], { relative: 2e-4 }, 'root');
  });

  it('solves a linear problem as the normal equations do', () => {
    // Line through (0, 1), (1, 3), (2, 4), (3, 8): slope 2.2, intercept 0.7 by hand.
    const residuals = ([a, b]: readonly number[]) => [b! - 1, a! + b! - 3, 2 * a! + b! - 4, 3 * a! + b! - 8];
    const { x, jacobian } = leastSquares({ residuals }, [0, 0]);
    // The search ends where the cost changes by 1e-12; at a minimum that is 1e-6 of the residuals at most.
    expectAllWithin(x, [2.2, 0.7], { absolute: 1e-6 }, 'line');
    expectAllWithin(
      jacobian.map((row) => row[0]!),
      [0, 1, 2, 3],
      { absolute: 1e-8 },
      'column of the slope',
    );
  });

  it('never takes a step that raises the cost or leaves the domain', () => {
    const seen: number[] = [];
    // √x is no number below zero; the undamped step from 4 for √x = 0.01 would land there.
    const residuals = ([x]: readonly number[]) => [Math.sqrt(x!) - 0.01];
    const jacobian = ([x]: readonly number[]) => {
      seen.push(residuals([x!])[0]! ** 2);
      return [[0.5 / Math.sqrt(x!)]];
    };
    const { x } = leastSquares({ residuals, jacobian }, [4]);
    expectWithin(x[0], 1e-4, { relative: 1e-6 }, 'root');
    // The Jacobian is asked for at accepted points only.
    expect(seen).toEqual(seen.toSorted((a, b) => b - a));
  });

  it('leaves an unknown alone that moves nothing', () => {
    const { x, status } = leastSquares({ residuals: ([a]: readonly number[]) => [a! - 3] }, [0, 7]);
    expectAllWithin(x, [3, 7], { absolute: 1e-9 }, 'unknowns');
    expect(status).not.toBe('iterationLimit');
  });

  it('says that it stopped at the limit of steps', () => {
    const { status, iterations } = leastSquares({ residuals: rosenbrock }, [-1.2, 1], { maxIterations: 3 });
    expect([status, iterations]).toEqual(['iterationLimit', 3]);
  });

  it('refuses a start at which the residuals are no numbers', () => {
    expect(() => leastSquares({ residuals: ([x]) => [Math.log(x!)] }, [-1])).toThrow(/not numbers/u);
  });
});
