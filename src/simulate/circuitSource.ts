import { type Circuit, circuitOf } from '../machine/circuit.ts';
import { directSeries, directSupply } from '../machine/directSource.ts';
import type { Inserted } from '../machine/inserted.ts';
import type { Scenario, Supply } from '../scenario/scenario.ts';
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

/**
 * V, of two silicon diodes in series that carry the direct current when the rectifier has lost its supply. Common practice,
 * no source; it makes the current end.
 */
const DIODE_DROP = 1.4;

/** A circuit and what feeds it. */
export interface Feed {
  readonly circuit: Circuit;
  readonly supply: Pick<Supply, 'lineVoltage' | 'frequency' | 'angle'>;
}

/**
 * The supply with everything up to the motor; while direct current flows the rectifier in its place, or its diodes.
 *
 * @param circuits of the scenario's own supply
 */
export function feedSource(
  scenario: Scenario,
  circuits: (inserted: Inserted) => Circuit,
): (inserted: Inserted, direct?: 'fed' | 'freewheeling') => Feed {
  const { machine, supply } = scenario;
  const injection = scenario.starter.injection;
  const directly = (inserted: Inserted, resistance: number) =>
    circuitOf(machine, directSeries(resistance), { ...inserted, lineResistance: 0 });
  return (inserted, direct) => {
    if (direct === undefined || injection === undefined) return { circuit: circuits(inserted), supply };
    return direct === 'fed'
      ? { circuit: directly(inserted, injection.resistance), supply: directSupply(injection.voltage) }
      : { circuit: directly(inserted, 0), supply: directSupply(-DIODE_DROP) };
  };
}
