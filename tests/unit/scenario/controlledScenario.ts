import { type Group, minimalScenario } from './minimalScenario.ts';

/** A zero-speed switch that every scheme is content with. */
export const SWITCH: Group = { dropOutSpeed: '60 rpm', pickUpSpeed: '120 rpm', delay: '5 ms' };

/** A start by button. */
export const PRESS_FORWARD: Group = { at: '0 s', do: 'press forward' };

/**
 * The smallest scenario with a control circuit that reverses through stop, with some keys replaced.
 *
 * @param control keys of the control circuit; undefined takes one out
 * @param starter keys of the starter beside it
 * @param others sections beside the starter
 */
export function controlledScenario(control: Group = {}, starter: Group = {}, others: Group = {}): Group {
  return minimalScenario({
    actions: [PRESS_FORWARD],
    ...others,
    starter: { ...starter, control: { scheme: 'reversing through stop', ...control } },
  });
}
