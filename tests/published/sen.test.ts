/**
 * Source: P. C. Sen, Principles of Electric Machines and Power Electronics, chapter on induction machines: 460 V, 1740 r/min
 * example (from memory, recomputed). The book rounds intermediate results and approximates its Thévenin circuit: its
 * figures lie within 0.9 % of the exact ones, which are given too.
 */
import { describe, it } from 'vitest';
import { breakdown } from '../../src/machine/breakdown.ts';
import { steadyState } from '../../src/machine/steadyState.ts';
import { publishedSource } from '../support/published.ts';
import { textbookMachine } from '../support/textbookMachines.ts';

const { compare, listedInGuide } = publishedSource(
  'sen',
  'P. C. Sen, Principles of Electric Machines and Power Electronics, chapter on induction machines, ' +
    'the 460 V, 1740 r/min example; the book rounds intermediate results and approximates its Thévenin ' +
    'circuit, the exact figures of the same circuit stand beside.',
  'from memory, recomputed',
);

const { machine, supply } = textbookMachine({
  lineVoltage: 460,
  frequency: 60,
  poles: 4,
  rs: 0.25,
  Xls: 0.5,
  XM: 30,
  cages: [{ rr: 0.2, Xlr: 0.5 }],
  J: 0.4,
  power: null,
  rpm: 1740,
});
const full = steadyState(machine, supply, 1 / 30);
const start = steadyState(machine, supply, 1);
const top = breakdown(machine, supply);

describe('the 460 V, 1740 r/min example', () => {
  it.each([
    ['full-load current', full.current, 42.823, 3, 42.75, 'A'],
    ['full-load torque', full.torque, 163.11, 2, 163.11, 'N·m'],
    ['starting current', start.current, 244.19, 2, 245.9, 'A'],
    ['starting torque', start.torque, 183.62, 2, 185.2, 'N·m'],
    ['breakdown torque', top.torque, 429.37, 2, 431.68, 'N·m'],
    ['breakdown slip', top.slip, 0.19554, 5, 0.1963, ''],
  ] as const)('has the exact and about the printed %s', (name, value, exact, digits, printed, unit) => {
    compare(value, printed, { relative: 0.009 }, `${name}, as the book prints it`, unit);
    const last = { absolute: 0.5001 * 10 ** -digits };
    compare(value, exact, last, `${name}, exact for the book’s circuit`, unit, 'computed independently');
  });

  it('has the printed power factor and efficiency', () => {
    compare(full.powerFactor, 0.9414, { absolute: 5e-5 }, 'full-load power factor', '');
    const output = full.airGapPower * (1 - 1 / 30) - 1700;
    compare(
      output / full.inputPower,
      0.8724,
      { absolute: 5e-5 },
      'full-load efficiency with 1700 W of rotational loss',
      '',
    );
  });
});

listedInGuide();
