import { WORD_OF_COMMAND, wordOfButton } from './actionWords.ts';
import { renderJudgement } from './renderJudgement.ts';
import { renderLoad } from './renderLoad.ts';
import { renderMachine } from './renderMachine.ts';
import { renderStarter } from './renderStarter.ts';
import { type InitialState, isCommand, type Scenario, type Supply } from './scenario.ts';
import { writeQuantity as write } from './writeQuantity.ts';

const initialWords: Readonly<Record<InitialState, string>> = {
  rest: 'rest',
  runningForward: 'running forward',
  runningReverse: 'running reverse',
};

/**
 * Renders a scenario in the form a person writes, in plain SI units with all digits: parsing it again gives the same
 * scenario to the last bit.
 *
 * @remarks A dead time that is not a whole number of picoseconds, and a default delay that is not the opening time,
 *   cannot come from a file; such a delay is rendered as `changeoverDelay`. Nor can a press that repeats itself at one instant.
 * @param scenario in SI
 * @returns plain data, ready for JSON or YAML
 */
export function renderScenario(scenario: Scenario): Readonly<Record<string, unknown>> {
  const { solver } = scenario;
  return {
    schemaVersion: scenario.schemaVersion,
    title: scenario.title,
    ...(scenario.description === '' ? {} : { description: scenario.description }),
    supply: renderSupply(scenario.supply),
    machine: renderMachine(scenario.machine),
    load: renderLoad(scenario.load),
    starter: renderStarter(scenario.starter),
    initial: initialWords[scenario.initial],
    actions: scenario.actions.map((action) => ({
      at: write(action.at, 's'),
      do: isCommand(action) ? WORD_OF_COMMAND[action.do] : wordOfButton(action),
    })),
    solver: {
      relativeTolerance: solver.relativeTolerance,
      endTime: solver.endTime === 'auto' ? 'auto' : write(solver.endTime, 's'),
      maxSteps: solver.maxSteps,
      frame: solver.frame,
    },
    ...renderJudgement(scenario),
  };
}

function renderSupply(supply: Supply): Readonly<Record<string, unknown>> {
  const { cable } = supply;
  return {
    lineVoltage: write(supply.lineVoltage, 'V'),
    frequency: write(supply.frequency, 'Hz'),
    angle: write(supply.angle, 'rad'),
    sourceResistance: write(supply.sourceResistance, 'ohm'),
    sourceInductance: write(supply.sourceInductance, 'H'),
    ...(cable === undefined
      ? {}
      : { cable: { resistance: write(cable.resistance, 'ohm'), inductance: write(cable.inductance, 'H') } }),
  };
}
