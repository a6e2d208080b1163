import { polesFromSpeed } from '../ratedBase.ts';
import type { ScenarioInput } from '../scenarioInput.ts';

/** Number of poles that a text states, or that follows from the speed on its nameplate; null where neither stands. */
export function poleCount({ machine, supply }: ScenarioInput): number | null {
  if (machine.poles !== undefined) return machine.poles;
  const speed = machine.nameplate?.speed;
  return speed === undefined ? null : polesFromSpeed(speed, machine.nameplate?.frequency ?? supply.frequency);
}
