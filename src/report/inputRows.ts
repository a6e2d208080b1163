import type { Action, LoadTorque, Scenario } from '../scenario/scenario.ts';
import { formatNumber, formatQuantity, type UnitSystem } from './formatQuantity.ts';

/** One line of the inputs table. */
export interface InputRow {
  readonly label: string;
  readonly value: string;
}

/** The lines of one section of the scenario. */
export interface InputGroup {
  readonly title: string;
  readonly rows: readonly InputRow[];
}

const ACTION_WORDS: Readonly<Record<Action['do'], string>> = {
  startForward: 'start forward',
  startReverse: 'start reverse',
  plug: 'plug',
  coast: 'coast',
};

const INITIAL_WORDS = {
  rest: 'at rest, without flux',
  runningForward: 'running forward in the steady state',
  runningReverse: 'running in reverse in the steady state',
} as const;

/** Everything the run was computed with, in one system of units, as rows of a table. */
export function inputGroups(scenario: Scenario, units: UnitSystem): InputGroup[] {
  const { supply, machine, load, starter, solver } = scenario;
  const show = (value: number | null, unit: string) =>
    value === null ? 'not stated' : formatQuantity(value, unit, { system: units });
  const ms = (value: number) => formatQuantity(value, 's', { system: units, milli: true });
  const row = (label: string, value: string): InputRow => ({ label, value });
  const { zeroSpeedSwitch } = starter;
  return [
    {
      title: 'Supply',
      rows: [
        row('Line voltage, r.m.s.', show(supply.lineVoltage, 'V')),
        row('Frequency', show(supply.frequency, 'Hz')),
        row('Angle of phase A at t = 0', show(supply.angle, 'rad')),
        row('Source resistance per phase', show(supply.sourceResistance, 'Ω')),
        row('Source inductance per phase', show(supply.sourceInductance, 'H')),
      ],
    },
    {
      title: 'Machine (equivalent star, referred to the stator)',
      rows: [
        row('Winding connection', machine.connection),
        row('Poles', String(2 * machine.polePairs)),
        row('Stator resistance', show(machine.Rs, 'Ω')),
        row('Stator leakage inductance', show(machine.Lls, 'H')),
        row('Magnetising inductance', show(machine.Lm, 'H')),
        ...machine.cages.flatMap((cage, i) => {
          const name = machine.cages.length === 1 ? 'Rotor' : `Cage ${i + 1}`;
          return [
            row(`${name} resistance`, show(cage.Rr, 'Ω')),
            row(`${name} leakage inductance`, show(cage.Llr, 'H')),
          ];
        }),
        row('Rotor inertia', show(machine.inertia, 'kg·m²')),
        row('Rated power', show(machine.rated.power, 'W')),
        row('Rated speed', show(machine.rated.speed, 'rad/s')),
        row('Rated current, r.m.s.', show(machine.rated.current, 'A')),
        row('Rated torque', show(machine.rated.torque, 'N·m')),
      ],
    },
    {
      title: 'Load',
      rows: [
        row('Load inertia', show(load.inertia, 'kg·m²')),
        ...(load.torques.length === 0
          ? [row('Load torque', 'none')]
          : load.torques.map((t) => loadRow(t, show))),
      ],
    },
    {
      title: 'Starter',
      rows: [
        row('Coil energised to contacts touch', ms(starter.closingTime)),
        row('Coil released to contacts part', ms(starter.openingTime)),
        row('Closing scatter of poles A, B, C', starter.closingScatter.map(ms).join(', ')),
        row('Opening scatter of poles A, B, C', starter.openingScatter.map(ms).join(', ')),
        row('Change-over delay between the coils', ms(starter.changeoverDelay)),
        row(
          'Poles',
          starter.poles === 'arcing' ? 'arc to their own current zero' : 'ideal: interrupt at once',
        ),
        row('Shortest arcing time', ms(starter.minimumArcingTime)),
        row('Phases exchanged in reverse', [...starter.exchangedPhases].join(' and ')),
        row(
          'Zero-speed switch',
          zeroSpeedSwitch === null
            ? 'none'
            : `drops out below ${show(zeroSpeedSwitch.dropOutSpeed, 'rad/s')}, picks up above ${show(zeroSpeedSwitch.pickUpSpeed, 'rad/s')}, delay ${ms(zeroSpeedSwitch.delay)}`,
        ),
      ],
    },
    {
      title: 'Actions',
      rows: [
        row('Initial state', INITIAL_WORDS[scenario.initial]),
        ...scenario.actions.map((action) => row(`At ${show(action.at, 's')}`, ACTION_WORDS[action.do])),
      ],
    },
    {
      title: 'Solver',
      rows: [
        row('Relative tolerance', formatNumber(solver.relativeTolerance)),
        row(
          'End time',
          solver.endTime === 'auto' ? 'when the last action has done its work' : show(solver.endTime, 's'),
        ),
        row('Most steps', formatNumber(solver.maxSteps)),
        row('Reference frame', solver.frame === 'auto' ? 'the one that suits each stretch' : 'stationary'),
      ],
    },
  ];
}

function loadRow(torque: LoadTorque, show: (value: number, unit: string) => string): InputRow {
  switch (torque.kind) {
    case 'friction':
      return {
        label: 'Dry friction',
        value: `${show(torque.torque, 'N·m')}; holds at rest up to ${show(torque.breakaway, 'N·m')}`,
      };
    case 'viscous':
      return { label: 'Viscous, per speed', value: show(torque.coefficient, 'N·m·s/rad') };
    case 'fan':
      return { label: 'Fan, per speed squared', value: show(torque.coefficient, 'N·m·s²/rad²') };
    case 'gravity':
      return { label: 'Gravity, against forward rotation', value: show(torque.torque, 'N·m') };
  }
}
