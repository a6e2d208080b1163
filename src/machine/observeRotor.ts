import type { Circuit } from './circuit.ts';
import type { Observation } from './electricalModel.ts';

/**
 * Fills the rotor's part of an observation: squared cage currents and the mean rotor flux, turned to stationary axes.
 *
 * @param y states, of which the cages' flux pairs begin at index `first`, Wb
 * @param mainD main flux in the model's axes, Wb
 * @param mainQ main flux in the model's axes, Wb
 * @param c cosine of the angle from stationary axes to the model's
 * @param s sine of that angle
 * @returns Σ ψr·ir over the cages, W·s: two thirds of twice the energy they hold
 */
export function observeRotor(
  circuit: Circuit,
  y: ArrayLike<number>,
  first: number,
  mainD: number,
  mainQ: number,
  c: number,
  s: number,
  out: Observation,
): number {
  const { gr, cageCount } = circuit;
  let energy = 0;
  let rotorD = 0;
  let rotorQ = 0;
  let weight = 0;
  out.irSquared2 = 0;
  // A core makes a circuit one for the general model.
  out.coreSquared = 0;
  for (let j = 0; j < cageCount; j++) {
    const d = y[first + 2 * j]!;
    const q = y[first + 2 * j + 1]!;
    const g = gr[j]!;
    const irD = g * (d - mainD);
    const irQ = g * (q - mainQ);
    if (j === 0) out.irSquared1 = irD * irD + irQ * irQ;
    else out.irSquared2 = irD * irD + irQ * irQ;
    energy += d * irD + q * irQ;
    rotorD += g * d;
    rotorQ += g * q;
    weight += g;
  }
  out.psiRAlpha = (rotorD * c - rotorQ * s) / weight;
  out.psiRBeta = (rotorD * s + rotorQ * c) / weight;
  return energy;
}
