import type { Demands } from './demands.ts';
import { type Action, type ButtonName, isCommand } from './scenario.ts';

const COMMANDS = ['startForward', 'startReverse', 'plug', 'coast', 'brake', 'injectDc'] as const;
const BUTTONS = {
  forward: ['press', 'release'],
  reverse: ['press', 'release'],
  stop: ['press', 'release'],
  reset: ['press', 'release'],
  emergencyStop: ['press', 'release'],
  overloadTest: ['press'],
  overloadReset: ['press'],
} as const satisfies Readonly<Record<ButtonName, readonly string[]>>;

/**
 * Takes down what is impossible about the actions by themselves: times out of order, buttons that do not exist.
 *
 * @param actions of a scenario object
 * @param together two may share an instant
 * @param demands collects the problems
 */
export function assertActions(actions: readonly Action[], together: boolean, demands: Demands): void {
  for (const [j, action] of actions.entries()) {
    const path = `actions.${j}`;
    demands.group(path, action, { at: 'notNegative' });
    const before = j === 0 ? undefined : actions[j - 1]?.at;
    if (before !== undefined && !(action?.at > before || (together && action?.at === before)))
      demands.report(
        `${path}.at`,
        action?.at,
        `a time ${together ? 'not before' : 'after'} the action before`,
      );
    if (action === null || typeof action !== 'object') continue;
    if (isCommand(action)) demands.word(`${path}.do`, action.do, COMMANDS);
    else if (!Object.hasOwn(BUTTONS, action.button))
      demands.word(`${path}.button`, action.button, Object.keys(BUTTONS));
    else demands.word(`${path}.do`, action.do, BUTTONS[action.button]);
  }
}
