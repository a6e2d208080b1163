import type { Supply } from '../scenario/scenario.ts';
import type { SeriesSupply } from './circuit.ts';
import type { Connection } from './supplyVector.ts';

/** Direct current goes in at terminal B and out at terminal C; terminal A is open. */
export const DIRECT_LEADS: Connection = [-1, 1, 2];

/**
 * A source of direct voltage between terminals B and C as the two-pole equations know a supply: one of frequency zero that
 * stands where its line-to-line voltage u_B − u_C is at its crest.
 *
 * @param voltage between the two terminals, V
 */
export function directSupply(voltage: number): Pick<Supply, 'lineVoltage' | 'frequency' | 'angle'> {
  return { lineVoltage: voltage / Math.SQRT2, frequency: 0, angle: Math.PI / 2 };
}

/**
 * The source's resistance as the circuit knows it: half of the loop's in each of the two leads.
 *
 * @param resistance of the loop outside the motor, Ω
 */
export function directSeries(resistance: number): SeriesSupply {
  return { sourceResistance: resistance / 2, sourceInductance: 0 };
}
