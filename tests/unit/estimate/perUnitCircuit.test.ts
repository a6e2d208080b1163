import { describe, expect, it } from 'vitest';
import { completeNameplate } from '../../../src/estimate/completeNameplate.ts';
import { candidateOf, unknownsOf } from '../../../src/estimate/parameters.ts';
import { breakdownSlip, type PerUnitCircuit, perUnitState } from '../../../src/estimate/perUnitCircuit.ts';
import { circuitPartOf, onRatedSupply, unknownsOfPart } from '../../../src/estimate/toMachine.ts';
import { steadyState } from '../../../src/machine/steadyState.ts';
import { FULL_PLATE } from '../../support/ratedMotor.ts';
import { expectAllWithin, expectWithin } from '../../support/tolerance.ts';

const circuit: PerUnitCircuit = {
  Rs: 0.03,
  Xls: 0.1,
  Xm: 2.2,
  cages: [
    { Rr: 0.08, Xlr: 0.06 },
    { Rr: 0.03, Xlr: 0.15 },
  ],
  Rc: 50,
  saturation: null,
};
const complete = completeNameplate(FULL_PLATE);

describe('the circuit in multiples of rated power', () => {
  it.each([
    ['linear', null],
    ['with saturating leakage', { current: 2.5, remaining: 0.4 }],
  ])('agrees with the machine room, %s', (_name, saturation) => {
    const candidate = { circuit: { ...circuit, saturation }, mechanicalLoss: 0.01 };
    const { machine, supply } = onRatedSupply(circuitPartOf(candidate, complete), complete);
    const ampere = 11e3 / (Math.sqrt(3) * 400);
    for (const slip of [0.02, 0.2, 1, 1.98]) {
      const ours = perUnitState(candidate.circuit, slip);
      const theirs = steadyState(machine, supply, slip);
      // Two independent solutions of the same equations, the second by iteration where the leakage saturates.
      expectWithin(ours.current * ampere, theirs.current, { relative: 1e-9 }, `current at ${slip}`);
      expectWithin(ours.inputPower * 11e3, theirs.inputPower, { relative: 1e-9 }, `input at ${slip}`);
      expectWithin(ours.airGapPower * 11e3, theirs.airGapPower, { relative: 1e-9 }, `air gap at ${slip}`);
    }
  });

  it('divides the input among stator, iron and air gap', () => {
    const state = perUnitState(circuit, 0.03);
    const sum = state.statorLoss + state.ironLoss + state.airGapPower;
    expectWithin(sum, state.inputPower, { relative: 1e-12 }, 'input power');
  });

  it('finds the largest torque up to standstill only', () => {
    const resistive = { ...circuit, cages: [{ Rr: 0.9, Xlr: 0.1 }] };
    const torque = (slip: number) => perUnitState(resistive, slip).airGapPower;
    // Rotor resistance above all reactance: the crest lies beyond standstill.
    expect(torque(1.5)).toBeGreaterThan(torque(1));
    expect(breakdownSlip(torque)).toBe(1);
  });

  it('finds the pull-out slip of a single cage where theory has it', () => {
    const single = { ...circuit, cages: [{ Rr: 0.03, Xlr: 0.1 }], Rc: null };
    // s = R2/√(Rth² + (Xth + X2)²)
    const norm = 0.03 ** 2 + 2.3 ** 2;
    const Rth = (0.03 * 2.2 ** 2) / norm;
    const Xth = (2.2 * (0.03 ** 2 + 0.1 * 2.3)) / norm;
    const expected = 0.03 / Math.hypot(Rth, Xth + 0.1);
    // A crest is flat: rounding of the torque moves it by the square root of the machine accuracy.
    expectWithin(
      breakdownSlip((s) => perUnitState(single, s).airGapPower),
      expected,
      { relative: 1e-6 },
      'slip',
    );
  });
});

describe('the unknowns of the fit', () => {
  it('come back from the circuit they make, in SI and back', () => {
    const x = unknownsOf({
      Rs: 0.03,
      Xls: 0.1,
      Xm: 2.2,
      outer: { Rr: 0.08, Xlr: 0.06 },
      inner: { Rr: 0.03, Xlr: 0.15 },
      Rc: 50,
      mechanicalLoss: 0.01,
    });
    expectAllWithin(
      unknownsOfPart(circuitPartOf(candidateOf(x, 2.5), complete), complete),
      x,
      { absolute: 1e-10 },
      'linear',
    );
    const saturating = [...x, -0.4];
    expectAllWithin(
      unknownsOfPart(circuitPartOf(candidateOf(saturating, 2.5), complete), complete),
      saturating,
      { absolute: 1e-10 },
      'saturating',
    );
  });
});
