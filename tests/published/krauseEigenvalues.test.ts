/**
 * Source: P. C. Krause, O. Wasynczuk, S. D. Sudhoff, Analysis of Electric Machinery and Drive Systems, 2nd ed., chapter on
 * linearized equations, table of induction-machine eigenvalues (from memory: the 3 hp row −85.6 ± j313, −223 ± j83.9,
 * −16.8). Further digits and the 50 hp row are computed from the same parameters with a second formulation.
 * The right-hand side of one segment (three poles, synchronous axes, constant load torque) is differentiated numerically.
 */
import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { describe, it } from 'vitest';
import { circuitOf } from '../../src/machine/circuit.ts';
import { steadyFlux } from '../../src/machine/steadyFlux.ts';
import { steadyState } from '../../src/machine/steadyState.ts';
import { supplyVector } from '../../src/machine/supplyVector.ts';
import { threePoles } from '../../src/machine/threePoles.ts';
import { segmentProblem } from '../../src/simulate/segment.ts';
import { linearMachine } from '../support/constantSpeed.ts';
import { plainMode, plainShaft } from '../support/plainShaft.ts';
import { type Certainty, publishedSource } from '../support/published.ts';
import { KRAUSE, type TextbookMachine } from '../support/textbookMachines.ts';
import { expectWithin } from '../support/tolerance.ts';

const { compare, listedInGuide } = publishedSource(
  'krauseEigenvalues',
  'P. C. Krause, O. Wasynczuk, S. D. Sudhoff, Analysis of Electric Machinery and Drive Systems, 2nd ed., chapter on linearized ' +
    'equations, table of induction-machine eigenvalues (3 hp row), against our equations of motion differentiated numerically; more ' +
    'digits, the 50 hp machine and the locked rotor by a second formulation. Of a conjugate pair the table has one.',
  'from memory, recomputed',
);
const COMPUTED = 'computed independently';

type Eigenvalue = readonly [real: number, imaginary: number];

/** Jacobian of the segment's right-hand side without the position, by central differences. */
function jacobian(textbook: TextbookMachine, omegaM: number, y: readonly number[], held: boolean): Matrix {
  const { machine, supply } = textbook;
  const slip = 1 - omegaM / textbook.synchronousSpeed;
  const gravity = steadyState(machine, supply, slip).torque;
  const shaft = plainShaft(textbook, machine.inertia, gravity);
  const model = threePoles(circuitOf(machine, supply), supplyVector(supply, [0, 1, 2]));
  const problem = segmentProblem(model, shaft, plainMode(shaft, held));
  const size = held ? 4 : 5;
  const derivatives = (state: readonly number[]) => {
    const dydt: number[] = [];
    problem.derivatives(0, state, dydt);
    return dydt;
  };
  const columns = Array.from({ length: size }, (_, k) => {
    // The right-hand side is quadratic, so that central differences have no truncation error.
    const step = 1e-3;
    const plus = derivatives(y.map((value, i) => (i === k ? value + step : value)));
    const minus = derivatives(y.map((value, i) => (i === k ? value - step : value)));
    return Array.from({ length: size }, (_, i) => (plus[i]! - minus[i]!) / (2 * step));
  });
  return new Matrix(columns).transpose();
}

/** Sorted by real part, then by imaginary part. */
function eigenvalues(matrix: Matrix): Eigenvalue[] {
  const { realEigenvalues, imaginaryEigenvalues } = new EigenvalueDecomposition(matrix);
  return realEigenvalues
    .map((real, i): Eigenvalue => [real, imaginaryEigenvalues[i]!])
    .sort((a, b) => a[0] - b[0] || a[1] - b[1]);
}

function expectEigenvalues(
  found: readonly Eigenvalue[],
  printed: readonly Eigenvalue[],
  last: number,
  machine: string,
  certainty?: Certainty,
): void {
  const allowed = { absolute: last };
  for (const [i, [real, imaginary]] of printed.entries()) {
    const pair = `${real} ± j${Math.abs(imaginary)}`.replace('-', '−');
    const end = `${machine} at rated speed`;
    const [first, second] =
      imaginary === 0
        ? [`the real eigenvalue, ${end}`, `its imaginary part, ${end}`]
        : [`real part of the eigenvalue ${pair}, ${end}`, `imaginary part of the eigenvalue ${pair}, ${end}`];
    // The guide shows a pair once, and no imaginary part of a real eigenvalue.
    if (imaginary < 0) expectWithin(found[i]![0], real, allowed, first);
    else compare(found[i]![0], real, allowed, first, '1/s', certainty);
    if (imaginary <= 0) expectWithin(found[i]![1], imaginary, allowed, second);
    else compare(found[i]![1], imaginary, allowed, second, '1/s', certainty);
  }
}

function atRatedSpeed(textbook: TextbookMachine): Eigenvalue[] {
  const { machine, supply, printed } = textbook;
  const omegaM = (printed.rpm! * 2 * Math.PI) / 60;
  const slip = 1 - omegaM / textbook.synchronousSpeed;
  const flux = steadyFlux(machine, supply, supplyVector(supply, [0, 1, 2]), slip);
  return eigenvalues(jacobian(textbook, omegaM, [...flux, omegaM, 0], false));
}

describe('the right-hand side linearised at rated speed', () => {
  it('has the eigenvalues of the 3 hp machine that the book prints', () => {
    // half a unit of the printed digits
    const found = atRatedSpeed(KRAUSE.hp3);
    expectEigenvalues(
      found,
      [
        [-223, -83.9],
        [-223, 83.9],
        [-85.6, -313],
        [-85.6, 313],
        [-16.8, 0],
      ],
      0.5,
      '3 hp',
    );
  });

  it('has the eigenvalues of the 3 hp machine to three digits behind the point', () => {
    expectEigenvalues(
      atRatedSpeed(KRAUSE.hp3),
      [
        [-223.172, -83.9],
        [-223.172, 83.9],
        [-85.604, -313.19],
        [-85.604, 313.19],
        [-16.829, 0],
      ],
      6e-3,
      '3 hp',
      COMPUTED,
    );
  });

  it('has the eigenvalues of the 50 hp machine to three digits behind the point', () => {
    expectEigenvalues(
      atRatedSpeed(KRAUSE.hp50),
      [
        [-142.258, -42.46],
        [-142.258, 42.46],
        [-49.398, -355.952],
        [-49.398, 355.952],
        [-14.394, 0],
      ],
      6e-4,
      '50 hp',
      COMPUTED,
    );
  });
});

describe('the right-hand side linearised with the rotor locked', () => {
  // In synchronous axes every eigenvalue of the stationary frame is shifted by −jω: the real parts are the table's.
  it.each([
    ['3 hp', KRAUSE.hp3, -313.1606, -4.0301],
    ['50 hp', KRAUSE.hp50, -197.0633, -1.7901],
  ] as const)('has the two decay rates of the %s machine, each twice', (name, textbook, fast, slow) => {
    const found = eigenvalues(jacobian(textbook, 0, [0, 0, 0, 0, 0, 0], true));
    for (const [i, rate] of [fast, fast, slow, slow].entries()) {
      const quantity = `${rate === fast ? 'fast' : 'slow'} decay with the rotor locked, ${name}`;
      const last = { absolute: 5.1e-5 };
      if (i % 2 === 1) expectWithin(found[i]![0], rate, last, quantity);
      else compare(found[i]![0], rate, last, quantity, '1/s', COMPUTED);
      expectWithin(Math.abs(found[i]![1]), 120 * Math.PI, { relative: 1e-9 }, 'frame speed');
    }
  });
});

describe('the matrix written from the inductances', () => {
  it('decays as the linearised right-hand side does (the two formulations are the same machine)', () => {
    const { machine, synchronousSpeed } = KRAUSE.hp3;
    const linear = linearMachine(machine, 120 * Math.PI, 0.4 * synchronousSpeed);
    const [lost] = linear.currents([0, 0, 1, 0], [0, 0], 5);
    // slowest rate of this machine at any speed is above 3/s: e^{−15}
    expectWithin(lost, 0, { absolute: 1e-6 }, 'current after five seconds');
  });
});

listedInGuide();
