/**
 * Closed forms of the equivalent circuit by its Thévenin equivalent, as in every machine text (formulas from memory, high
 * confidence): T(s), breakdown slip and torque, power split 1 : s : (1 − s), Kloss's formula for R_th = 0.
 */
import { describe, it } from 'vitest';
import { breakdown } from '../../src/machine/breakdown.ts';
import { steadyState } from '../../src/machine/steadyState.ts';
import { add, divide, magnitude, multiply } from '../../src/numeric/complex.ts';
import { publishedSource } from '../support/published.ts';
import { KRAUSE, type TextbookMachine } from '../support/textbookMachines.ts';
import { expectWithin } from '../support/tolerance.ts';
import { relativeError, worstOf } from '../support/worstOf.ts';

const { compare, listedInGuide } = publishedSource(
  'steadyStateIdentities',
  'Torque, breakdown and division of power by the Thévenin equivalent, and Kloss’s formula, as in ' +
    'every machine text, for the machines of Krause’s table. Shown are 27 of 111 comparisons: with ' +
    'Kloss’s curve the one that is off most for each machine; those that are left out agree as well.',
  'exact',
);

/** Rounding of a few complex divisions. */
const EXACT = { relative: 1e-12 };

function thevenin({ printed }: TextbookMachine) {
  const z1 = [printed.rs, printed.Xls] as const;
  const branch = [0, printed.XM] as const;
  const share = divide(branch, add(z1, branch));
  const [Rth, Xth] = multiply(z1, share);
  const Vth = (printed.lineVoltage / Math.sqrt(3)) * magnitude(share);
  return { Vth, Rth, Xth, X: Xth + printed.cages[0]!.Xlr, Rr: printed.cages[0]!.rr };
}

describe('the tabulated Thévenin circuits', () => {
  it.each([
    ['3 hp', KRAUSE.hp3, 123.4385, 0.410834, 0.739501],
    ['50 hp', KRAUSE.hp50, 259.5821, 0.083114, 0.295725],
  ] as const)('of the %s machine are those of the entered reactances', (_name, textbook, Vth, Rth, Xth) => {
    const found = thevenin(textbook);
    expectWithin(found.Vth, Vth, { absolute: 5.1e-5 }, 'V_th');
    expectWithin(found.Rth, Rth, { absolute: 5.1e-7 }, 'R_th');
    expectWithin(found.Xth, Xth, { absolute: 5.1e-7 }, 'X_th');
  });
});

describe.each(Object.entries(KRAUSE))('the circuit of %s', (key, textbook) => {
  const name = `${key.replace('hp', '')} hp`;
  const { machine, supply, synchronousSpeed } = textbook;
  const { Vth, Rth, X, Rr } = thevenin(textbook);

  it('gives the closed-form torque at every slip', () => {
    for (const slip of [-0.4, -0.02, 0.01, 0.05, 0.3, 1, 1.5, 2, 3]) {
      const R2 = Rr / slip;
      const torque = (3 * Vth ** 2 * R2) / (synchronousSpeed * ((Rth + R2) ** 2 + X ** 2));
      const { torque: found } = steadyState(machine, supply, slip);
      expectWithin(found, torque, EXACT, `torque at slip ${slip}`);
      if (slip === 1 || slip === 2) compare(found, torque, EXACT, `torque at slip ${slip}, ${name}`, 'N·m');
    }
  });

  it('gives the closed-form breakdown', () => {
    const found = breakdown(machine, supply);
    const size = Math.hypot(Rth, X);
    // Golden section finds a flat maximum to the square root of rounding.
    compare(found.slip, Rr / size, { relative: 1e-6 }, `breakdown slip, ${name}`, '');
    const torque = (1.5 * Vth ** 2) / (synchronousSpeed * (Rth + size));
    compare(found.torque, torque, EXACT, `breakdown torque, ${name}`, 'N·m');
  });

  it('splits the air-gap power 1 : s : (1 − s), motoring and plugging', () => {
    for (const slip of [0.03, 1, 1.7, 2]) {
      const state = steadyState(machine, supply, slip);
      const rotorLoss = 3 * magnitude(state.rotorCurrents[0]!) ** 2 * Rr;
      const mechanical = state.torque * (1 - slip) * synchronousSpeed;
      expectWithin(rotorLoss, slip * state.airGapPower, EXACT, 'rotor loss');
      if (slip === 2)
        compare(
          rotorLoss / state.airGapPower,
          slip,
          EXACT,
          `rotor loss over air-gap power at slip 2, ${name}`,
          '',
        );
      expectWithin(
        mechanical,
        (1 - slip) * state.airGapPower,
        { absolute: 1e-9 * state.airGapPower },
        'mechanical',
      );
      expectWithin(
        state.inputPower - 3 * state.current ** 2 * machine.Rs,
        state.airGapPower,
        EXACT,
        'air gap',
      );
    }
  });

  it('follows Kloss’s curve without stator resistance', () => {
    const lossless = { ...machine, Rs: 0 };
    const top = breakdown(lossless, supply);
    const all = [0.05, 0.5, 1, 2].map((slip) => ({
      ours: steadyState(lossless, supply, slip).torque,
      published: (2 * top.torque) / (slip / top.slip + top.slip / slip),
      tolerance: { relative: 1e-6 },
      quantity: `torque at slip ${slip} by Kloss’s formula, ${name} without stator resistance`,
      unit: 'N·m',
    }));
    const { ours, published, tolerance, quantity, unit } = worstOf(all, relativeError);
    compare(ours, published, tolerance, quantity, unit);
  });
});

describe('Kloss’s curve from a nameplate', () => {
  it('gives the computed torques at slips 1 and 1.96 of a machine with T_max/T_n = 2.5 at s_n = 0.04', () => {
    // A circuit with R_th = 0 and X = 1 whose breakdown slip is the nameplate's.
    const sm = 0.04 * (2.5 + Math.sqrt(2.5 ** 2 - 1));
    expectWithin(sm, 0.191652, { absolute: 5.1e-7 }, 'breakdown slip');
    const omega = 100 * Math.PI;
    const machine = {
      ...KRAUSE.hp3.machine,
      Rs: 0,
      Lls: 0.5 / omega,
      Lm: 1e9,
      cages: [{ Rr: sm, Llr: 0.5 / omega }],
    };
    const supply = { lineVoltage: 400, frequency: 50, sourceResistance: 0, sourceInductance: 0 };
    const rated = steadyState(machine, supply, 0.04).torque;
    const motor =
      'multiple of rated, Kloss’s curve with 2.5 times rated torque at breakdown and a rated slip of 0.04';
    compare(
      steadyState(machine, supply, 1).torque / rated,
      0.924307,
      { absolute: 6e-7 },
      `torque at slip 1, ${motor}`,
      '',
    );
    compare(
      steadyState(machine, supply, 1.96).torque / rated,
      0.484277,
      { absolute: 6e-7 },
      `torque at slip 1.96, ${motor}`,
      '',
    );
    compare(
      breakdown(machine, supply).torque / rated,
      2.5,
      { relative: 1e-6 },
      `breakdown torque, ${motor}`,
      '',
    );
  });
});

listedInGuide();
