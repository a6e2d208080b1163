import { CLAMP_WINDOW } from '../measure/clampReading.ts';
import type { CommissioningRow, CommissioningSheet } from '../survey/commissioning/commissioningSheet.ts';
import { CAUTIONS } from './cautions.ts';
import { controlRows } from './controlRows.ts';
import { formatQuantity, type UnitSystem } from './formatQuantity.ts';
import { inputFormat } from './inputRow.ts';

/** How the rows came out, in sentences; what differs and what is dangerous by number. */
export function summarySentences(rows: readonly CommissioningRow[]): readonly string[] {
  const of = (kind: CommissioningRow['verdict']['kind']) => rows.filter((row) => row.verdict.kind === kind);
  const differs = of('differs');
  const missing = of('notSimulated');
  const dangerous = rows.filter((row) => row.dangers.length > 0);
  const sound = dangerous.filter((row) => row.test.group !== 'faults');
  const faulty = dangerous.filter((row) => row.test.group === 'faults');
  const usable = rows.length - missing.length;
  return [
    differs.length === 0 && usable > 0
      ? `All ${usable} tests agree with what should happen.`
      : `${of('agrees').length} of ${usable} tests agree with what should happen; ${numbered(differs)} differ${differs.length === 1 ? 's' : ''}.`,
    ...(missing.length === 0 ? [] : [`Not simulated: ${numbered(missing)}.`]),
    sound.length === 0
      ? 'Without a fault no test shows a dangerous behaviour.'
      : `Dangerous without any fault: ${numbered(sound)}.`,
    ...(faulty.length === 0 ? [] : [`Dangerous with a device fault: ${numbered(faulty)}.`]),
  ];
}

/** "no. 4", "nos. 4, 7 to 9". */
function numbered(rows: readonly CommissioningRow[]): string {
  const runs: [number, number][] = [];
  for (const { number } of rows) {
    const last = runs.at(-1);
    if (last !== undefined && last[1] === number - 1) last[1] = number;
    else runs.push([number, number]);
  }
  const words = runs.flatMap(([a, b]) =>
    b === a + 1 ? [String(a), String(b)] : [a === b ? String(a) : `${a} to ${b}`],
  );
  return `${rows.length === 1 ? 'no.' : 'nos.'} ${words.join(', ')}`;
}

/** What must be read before anything is touched. */
export const SHEET_CAUTIONS: readonly string[] = [
  'Danger of life: tests on a live starter are for licensed people only, with nobody at the driven machine.',
  'The device faults are thought experiments. Never make one by bridging, wedging, loosening or removing a contact, an interlock, a switch or a protective device.',
  'Every start, reversal and braking heats the rotor: pause between the tests until it has cooled. How long is for the thermal judgement, not for this sheet.',
  ...CAUTIONS,
];

/** What the readings mean. */
export const READING_DEFINITIONS: readonly string[] = [
  `Clamp meter: the largest r.m.s. value of a line’s current over any ${CLAMP_WINDOW * 1e3} ms of the operation, on the line where it is largest (${CLAMP_WINDOW * 1e3} ms is what the inrush function of a clamp meter integrates over: common practice, no source). “CT”: a clamp with a current transformer, which does not pass the direct component: the mean over the same ${CLAMP_WINDOW * 1e3} ms is taken off. “With d.c.”: a clamp with a Hall element. The letter names the line. “Before”: the last ${CLAMP_WINDOW * 1e3} ms in which the machine is left alone. “–”: the current ends for good within ${CLAMP_WINDOW * 1e3} ms; a reading would tell how the window happens to lie, not the current.`,
  'Tachometer: speed of the motor shaft, reverse with a minus sign.',
  'Times, also those of the simulation, count from the instant under “Duration”. Half speed is found from the simulated start and stop of this same machine.',
  'Agrees: each requirement under “What should happen” is a question to the simulation, answered by its record of coils, contacts and speed. For a device fault it is what this scheme makes of it.',
  'Each row is one simulation: with another inertia, load or contactor the numbers are others.',
];

/** What a standard reserves about this starter; empty: nothing. */
export function reservations({ scenario }: CommissioningSheet, units: UnitSystem): readonly string[] {
  return controlRows(scenario.starter, inputFormat(units))
    .filter(({ label }) => label === 'Braking by reverse current')
    .map(({ label, value }) => `${label}: ${value} (from memory).`);
}

/** The machine and the starter on one line each. */
export function plateLines({ scenario }: CommissioningSheet, units: UnitSystem): readonly string[] {
  const show = inputFormat(units).show;
  const { supply, machine, load } = scenario;
  const { power, current, speed } = machine.rated;
  const gear = load.gear?.ratio ?? 1;
  const stated = (value: number | null, unit: string) =>
    value === null ? [] : [formatQuantity(value, unit, { system: units })];
  return [
    [
      `Machine: ${[...stated(power, 'W'), show(supply.lineVoltage, 'V'), show(supply.frequency, 'Hz'), ...stated(current, 'A'), ...stated(speed, 'rad/s')].join(', ')}`,
      `inertia at the motor ${show(machine.inertia + load.inertia / gear ** 2, 'kg·m²')}`,
    ].join('; '),
    `Starter: ${controlRows(scenario.starter, inputFormat(units))
      .filter(({ label }) => PLATE_ROWS.includes(label))
      .map(({ label, value }) =>
        label === 'Control circuit' ? value.toLowerCase() : `${label.toLowerCase()}: ${value}`,
      )
      .join('; ')}`,
  ];
}

/** Rows of the inputs table that tell starters apart. */
const PLATE_ROWS: readonly string[] = [
  'Control circuit',
  'Memory relay',
  'Ready relay',
  'Emergency stop',
  'Change-over timer',
  'Mechanical interlock',
  'Control',
  'Overload relay',
];
