/**
 * Source: A. E. Fitzgerald, C. Kingsley, S. D. Umans, Electric Machinery, chapter on polyphase induction machines: 10 hp, 220 V,
 * six-pole example (roundings from memory, recomputed; 220 V is the voltage that fits them).
 */
import { describe, it } from 'vitest';
import { breakdown } from '../../src/machine/breakdown.ts';
import { steadyState } from '../../src/machine/steadyState.ts';
import { magnitude } from '../../src/numeric/complex.ts';
import { publishedSource } from '../support/published.ts';
import { textbookMachine } from '../support/textbookMachines.ts';

const { compare, listedInGuide } = publishedSource(
  'fitzgerald',
  'A. E. Fitzgerald, C. Kingsley, S. D. Umans, Electric Machinery, chapter on polyphase induction machines: the 10 hp, 220 V, 60 Hz, ' +
    'six-pole example, to the three or four digits that the book prints.',
  'from memory, recomputed',
);

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
    compare(state.current, 18.8, { absolute: 0.05 }, 'current at slip 0.02', 'A');
    compare(state.powerFactor, 0.8456, { absolute: 5e-5 }, 'power factor at slip 0.02', '');
    compare(state.airGapPower, 5740, { absolute: 5 }, 'air-gap power at slip 0.02', 'W');
  });

  it('has the printed figures at 3 % slip', () => {
    const state = steadyState(machine, supply, 0.03);
    compare(
      magnitude(state.rotorCurrents[0]!),
      23.89,
      { absolute: 0.005 },
      'rotor current at slip 0.03, referred to the stator',
      'A',
    );
    compare(state.torque, 65.4, { absolute: 0.05 }, 'torque at slip 0.03', 'N·m');
  });

  it('has the printed breakdown and starting figures', () => {
    const top = breakdown(machine, supply);
    compare(top.torque, 175, { absolute: 0.5 }, 'breakdown torque', 'N·m');
    compare(top.slip, 0.192, { absolute: 5e-4 }, 'slip at breakdown', '');
    compare(1200 * (1 - top.slip), 970, { absolute: 0.5 }, 'speed at breakdown', 'r/min');
    const start = steadyState(machine, supply, 1);
    compare(start.torque, 78, { absolute: 0.5 }, 'starting torque', 'N·m');
    compare(
      magnitude(start.rotorCurrents[0]!),
      150,
      { absolute: 0.5 },
      'rotor current at starting, referred to the stator',
      'A',
    );
  });
});

listedInGuide();
