import type { Circuit } from '../machine/circuit.ts';
import type { FluxVector } from '../machine/electricalModel.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { nominalFlux } from './tolerances.ts';

/** A residual flux below this part of the nominal one is nothing: its energy is 10⁻¹² of what the run puts through. */
const GONE = 1e-6;

/** Every flux below this is nothing, Wb. */
export function goneBelow(scenario: Scenario): number {
  return GONE * nominalFlux(scenario);
}

/** True when nothing of a flux is left above a limit, Wb. */
export function isGone(flux: FluxVector, limit: number): boolean {
  return flux.every((part) => Math.abs(part) <= limit);
}

/** The winding that stands for the iron has a time constant far shorter than the rest. */
export function isStiff(circuit: Circuit): boolean {
  return circuit.core !== null;
}
