/**
 * Source: P. C. Krause, O. Wasynczuk, S. D. Sudhoff, Analysis of Electric Machinery and Drive Systems, 2nd ed., IEEE
 * Press/Wiley 2002, table "Induction machine parameters" (Table 4.10-1; number from memory). T_B and I_B are as the book
 * prints them (from memory, and they follow from the ratings). All other numbers are computed from the circuit, not
 * printed in the book; tolerance half a unit of their last digit, written as such.
 */
import { describe, it } from 'vitest';
import { breakdown } from '../../src/machine/breakdown.ts';
import { steadyState } from '../../src/machine/steadyState.ts';
import { publishedSource } from '../support/published.ts';
import { HORSEPOWER, KRAUSE } from '../support/textbookMachines.ts';
import { expectWithin } from '../support/tolerance.ts';

const { compare, listedInGuide } = publishedSource(
  'krauseSteadyState',
  'P. C. Krause, O. Wasynczuk, S. D. Sudhoff, Analysis of Electric Machinery and Drive Systems, 2nd ed., IEEE Press/Wiley 2002, table ' +
    '“Induction machine parameters” (Table 4.10-1, the number from memory): circuits and base quantities are the book’s, from memory ' +
    '(it cuts 5.87 A to 5.8 A); the other figures are computed from those circuits and not printed in the book.',
  'computed independently',
);
const PRINTED = 'from memory, recomputed';

/** Rows as tabulated: name, unit, digits behind the point, 3 hp, 50 hp. */
const ROWS = [
  ['current at rated speed', 'A', 3, 8.845, 62.804],
  ['torque at rated speed', 'N·m', 3, 14.027, 234.641],
  ['power factor at rated speed', '', 4, 0.8148, 0.9045],
  ['no-load current', 'A', 3, 4.724, 19.846],
  ['locked-rotor current', 'A', 3, 65.739, 394.177],
  ['locked-rotor power factor', '', 4, 0.6237, 0.4523],
  ['locked-rotor torque', 'N·m', 3, 52.972, 538.499],
  ['pull-out torque', 'N·m', 3, 61.87, 780.984],
  ['pull-out slip', '', 5, 0.5268, 0.37781],
  ['current at slip 2', 'A', 3, 74.573, 421.974],
  ['torque at slip 2', 'N·m', 3, 34.106, 308.63],
] as const;

describe.each([
  ['3 hp', KRAUSE.hp3, 3],
  ['50 hp', KRAUSE.hp50, 4],
] as const)('the equivalent circuit of the %s machine', (name, textbook, column) => {
  const { machine, supply, printed } = textbook;
  const at = (slip: number) => steadyState(machine, supply, slip);
  const rated = at(1 - printed.rpm! / 1800);
  const pullOut = breakdown(machine, supply);
  const computed = [
    rated.current,
    rated.torque,
    rated.powerFactor,
    at(0).current,
    at(1).current,
    at(1).powerFactor,
    at(1).torque,
    pullOut.torque,
    pullOut.slip,
    at(2).current,
    at(2).torque,
  ];
  it.each(ROWS.map((row, i) => ({ row, value: computed[i]! })))(
    'has the tabulated $row.0',
    ({ row, value }) => {
      compare(value, row[column], { absolute: 0.5001 * 10 ** -row[2] }, `${row[0]}, ${name}`, row[1]);
    },
  );
});

describe('the base quantities of the table', () => {
  it.each([
    ['3 hp', KRAUSE.hp3, 3, 11.9, 5.8],
    ['50 hp', KRAUSE.hp50, 50, 198, 46.8],
    ['500 hp', KRAUSE.hp500, 500, 1980, 93.6],
    ['2250 hp', KRAUSE.hp2250, 2250, 8900, 421.2],
  ] as const)('belong to the entered %s machine', (name, textbook, hp, torque, current) => {
    const power = hp * HORSEPOWER;
    // The book cuts rather than rounds (5.87 → 5.8): one unit of its last digit, 1.3 % at most.
    const baseTorque = power / textbook.synchronousSpeed;
    const baseCurrent = power / (Math.sqrt(3) * textbook.supply.lineVoltage);
    compare(baseTorque, torque, { relative: 0.005 }, `base torque from the rating, ${name}`, 'N·m', PRINTED);
    compare(baseCurrent, current, { relative: 0.013 }, `base current from the rating, ${name}`, 'A', PRINTED);
  });

  it('are not what the machines do at rated speed (a rating is read from the circuit)', () => {
    const { machine, supply } = KRAUSE.hp3;
    expectWithin(
      steadyState(machine, supply, 0.05).torque / 11.9,
      14.027 / 11.9,
      { relative: 1e-4 },
      'multiple',
    );
  });
});

listedInGuide();
