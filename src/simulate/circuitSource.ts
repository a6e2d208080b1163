import { type Circuit, circuitOf } from '../machine/circuit.ts';
import type { Inserted } from '../machine/inserted.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { StarterState } from '../starter/starter.ts';

/** What the starter has put into the circuit now. */
export function insertedNow(scenario: Scenario, starter: StarterState): Inserted {
  const resistors = scenario.starter.lineResistors;
  return {
    lineResistance: resistors === undefined || starter.bypass.closed ? 0 : resistors.resistance,
    rotorResistance: starter.rotorResistance,
    star: starter.winding === 'star',
  };
}

/** One string for each combination. */
export function insertedKey({ lineResistance, rotorResistance, star }: Inserted): string {
  return `${lineResistance} ${rotorResistance} ${star}`;
}

/** Circuit with what is inserted; each one is made once, so that equal states share one object. */
export function circuitSource(scenario: Scenario): (inserted: Inserted) => Circuit {
  const known = new Map<string, Circuit>();
  return (inserted) => {
    const key = insertedKey(inserted);
    const before = known.get(key);
    if (before !== undefined) return before;
    const circuit = circuitOf(scenario.machine, scenario.supply, inserted);
    known.set(key, circuit);
    return circuit;
  };
}
