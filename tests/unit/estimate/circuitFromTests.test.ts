import { describe, expect, it } from 'vitest';
import { circuitFromTests } from '../../../src/estimate/circuitFromTests.ts';
import { onRatedSupply } from '../../../src/estimate/toMachine.ts';
import { steadyState } from '../../../src/machine/steadyState.ts';
import { bisect } from '../../../src/numeric/bisect.ts';
import type { CircuitPart, TestReading, TestReadings } from '../../../src/scenario/nameplate.ts';
import { ScenarioError } from '../../../src/scenario/scenarioError.ts';
import { expectWithin } from '../../support/tolerance.ts';

const omega = 100 * Math.PI;
/** An invented 15 kW machine with iron loss, 400 V, 50 Hz, four poles. */
const TRUE: CircuitPart = {
  Rs: 0.25,
  Lls: 0.55 / omega,
  Lm: 18 / omega,
  cages: [{ Rr: 0.24, Llr: 0.8 / omega }],
  inertia: 0.1,
  rated: { current: null, torque: null, power: null, speed: null },
  core: { R: 400, L: 100 / omega },
};
const SHARE = 0.55 / (0.55 + 0.8);

const plate = { connection: 'star', poles: 4, lineVoltage: 400, frequency: 50 } as const;

function read(voltage: number, frequency: number, slip: number): TestReading {
  const { machine, supply } = onRatedSupply(TRUE, { ...plate, lineVoltage: voltage, frequency });
  const { current, inputPower } = steadyState(machine, supply, slip);
  return { voltage, current, power: inputPower, frequency };
}

/** Slip at which as much is converted as is lost in the iron: what one no-load reading is taken to mean. */
function idleSlip(): number {
  const { machine, supply } = onRatedSupply(TRUE, plate);
  return bisect(
    (slip) => {
      const state = steadyState(machine, supply, slip);
      const iron = state.inputPower - state.airGapPower - 3 * state.current ** 2 * TRUE.Rs;
      return (1 - slip) * state.airGapPower - iron;
    },
    1e-9,
    0.05,
  );
}

const readings = (lockedVoltage: number, lockedFrequency: number): TestReadings => ({
  ...plate,
  terminalResistance: 2 * TRUE.Rs,
  noLoad: read(400, 50, idleSlip()),
  lockedRotor: read(lockedVoltage, lockedFrequency, 1),
  statorLeakageShare: SHARE,
  design: null,
  inertia: 0.1,
});

describe('circuitFromTests', () => {
  it.each([
    ['at a quarter of rated frequency', 40, 12.5],
    ['at rated frequency and reduced voltage', 80, 50],
  ])('finds the circuit whose readings it is given, locked rotor %s', (_name, voltage, frequency) => {
    const { circuit } = circuitFromTests(readings(voltage, frequency));
    // Solved to the rounding of the iteration; the core is seen through a small part of the no-load power.
    const exactly = { relative: 1e-6 };
    expectWithin(circuit.Rs, TRUE.Rs, exactly, 'Rs');
    expectWithin(circuit.Lls, TRUE.Lls, exactly, 'Lls');
    expectWithin(circuit.Lm, TRUE.Lm, exactly, 'Lm');
    expectWithin(circuit.cages[0]!.Rr, TRUE.cages[0]!.Rr, exactly, 'Rr');
    expectWithin(circuit.cages[0]!.Llr, TRUE.cages[0]!.Llr, exactly, 'Llr');
    expectWithin(circuit.core!.R, TRUE.core!.R, exactly, 'core');
    expect(circuit.cages).toHaveLength(1);
  });

  it('does not depend on the connection: line quantities give the equivalent star', () => {
    const star = readings(40, 12.5);
    expect(circuitFromTests({ ...star, connection: 'delta' }).circuit).toEqual(
      circuitFromTests(star).circuit,
    );
  });

  it.each([
    ['A', 0.5],
    ['B', 0.4],
    ['C', 0.3],
    ['D', 0.5],
    // IEC 60034-28 where nothing is known (from memory): X1/X2' = 0.67.
    [null, 0.4],
  ] as const)('gives the stator of design %s the share %f of the leakage', (design, share) => {
    const { circuit, notes } = circuitFromTests({ ...readings(40, 12.5), statorLeakageShare: null, design });
    const { Lls, cages } = circuit;
    expectWithin(Lls / (Lls + cages[0]!.Llr), share, { relative: 1e-12 }, 'share');
    expect(notes.find(({ path }) => path === 'tests.statorLeakageShare')?.origin).toBe('standard');
  });

  it('warns of deep bars where the rotor was locked at rated frequency', () => {
    const remarks = (frequency: number) =>
      circuitFromTests(readings(60, frequency)).estimation.remarks.join(' ');
    expect(remarks(50)).toMatch(/deep bars/u);
    expect(remarks(12.5)).not.toMatch(/deep bars/u);
  });

  it.each([
    ['a power beyond the apparent power', { power: 5000 }, /√3/u],
    ['a power of one phase', { power: 100 }, /stator winding/u],
  ])('refuses %s', (_name, change, reason) => {
    const good = readings(40, 12.5);
    const bad = { ...good, lockedRotor: { ...good.lockedRotor, ...change } };
    expect(() => circuitFromTests(bad)).toThrow(ScenarioError);
    expect(() => circuitFromTests(bad)).toThrow(reason);
  });
});
