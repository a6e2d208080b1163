/**
 * Source: C.-M. Ong, Dynamic Simulation of Electric Machinery, Prentice Hall 1998, the 20 hp, 220 V machine (from memory; at the printed
 * slip of 0.0287 the circuit delivers 20 hp, which confirms the set).
 */
import { describe, it } from 'vitest';
import { ratedPoint } from '../../src/machine/ratedPoint.ts';
import { steadyState } from '../../src/machine/steadyState.ts';
import { publishedSource } from '../support/published.ts';
import { HORSEPOWER, textbookMachine } from '../support/textbookMachines.ts';
import { expectWithin } from '../support/tolerance.ts';

const { compare, listedInGuide } = publishedSource(
  'ong',
  'C.-M. Ong, Dynamic Simulation of Electric Machinery, Prentice Hall 1998, the 20 hp, 220 V, 60 Hz, ' +
    'four-pole machine.',
  'from memory, recomputed',
);

const { machine, supply } = textbookMachine({
  lineVoltage: 220,
  frequency: 60,
  poles: 4,
  rs: 0.1062,
  Xls: 0.2145,
  XM: 5.8339,
  cages: [{ rr: 0.0764, Xlr: 0.2145 }],
  J: 2.8,
  power: 20 * HORSEPOWER,
  rpm: null,
});

describe('the 20 hp machine', () => {
  it('delivers its rated power at the printed slip', () => {
    const state = steadyState(machine, supply, 0.0287);
    // 1 hp = 745.7 W to four digits
    compare(
      (state.airGapPower * (1 - 0.0287)) / HORSEPOWER,
      20.008,
      { absolute: 1e-3 },
      'shaft power without friction at the printed slip of 0.0287 (the book’s rating: 20 hp)',
      'hp',
      'computed independently',
    );
    compare(state.current, 49.68, { absolute: 0.005 }, 'phase current at the printed slip of 0.0287', 'A');
  });

  it('has its rated point where the circuit delivers the rated power', () => {
    const rated = ratedPoint(machine, supply);
    // Power is within 0.04 % of 20 hp at the printed slip, whose last digit is 0.2 %.
    compare(rated.slip, 0.0287, { absolute: 5e-5 }, 'slip at which the circuit delivers 20 hp', '');
    expectWithin((rated.torque * rated.speed!) / HORSEPOWER, 20, { relative: 1e-12 }, 'power');
  });
});

listedInGuide();
