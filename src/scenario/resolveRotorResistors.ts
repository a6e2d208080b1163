import { squared } from '../numeric/raised.ts';
import { contradiction } from './contradiction.ts';
import { derivedValue, type Note } from './origin.ts';
import type { RotorResistorData } from './scenario.ts';
import type { ScenarioInput } from './scenarioInput.ts';

/**
 * Refers the resistors at the slip rings to the stator: R·a², a the voltage between stator lines over that between open
 * rings at standstill. That ratio leads to the equivalent star whether the stator is in star or in delta.
 *
 * @param input as stated, in SI
 * @param cages number of cages of the circuit
 * @param note takes down what was not given
 * @throws ScenarioError where an estimation found two cages
 */
export function resolveRotorResistors(
  input: NonNullable<ScenarioInput['machine']['rotorResistors']>,
  cages: number,
  note: Note,
): RotorResistorData {
  if (cages !== 1)
    throw contradiction(
      'machine.rotorResistors',
      `${cages} cages`,
      'the machine was found to have two cages, and only a wound rotor has slip rings',
      'the circuit of the wound rotor, with one cage that stands for its winding',
    );
  if (input.turnsRatio === undefined) note('rotorResistors.turnsRatio', '1', 'default');
  if (input.plugging === undefined) note('rotorResistors.plugging', '0 ohm', 'default');
  const square = squared(input.turnsRatio ?? 1);
  const refer = (path: string, resistance: number) => {
    if (input.turnsRatio !== undefined)
      note(`rotorResistors.referred.${path}`, derivedValue(resistance * square, 'ohm'), 'derived');
    return resistance * square;
  };
  return {
    starting: (input.starting ?? []).map(({ resistance, duration }, index) => ({
      resistance: refer(`starting.${index}`, resistance),
      duration,
    })),
    plugging: refer('plugging', input.plugging ?? 0),
  };
}
