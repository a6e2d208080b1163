import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseScenario } from '../../src/estimate/parseScenario.ts';
import type {
  ButtonAction,
  ButtonName,
  ControlData,
  Scenario,
  StarterFault,
} from '../../src/scenario/scenario.ts';
import { PLAIN_CONTROL } from './scenarios.ts';

const EXAMPLE = fileURLToPath(
  new URL('../../examples/engineer/may-this-belt-be-plugged.yaml', import.meta.url),
);
const { protection: _, ...BELT } = parseScenario(readFileSync(EXAMPLE, 'utf8'));

/** The belt of the examples with a control circuit in place of commands. */
export function controlScenario(
  control: Partial<ControlData>,
  actions: readonly ButtonAction[],
  faults: readonly StarterFault[] = [],
  change: (scenario: Scenario) => Scenario = (scenario) => scenario,
): Scenario {
  return change({
    ...BELT,
    starter: {
      ...BELT.starter,
      changeoverDelay: 0,
      changeoverGivenAs: 'default',
      control: { ...PLAIN_CONTROL, scheme: 'plugStop', ...control },
      ...(faults.length === 0 ? {} : { faults }),
    },
    actions: actions.toSorted((a, b) => a.at - b.at),
  });
}

/** A button pressed and let go again, s. */
export function press(button: ButtonName, at: number, held = 0.15): readonly ButtonAction[] {
  return [
    { at, do: 'press', button },
    { at: at + held, do: 'release', button },
  ];
}

/** A device pressed and left so. */
export function hold(button: ButtonName, at: number): ButtonAction {
  return { at, do: 'press', button };
}
