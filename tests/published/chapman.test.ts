/**
 * Source: S. J. Chapman, Electric Machinery Fundamentals, chapter on induction motors: the 25 hp 460 V example and its pull-out
 * example (from memory, recomputed). Printed values after the book's rounding and, for pull-out, its approximate
 * Thévenin circuit (V_th = 255.2 V, X_th = X1); exact values of the same circuit computed.
 */
import { describe, it } from 'vitest';
import { breakdown } from '../../src/machine/breakdown.ts';
import { steadyState } from '../../src/machine/steadyState.ts';
import { textbookMachine } from '../support/textbookMachines.ts';
import { expectWithin } from '../support/tolerance.ts';

const motor = (R2: number) =>
  textbookMachine({
    lineVoltage: 460,
    frequency: 60,
    poles: 4,
    rs: 0.641,
    Xls: 1.106,
    XM: 26.3,
    cages: [{ rr: R2, Xlr: 0.464 }],
    J: 0.4,
    power: 25 * 745.7,
    rpm: null,
  });

const { machine, supply, synchronousSpeed } = motor(0.332);
/** Half a unit of the last digit. */
const digits = (count: number) => ({ absolute: 0.5001 * 10 ** -count });

describe('the 25 hp example', () => {
  const state = steadyState(machine, supply, 0.022);
  const angle = (Math.atan2(state.statorCurrent[1], state.statorCurrent[0]) * 180) / Math.PI;

  it('has the printed figures within the book’s rounding', () => {
    // The book works with three or four digits throughout.
    expectWithin(state.current, 18.88, { relative: 1e-3 }, 'current');
    expectWithin(angle, -33.6, { absolute: 0.1 }, 'angle');
    expectWithin(state.torque, 62.8, { absolute: 0.05 }, 'induced torque');
    const output = state.airGapPower * (1 - 0.022) - 1100;
    expectWithin(output / state.inputPower, 0.837, { absolute: 6e-4 }, 'efficiency');
    expectWithin(output / (synchronousSpeed * (1 - 0.022)), 56.9, { absolute: 0.1 }, 'load torque');
  });

  it('has the exact figures of its circuit', () => {
    expectWithin(state.current, 18.892, digits(3), 'current');
    expectWithin(angle, -33.68, digits(2), 'angle');
    expectWithin(state.airGapPower, 11838.8, digits(1), 'air-gap power');
    expectWithin(state.airGapPower * (1 - 0.022), 11578.4, digits(1), 'converted power');
    expectWithin(state.torque, 62.807, digits(3), 'torque');
  });

  it('has the exact figures when plugged from that speed', () => {
    const plugged = steadyState(machine, supply, 1.978);
    expectWithin(plugged.current, 151.138, digits(3), 'current');
    expectWithin(plugged.torque, 58.921, digits(3), 'torque');
  });
});

describe('the pull-out example', () => {
  const top = breakdown(machine, supply);

  it('has the exact figures of its circuit', () => {
    expectWithin(top.slip, 0.20141, digits(5), 'slip');
    expectWithin(1800 * (1 - top.slip), 1437.5, digits(1), 'speed');
    expectWithin(top.torque, 230.8, digits(2), 'pull-out torque');
    expectWithin(steadyState(machine, supply, 1).torque, 106.56, digits(2), 'starting torque');
    expectWithin(steadyState(machine, supply, 1).current, 144.53, digits(2), 'starting current');
    const doubled = motor(2 * 0.332);
    expectWithin(breakdown(doubled.machine, supply).slip, 0.4028, digits(4), 'slip, doubled R2');
    expectWithin(
      steadyState(doubled.machine, supply, 1).torque,
      174.06,
      digits(2),
      'starting torque, doubled R2',
    );
  });

  it('has the printed figures within the error of the approximate Thévenin circuit', () => {
    // X_th = X1 instead of 1.06 Ω: 2 % in slip and starting torque, 1 % in torque.
    expectWithin(top.slip, 0.198, { relative: 0.02 }, 'slip');
    expectWithin(top.torque, 229, { relative: 0.01 }, 'pull-out torque');
    expectWithin(steadyState(machine, supply, 1).torque, 104, { relative: 0.025 }, 'starting torque');
    const doubled = motor(2 * 0.332);
    expectWithin(breakdown(doubled.machine, supply).slip, 0.396, { relative: 0.02 }, 'slip, doubled R2');
    expectWithin(
      steadyState(doubled.machine, supply, 1).torque,
      170,
      { relative: 0.025 },
      'starting, doubled R2',
    );
  });
});
