import { expect, it } from 'vitest';
import { Solver } from '#odex';
import { interpolant } from '../../src/simulate/interpolant.ts';
import { withOwnPowers } from '../../src/simulate/withOwnPowers.ts';

it('the interpolant is the solver’s own, to the last bit, in every step and component', () => {
  const solver = new Solver(
    (t, y, dydt) => {
      dydt[0] = y[1]!;
      dydt[1] = -y[0]! + 0.1 * t;
      dydt[2] = -3 * y[2]!;
      return undefined;
    },
    3,
    { rawFunction: true, relativeTolerance: 1e-4, absoluteTolerance: 1e-4, interpolationFormulaDegree: 2 },
  );
  const theirs = solver.contex.bind(solver);
  const degrees = new Set<number>();
  solver.contex = (xOld, h, imit) => {
    degrees.add(imit);
    const [own, other] = [interpolant(solver.dens.slice(), 3, xOld, h, imit), theirs(xOld, h, imit)];
    return (component, x) => {
      const value = own(component, x);
      withOwnPowers(() => expect(value).toBe(other(component, x)));
      return value;
    };
  };
  let steps = 0;
  for (const { x0, x1, f } of solver.solutionSegments(0, [1, 0, 2], 8)) {
    steps++;
    for (let component = 0; component < 3; component++)
      for (let i = 0; i <= 10; i++) f(component, x0 + (i / 10) * (x1 - x0));
  }
  expect(steps).toBeGreaterThan(3);
  expect(degrees.size).toBeGreaterThan(1);
});
