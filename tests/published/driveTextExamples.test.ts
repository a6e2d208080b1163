/**
 * Sources: worked plugging examples of two electric-drives texts, known only from open transcriptions that do not name the
 * book: Ex. 6.6 and 6.7 of one, Exa 1.41 of another (arithmetic redone). Series circuit without magnetising branch.
 * Left out, because the code has no such formula: times and energies by the Kloss form.
 */
import { describe, it } from 'vitest';
import { breakdown } from '../../src/machine/breakdown.ts';
import { steadyState } from '../../src/machine/steadyState.ts';
import { publishedSource } from '../support/published.ts';
import { textbookMachine } from '../support/textbookMachines.ts';

const { compare, listedInGuide } = publishedSource(
  'driveTextExamples',
  'Examples 6.6, 6.7 and 1.41 on plugging in two texts on electric drives, known only from open transcriptions that do not name the ' +
    'books (arithmetic redone); 400 V, 50 Hz, eight poles, series circuit without magnetising branch.',
  'looked up',
);

const series = (rs: number, Xls: number, rr: number, Xlr: number) =>
  textbookMachine({
    lineVoltage: 400,
    frequency: 50,
    poles: 8,
    rs,
    Xls,
    XM: 1e8,
    cages: [{ rr, Xlr }],
    J: 10,
    power: null,
    rpm: null,
  });

/** Half a unit of the last printed digit. */
const digits = (count: number) => ({ absolute: 0.5 * 10 ** -count });

describe('plugging examples of drive texts', () => {
  it('Ex. 6.6: 720 r/min machine at full load and plugged', () => {
    const { machine, supply } = series(1.2, 2.5, 1.2, 2.5);
    const fullLoad = steadyState(machine, supply, 0.04);
    const plugged = steadyState(machine, supply, 1.96);
    const [current, torque] = [plugged.current / fullLoad.current, plugged.torque / fullLoad.torque];
    compare(plugged.current, 43.42, digits(2), 'plugging current at slip 1.96, example 6.6', 'A');
    compare(fullLoad.current, 7.309, digits(3), 'current at full load, slip 0.04, example 6.6', 'A');
    compare(current, 5.94, digits(2), 'plugging current over current at full load, example 6.6', '');
    compare(plugged.torque, 44.1, digits(2), 'plugging torque at slip 1.96, example 6.6', 'N·m');
    compare(fullLoad.torque, 61.21, digits(2), 'torque at full load, slip 0.04, example 6.6', 'N·m');
    compare(torque, 0.72, digits(3), 'plugging torque over torque at full load, example 6.6', '');
  });

  it('Ex. 6.7: breakdown', () => {
    const { machine, supply } = series(0.1, 0.4, 0.1, 0.4);
    const top = breakdown(machine, supply);
    compare(top.slip, 0.12403, digits(5), 'slip at breakdown, example 6.7', '');
    compare(top.torque, 1123.99, digits(2), 'breakdown torque, example 6.7', 'N·m');
  });

  it('Exa 1.41: wound rotor with 2 Ω added on the stator side', () => {
    const { machine, supply } = series(0.1, 0.6, 0.125 + 2, 0.6);
    const plugged = steadyState(machine, supply, 1.95);
    const example = 'at slip 1.95 with 2 Ω added to the rotor circuit, example 1.41';
    compare(plugged.current, 136.67, digits(2), `plugging current ${example}`, 'A');
    compare(plugged.torque, 777, digits(0), `plugging torque ${example}`, 'N·m');
  });
});

listedInGuide();
