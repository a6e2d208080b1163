import {
  type Action,
  type ActionKind,
  type ButtonName,
  isCommand,
  type Scenario,
} from '../scenario/scenario.ts';
import { formatNumber, type UnitSystem } from './formatQuantity.ts';
import { type InputGroup, inputFormat, inputRow as row } from './inputRow.ts';
import { loadRows } from './loadRows.ts';
import { machineRows } from './machineRows.ts';
import { starterRows } from './starterRows.ts';

const COMMAND_WORDS: Readonly<Record<ActionKind, string>> = {
  startForward: 'start forward',
  brake: 'apply brake',
  injectDc: 'inject dc',
  startReverse: 'start reverse',
  plug: 'plug',
  coast: 'coast',
};

const BUTTON_WORDS: Readonly<Record<ButtonName, string>> = {
  forward: 'forward button',
  reverse: 'reverse button',
  stop: 'stop button',
  reset: 'reset button',
  emergencyStop: 'emergency stop',
  overloadTest: 'test button of the overload relay',
  overloadReset: 'reset button of the overload relay',
};

function actionWords(action: Action): string {
  if (isCommand(action)) return COMMAND_WORDS[action.do];
  return `${BUTTON_WORDS[action.button]} ${action.do === 'press' ? 'pressed' : 'released'}`;
}

const INITIAL_WORDS = {
  rest: 'at rest, without flux',
  runningForward: 'running forward in the steady state',
  runningReverse: 'running in reverse in the steady state',
} as const;

/** Everything the run was computed with, in one system of units, as rows of a table. Absent elements have no row. */
export function inputGroups(scenario: Scenario, units: UnitSystem): InputGroup[] {
  const { supply, machine, load, starter, solver } = scenario;
  const format = inputFormat(units);
  const { show } = format;
  const { cable } = supply;
  return [
    {
      title: 'Supply',
      rows: [
        row('Line voltage, r.m.s.', show(supply.lineVoltage, 'V')),
        row('Frequency', show(supply.frequency, 'Hz')),
        row('Angle of phase A at t = 0', show(supply.angle, 'rad')),
        row('Source resistance per phase', show(supply.sourceResistance, 'Ω')),
        row('Source inductance per phase', show(supply.sourceInductance, 'H')),
        ...(cable === undefined
          ? []
          : [
              row('Cable resistance per conductor', show(cable.resistance, 'Ω')),
              row('Cable inductance per conductor', show(cable.inductance, 'H')),
            ]),
      ],
    },
    { title: 'Machine (equivalent star, referred to the stator)', rows: machineRows(machine, format) },
    {
      title: load.gear === undefined ? 'Load' : "Load (values at the load's own shaft, behind the gear)",
      rows: loadRows(load, format),
    },
    { title: 'Starter', rows: starterRows(starter, format) },
    {
      title: 'Actions',
      rows: [
        row('Initial state', INITIAL_WORDS[scenario.initial]),
        ...scenario.actions.map((action) => row(`At ${show(action.at, 's')}`, actionWords(action))),
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
