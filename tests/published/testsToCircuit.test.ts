/**
 * Source: S. J. Chapman, Electric Machinery Fundamentals, example on determining the circuit from tests: 7.5 hp, four poles,
 * 208 V, 60 Hz, design A, star, rated current 28 A (from memory; recomputed with all digits). The book's way neglects the
 * magnetising branch at standstill and the resistances at no load.
 */
import { describe, it } from 'vitest';
import { circuitFromTests } from '../../src/estimate/circuitFromTests.ts';
import { impedanceOf, testShortcut } from '../../src/estimate/testShortcut.ts';
import { breakdown } from '../../src/machine/breakdown.ts';
import type { TestReadings } from '../../src/scenario/nameplate.ts';
import { publishedSource } from '../support/published.ts';
import { textbookMachine } from '../support/textbookMachines.ts';
import { expectWithin } from '../support/tolerance.ts';

const { compare, listedInGuide } = publishedSource(
  'testsToCircuit',
  'S. J. Chapman, Electric Machinery Fundamentals, example on finding the circuit from tests (7.5 hp, ' +
    '208 V, 60 Hz, four poles), by the book’s way, which neglects the magnetising branch at standstill; ' +
    'it reads 8.17 A for the mean of the no-load currents, 0.04 % more than that is.',
  'from memory, recomputed',
);

const readings: TestReadings = {
  connection: 'star',
  poles: 4,
  lineVoltage: 208,
  frequency: 60,
  terminalResistance: 13.6 / 28,
  noLoad: { voltage: 208, current: (8.12 + 8.2 + 8.18) / 3, power: 420, frequency: 60 },
  lockedRotor: { voltage: 25, current: (28.1 + 28 + 27.6) / 3, power: 920, frequency: 15 },
  statorLeakageShare: null,
  design: 'A',
  inertia: null,
};

/** Half a unit of the last digit. */
const digits = (count: number) => ({ absolute: 0.5001 * 10 ** -count });

describe('the textbook’s way from the tests to the circuit', () => {
  const circuit = testShortcut(readings, 0.5);

  it('has the figures of the example', () => {
    // The book reads 8.17 A for the mean of the three no-load currents, 0.04 % more than it is.
    const reading = { relative: 5e-4 };
    compare(circuit.R1, 0.2429, digits(4), 'stator resistance', 'Ω');
    compare(impedanceOf(readings.noLoad).size, 14.699, reading, 'impedance at no load', 'Ω');
    compare(circuit.rotationalLoss, 371.3, reading, 'rotational loss', 'W');
    compare(circuit.R2, 0.15111, digits(5), 'rotor resistance', 'Ω');
    compare(circuit.X1, 0.67061, digits(5), 'stator leakage reactance', 'Ω');
    compare(circuit.X2, 0.67061, digits(5), 'rotor leakage reactance', 'Ω');
    compare(circuit.XM, 14.028, reading, 'magnetising reactance', 'Ω');
  });

  it('has the impedances of the locked rotor', () => {
    const { size, resistance, reactance } = impedanceOf(readings.lockedRotor);
    compare(size, 0.51734, digits(5), 'impedance with the rotor locked, 15 Hz', 'Ω');
    compare(resistance, 0.39397, digits(5), 'resistance with the rotor locked', 'Ω');
    compare(reactance, 0.33531, digits(5), 'reactance with the rotor locked, 15 Hz', 'Ω');
  });

  it('leads to the pull-out of its circuit, and within the approximate Thévenin circuit to the printed one', () => {
    const { machine, supply } = textbookMachine({
      lineVoltage: 208,
      frequency: 60,
      poles: 4,
      rs: circuit.R1,
      Xls: circuit.X1,
      XM: circuit.XM,
      cages: [{ rr: circuit.R2, Xlr: circuit.X2 }],
      J: 0.1,
      power: null,
      rpm: null,
    });
    const top = breakdown(machine, supply);
    compare(
      top.slip,
      0.11338,
      digits(4),
      'pull-out slip, exact for that circuit',
      '',
      'computed independently',
    );
    compare(
      top.torque,
      67.25,
      { absolute: 0.01 },
      'pull-out torque, exact for that circuit',
      'N·m',
      'computed independently',
    );
    // Printed: 0.111 and 66.2 N·m; 2 % from X_th = X1.
    const printed = 'as the book prints it, from an approximate Thévenin circuit';
    compare(top.slip, 0.111, { relative: 0.025 }, `pull-out slip, ${printed}`, '');
    compare(top.torque, 66.2, { relative: 0.02 }, `pull-out torque, ${printed}`, 'N·m');
  });
});

describe('the exact solution of the same readings', () => {
  const omega = 2 * Math.PI * 60;
  const { circuit, estimation } = circuitFromTests(readings);

  it('gives every reading back', () => {
    // Solved to the rounding of the iteration.
    for (const { name, error } of estimation.items) expectWithin(error, 0, { absolute: 1e-8 }, name);
  });

  it('differs from the textbook’s way by what that neglects', () => {
    const { R2, X1, XM } = testShortcut(readings, 0.5);
    // At standstill and 15 Hz the rotor branch is shunted by XM: seen from outside R2 is smaller by ((XM + X2)/XM)², 10 %.
    const shunt = ((XM + X1) / XM) ** 2;
    expectWithin(circuit.cages[0]!.Rr, R2 * shunt, { relative: 0.01 }, 'R2');
    // The leakage loses R2²·… to the shunt and wins X2·X2/XM: the two nearly cancel in this machine.
    expectWithin(omega * circuit.Lls, X1, { relative: 0.03 }, 'X1');
    expectWithin(omega * circuit.Lm, XM, { relative: 0.03 }, 'XM');
  });
});

listedInGuide();
