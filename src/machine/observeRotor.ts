import type { Circuit } from './circuit.ts';
import type { Observation } from './electricalModel.ts';
import { FLOW } from './flows.ts';

/**
 * Fills the rotor's part of an observation, the mean rotor flux turned to stationary axes.
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
  for (let j = 0; j < cageCount; j++) {
    const d = y[first + 2 * j]!;
    const q = y[first + 2 * j + 1]!;
    const g = gr[j]!;
    const irD = g * (d - mainD);
    const irQ = g * (q - mainQ);
    energy += d * irD + q * irQ;
    rotorD += g * d;
    rotorQ += g * q;
    weight += g;
  }
  out.psiRAlpha = (rotorD * c - rotorQ * s) / weight;
  out.psiRBeta = (rotorD * s + rotorQ * c) / weight;
  return energy;
}

/**
 * Fills the squared currents of cages and core into an instant's flows.
 *
 * @param y states, of which the cages' flux pairs begin at index `first`, Wb
 * @param mainD main flux in the model's axes, Wb
 * @param mainQ main flux in the model's axes, Wb
 */
export function squaredCageCurrents(
  { gr, cageCount }: Circuit,
  y: ArrayLike<number>,
  first: number,
  mainD: number,
  mainQ: number,
  out: Float64Array,
): void {
  const g1 = gr[0]!;
  const d1 = g1 * (y[first]! - mainD);
  const q1 = g1 * (y[first + 1]! - mainQ);
  out[FLOW.irSquared1] = d1 * d1 + q1 * q1;
  // A core makes a circuit one for the general model.
  out[FLOW.coreSquared] = 0;
  if (cageCount === 1) {
    out[FLOW.irSquared2] = 0;
    return;
  }
  const g2 = gr[1]!;
  const d2 = g2 * (y[first + 2]! - mainD);
  const q2 = g2 * (y[first + 3]! - mainQ);
  out[FLOW.irSquared2] = d2 * d2 + q2 * q2;
}

/** Writes an instant's flows into an observation, as far as they stand in it. */
export function copyFlows(flows: Float64Array, out: Observation): void {
  out.iAlpha = flows[FLOW.iAlpha]!;
  out.iBeta = flows[FLOW.iBeta]!;
  out.torque = flows[FLOW.torque]!;
  out.irSquared1 = flows[FLOW.irSquared1]!;
  out.irSquared2 = flows[FLOW.irSquared2]!;
  out.coreSquared = flows[FLOW.coreSquared]!;
}
