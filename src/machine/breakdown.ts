import { exponential } from '../numeric/exponential.ts';
import { largestBetween } from '../numeric/largestBetween.ts';
import { logarithm } from '../numeric/logarithm.ts';
import type { MachineData, Supply } from '../scenario/scenario.ts';
import { circuitOf } from './circuit.ts';
import { type Inserted, NOTHING_INSERTED } from './inserted.ts';
import { type SteadySupply, steadyStateOf } from './steadyState.ts';

/** Slips scanned for the maximum; a double cage may have two maxima. Covers pull-out slips from 0.1 % to beyond standstill. */
const SCAN = { lowest: 1e-3, highest: 4, points: 60 } as const;
/** Relative width at which the search stops: below it torque differences are rounding. */
const GOLDEN_END = 1e-9;

/** Largest steady-state motoring torque and its slip (0 < slip), for any number of cages. */
export function breakdown(
  machine: MachineData,
  supply: SteadySupply,
  inserted: Inserted = NOTHING_INSERTED,
): { torque: number; slip: number } {
  const circuit = circuitOf(machine, supply, inserted);
  const torque = (logSlip: number) => steadyStateOf(circuit, supply, exponential(logSlip)).torque;
  const low = logarithm(SCAN.lowest);
  const step = (logarithm(SCAN.highest) - low) / SCAN.points;
  let best = low;
  let highest = Number.NEGATIVE_INFINITY;
  for (let i = 0; i <= SCAN.points; i++) {
    const value = torque(low + i * step);
    if (value > highest) {
      highest = value;
      best = low + i * step;
    }
  }
  const slip = exponential(largestBetween(torque, best - step, best + step, GOLDEN_END).x);
  return { torque: steadyStateOf(circuit, supply, slip).torque, slip };
}

/** Supply without source impedance and cable: what the maker's curves refer to. */
export function stiff(supply: Supply): Supply {
  const { cable: _, ...source } = supply;
  return { ...source, sourceResistance: 0, sourceInductance: 0 };
}
