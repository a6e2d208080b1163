/**
 * Source: A. E. Fitzgerald, C. Kingsley, S. D. Umans, Electric Machinery, chapter on polyphase induction machines: 10 hp, 220 V,
 * six-pole example (roundings from memory, recomputed; 220 V is the voltage that fits them).
 */
import { describe, it } from 'vitest';
import { breakdown } from '../../src/machine/breakdown.ts';
import { steadyState } from '../../src/machine/steadyState.ts';
import { magnitude } from '../../src/numeric/complex.ts';
import { textbookMachine } from '../support/textbookMachines.ts';
import { expectWithin } from '../support/tolerance.ts';

const { machine, supply } = textbookMachine({
  lineVoltage: 220,
  frequency: 60,
  poles: 6,
  rs: 0.294,
  Xls: 0.503,
  XM: 13.25,
  cages: [{ rr: 0.144, Xlr: 0.209 }],
  J: 0.2,
  power: 10 * 745.7,
  rpm: null,
});

describe('the 10 hp six-pole example', () => {
  it('has the printed figures at 2 % slip', () => {
    const state = steadyState(machine, supply, 0.02);
    expectWithin(state.current, 18.8, { absolute: 0.05 }, 'current');
    expectWithin(state.powerFactor, 0.8456, { absolute: 5e-5 }, 'power factor');
    expectWithin(state.airGapPower, 5740, { absolute: 5 }, 'air-gap power');
  });

  it('has the printed figures at 3 % slip', () => {
    const state = steadyState(machine, supply, 0.03);
    expectWithin(magnitude(state.rotorCurrents[0]!), 23.89, { absolute: 0.005 }, 'rotor current');
    expectWithin(state.torque, 65.4, { absolute: 0.05 }, 'torque');
  });

  it('has the printed breakdown and starting figures', () => {
    const top = breakdown(machine, supply);
    expectWithin(top.torque, 175, { absolute: 0.5 }, 'breakdown torque');
    expectWithin(top.slip, 0.192, { absolute: 5e-4 }, 'breakdown slip');
    expectWithin(1200 * (1 - top.slip), 970, { absolute: 0.5 }, 'breakdown speed');
    const start = steadyState(machine, supply, 1);
    expectWithin(start.torque, 78, { absolute: 0.5 }, 'starting torque');
    expectWithin(magnitude(start.rotorCurrents[0]!), 150, { absolute: 0.5 }, 'starting rotor current');
  });
});
