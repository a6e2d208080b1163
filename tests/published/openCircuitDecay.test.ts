/**
 * No poles conducting: the rotor flux decays with L_r/R_r and turns with the rotor (one cage, exact); with two cages it
 * follows a 2×2 matrix exponential. Time constants and initial voltages of the Krause machines computed, to the digits given.
 */
import { inverse, Matrix } from 'ml-matrix';
import { describe, it } from 'vitest';
import { steadyState } from '../../src/machine/steadyState.ts';
import { linearMachine } from '../support/constantSpeed.ts';
import { matrixExponential } from '../support/matrixExponential.ts';
import { publishedSource } from '../support/published.ts';
import { run } from '../support/readings.ts';
import { scenarioOf } from '../support/scenarios.ts';
import { DOUBLE_CAGE, KRAUSE, type TextbookMachine } from '../support/textbookMachines.ts';
import { expectWithin } from '../support/tolerance.ts';
import { allowedError, type Comparison, worstOf } from '../support/worstOf.ts';

const { compare, listedInGuide } = publishedSource(
  'openCircuitDecay',
  'Open terminals: the rotor flux decays as exp(−t/T), T = rotor inductance over rotor resistance, and ' +
    'turns with the rotor; with two cages it follows a 2×2 matrix exponential; 3 hp and 50 hp are ' +
    'machines of Krause’s table. Of 122 voltages and angles along the decay those that are off most are ' +
    'shown.',
  'exact',
);

/** kg·m²: speed stays the same to 1e-9 while the shaft is loaded. */
const HUGE = 1e12;

/** Opens a machine that has been running at a slip, the shaft then turning on at constant speed. */
function opened(textbook: TextbookMachine, slip: number, endTime: number) {
  const torque = steadyState(textbook.machine, textbook.supply, slip).torque;
  return run(
    scenarioOf(textbook, {
      inertia: HUGE,
      initial: 'runningForward',
      load: { torques: [{ kind: 'gravity', torque }] },
      actions: [{ at: 0, do: 'coast' }],
      solver: { endTime, relativeTolerance: 1e-10 },
    }),
  ).trajectory;
}

function vector(point: { uAlpha: number; uBeta: number }) {
  return { size: Math.hypot(point.uAlpha, point.uBeta), angle: Math.atan2(point.uBeta, point.uAlpha) };
}

const TURN = 2 * Math.PI;
/** ° per rad */
const DEGREES = 180 / Math.PI;
const wrapped = (angle: number) => angle - TURN * Math.round(angle / TURN);

/** Demands all of them, and lists the one that is off most. */
function compareWorst(all: readonly Comparison[]): void {
  const { ours, published, tolerance, quantity, unit } = worstOf(all, allowedError);
  compare(ours, published, tolerance, quantity, unit);
}

/** Residual voltage, V, and angle it has turned through, rad, t seconds after the opening, beside the exact ones. */
function decayed(
  t: number,
  size: readonly [ours: number, exact: number],
  angle: readonly [ours: number, exact: number],
  absolute: number,
  machine: string,
): readonly [Comparison, Comparison] {
  const when = `${Number((1000 * t).toFixed(3))} ms after the opening, ${machine}`;
  const voltage = {
    ours: size[0],
    published: size[1],
    tolerance: { absolute },
    quantity: `residual voltage, crest, ${when}`,
    unit: 'V',
  };
  const turned = {
    ours: (angle[1] + wrapped(angle[0] - angle[1])) * DEGREES,
    published: angle[1] * DEGREES,
    tolerance: { absolute: 1e-6 * DEGREES },
    quantity: `angle of the residual voltage ${when}`,
    unit: '°',
  };
  return [voltage, turned];
}

/** Lists the voltage and the angle that are off most. */
function compareDecay(points: readonly (readonly [Comparison, Comparison])[]): void {
  compareWorst(points.map(([voltage]) => voltage));
  compareWorst(points.map(([, turned]) => turned));
}

describe.each([
  ['3 hp', KRAUSE.hp3, 0.08739, 0.94457],
  ['50 hp', KRAUSE.hp50, 0.15569, 0.95535],
] as const)('residual voltage of the %s machine', (name, textbook, timeConstant, residual) => {
  const { machine, supply } = textbook;
  const crest = supply.lineVoltage * Math.sqrt(2 / 3);
  const Tr0 = (machine.Lm + machine.cages[0]!.Llr) / machine.cages[0]!.Rr;

  it('starts at the tabulated fraction of the supply and decays with the tabulated time constant', () => {
    const trajectory = opened(textbook, 0, 1.5 * Tr0);
    expectWithin(Tr0, timeConstant, { absolute: 5.1e-6 }, 'time constant');
    const first = vector(trajectory.at(0)).size;
    // The table leaves out the decay's share of the voltage, 1.5e-4 at most.
    compare(
      first / crest,
      residual,
      { relative: 5e-4 },
      `first residual voltage over that of the supply, ${name} (the source leaves out the decay’s share of it)`,
      '',
    );
    const speed = TURN * supply.frequency;
    compare(
      first / crest / Math.hypot(1, 1 / (Tr0 * speed)),
      residual,
      { absolute: 6e-6 },
      `first residual voltage over that of the supply, ${name}, ours without the decay’s share too`,
      '',
    );
    const left = vector(trajectory.at(1.5 * Tr0)).size / first;
    compare(
      (-1.5 * Tr0) / Math.log(left),
      timeConstant,
      { absolute: 5.1e-6 },
      `time constant seen in the run, ${name}`,
      's',
    );
    compare(
      left,
      0.2231,
      { absolute: 5e-5 },
      `share of the residual voltage left after 1.5 time constants, ${name}`,
      '',
    );
  });

  it('decays exponentially and advances with the rotor, not with the supply', () => {
    const slip = 0.04;
    const trajectory = opened(textbook, slip, 0.5);
    const first = vector(trajectory.at(0));
    const omegaR = (1 - slip) * TURN * supply.frequency;
    const points = Array.from({ length: 20 }, (_, k) => {
      const t = 0.025 * (k + 1);
      const now = vector(trajectory.at(t));
      return decayed(
        t,
        [now.size, first.size * Math.exp(-t / Tr0)],
        [now.angle - first.angle, omegaR * t],
        1e-8 * first.size,
        `${name} at slip ${slip}`,
      );
    });
    compareDecay(points);
  });
});

describe('two cages', () => {
  it('decay as the matrix exponential, the voltage advancing at the rotor’s speed', () => {
    const { machine, supply, synchronousSpeed } = DOUBLE_CAGE;
    const slip = 0.05;
    const omega = TURN * supply.frequency;
    const omegaR = (1 - slip) * omega;
    const crest = supply.lineVoltage * Math.sqrt(2 / 3);
    const before = linearMachine(machine, omega, (1 - slip) * synchronousSpeed).steady([crest, 0]);
    const L = new Matrix([
      [machine.Lm + machine.cages[0]!.Llr, machine.Lm],
      [machine.Lm, machine.Lm + machine.cages[1]!.Llr],
    ]);
    const R = Matrix.diag(machine.cages.map((cage) => cage.Rr));
    // Flux of each cage just before the opening, which the opening leaves as it is; columns: real and imaginary part.
    const flux = Matrix.zeros(2, 2);
    for (const j of [0, 1])
      for (const axis of [0, 1]) {
        const main = machine.Lm * (before[axis]! + before[2 + axis]! + before[4 + axis]!);
        flux.set(j, axis, main + machine.cages[j]!.Llr * before[2 + 2 * j + axis]!);
      }
    const invL = inverse(L);
    const A = R.mmul(invL).mul(-1);
    const mainOf = (psi: Matrix) => Matrix.ones(1, 2).mmul(invL).mmul(psi).mul(machine.Lm);
    const trajectory = opened(DOUBLE_CAGE, slip, 0.6);
    const points = Array.from({ length: 21 }, (_, k) => {
      const t = 0.03 * k;
      const psi = matrixExponential(Matrix.mul(A, t)).mmul(flux);
      const rate = mainOf(A.mmul(psi));
      const main = mainOf(psi);
      // d/dt of e^{jω_r·t}·ψm, in rotor axes
      const re = rate.get(0, 0) - omegaR * main.get(0, 1);
      const im = rate.get(0, 1) + omegaR * main.get(0, 0);
      const now = vector(trajectory.at(t));
      return decayed(
        t,
        [now.size, Math.hypot(re, im)],
        [now.angle, Math.atan2(im, re) + omegaR * t],
        1e-8 * crest,
        `an invented double cage at slip ${slip}`,
      );
    });
    compareDecay(points);
  });
});

listedInGuide();
