import type { Circuit } from '../machine/circuit.ts';
import { connectedModel } from '../machine/connectedModel.ts';
import { type FluxVector, newObservation } from '../machine/electricalModel.ts';
import { rotate } from '../machine/rotate.ts';
import { squared } from '../numeric/raised.ts';
import type { Supply } from '../scenario/scenario.ts';
import type { Conduction } from '../starter/conduction.ts';

/**
 * Energy released when a pole interrupts a current that is not zero (ideal poles): with the rotor fluxes held, the
 * vanishing current component i leaves ½·(3/2)·L'·i², L' the transient inductance. At a current zero it is nothing. With
 * saturation or iron loss: the difference of the stored energies with and without that component.
 *
 * @param flux before the change, stationary axes
 * @returns J
 */
export function interruptionEnergy(
  circuit: Circuit,
  supply: Supply,
  flux: FluxVector,
  poles: Exclude<Conduction, { kind: 'shortCircuit' }>,
): number {
  if (poles.kind === 'three') return 0;
  if (circuit.saturation !== null || circuit.core !== null)
    return storedEnergy(circuit, supply, flux, 'three') - storedEnergy(circuit, supply, flux, poles);
  const axis = poles.kind === 'two' ? (poles.connection.indexOf(-1) * 2 * Math.PI) / 3 : 0;
  const local = rotate(flux, -axis);
  let alpha = 0;
  let beta = 0;
  for (const [j, g] of circuit.gr.entries()) {
    alpha += (g * local[2 + 2 * j]!) / circuit.gOpen;
    beta += (g * local[3 + 2 * j]!) / circuit.gOpen;
  }
  const iAlpha = (local[0]! - alpha) / circuit.Ltransient;
  const iBeta = poles.kind === 'none' ? (local[1]! - beta) / circuit.Ltransient : 0;
  return 0.75 * circuit.Ltransient * (squared(iAlpha) + squared(iBeta));
}

/** Magnetic energy of these fluxes with all terminals connected, or with the constraint of a smaller conducting set, J. */
function storedEnergy(
  circuit: Circuit,
  supply: Supply,
  flux: FluxVector,
  poles: 'three' | Exclude<Conduction, { kind: 'shortCircuit' }>,
): number {
  const set = poles === 'three' ? ({ kind: 'three', connection: [0, 1, 2] } as const) : poles;
  const model = connectedModel(circuit, supply, set, 'stationary');
  const at = newObservation();
  model.observe(0, [...model.fromStationary(0, flux), 0, 0], 0, 0, at);
  return at.magneticEnergy;
}
