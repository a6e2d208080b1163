import { cosine, sine } from '../numeric/sineCosine.ts';
import type { WritableNumbers } from '../numeric/writableNumbers.ts';
import type { Circuit } from './circuit.ts';
import {
  type ElectricalModel,
  type FluxVector,
  newObservation,
  type Observation,
} from './electricalModel.ts';
import { FLOW } from './flows.ts';
import { magneticsOf, type StatorPart } from './magnetics.ts';
import { rotate } from './rotate.ts';
import type { Topology } from './topology.ts';

/** Flux components that are no states because their current is zero: they are those of the main flux. */
const ALGEBRAIC: Readonly<Record<StatorPart, number>> = { both: 0, beta: 1, open: 2 };

/**
 * The machine with saturable branches and iron loss, in every conducting set. In axes turning at ω_k:
 *
 *     dψs/dt  = u − R·is − jω_k·ψs                  as far as the stator carries current
 *     dψrj/dt =   − Rrj·irj − j(ω_k − ω_r)·ψrj
 *     dψfe/dt =   − Rfe·ife − jω_k·ψfe              the core: a short-circuited winding that does not turn
 *
 * with the currents from the magnetic circuit, and Te = (3/2)·p·[Im(ψm*·is) + Im(ψm*·ife)]: what stands still, stator and
 * core, is pulled one way, the rotor the other. Written for any circuit; the plain models do the same for linear ones
 * without a core in fewer operations.
 */
export function generalModel(circuit: Circuit, topology: Topology): ElectricalModel {
  const { R, Rr, gr, cageCount, core, polePairs, seriesR, seriesL } = circuit;
  const magnetics = magneticsOf(circuit, topology.stator);
  const { psi, current, main } = magnetics;
  const size = psi.length - ALGEBRAIC[topology.stator];
  const offset = ALGEBRAIC[topology.stator];
  /** Index of the core's pair. */
  const coreAt = 2 + 2 * cageCount;
  const source = new Float64Array(2);
  const psiRate = new Float64Array(psi.length);
  const mainRate = new Float64Array(2);
  const currentRate = new Float64Array(psi.length);

  /** Solves the magnetic circuit for the states and writes the flux derivatives to `psiRate`. @returns torque, N·m */
  function evaluate(t: number, y: ArrayLike<number>, omegaM: number): number {
    for (let n = offset; n < psi.length; n++) psi[n] = y[n - offset]!;
    magnetics.solve();
    const omegaK = topology.speed(omegaM);
    topology.voltage(t, source);
    psiRate[0] = source[0]! - R * current[0]! + omegaK * psi[1]!;
    psiRate[1] = source[1]! - R * current[1]! - omegaK * psi[0]!;
    const slipOmega = omegaK - polePairs * omegaM;
    for (let j = 0; j < cageCount; j++) {
      const d = 2 + 2 * j;
      psiRate[d] = -Rr[j]! * current[d]! + slipOmega * psi[d + 1]!;
      psiRate[d + 1] = -Rr[j]! * current[d + 1]! - slipOmega * psi[d]!;
    }
    let atRestD = current[0]!;
    let atRestQ = current[1]!;
    if (core !== null) {
      psiRate[coreAt] = -core.R * current[coreAt]! + omegaK * psi[coreAt + 1]!;
      psiRate[coreAt + 1] = -core.R * current[coreAt + 1]! - omegaK * psi[coreAt]!;
      atRestD += current[coreAt]!;
      atRestQ += current[coreAt + 1]!;
    }
    return 1.5 * polePairs * (main[0]! * atRestQ - main[1]! * atRestD);
  }

  function derivatives(t: number, y: ArrayLike<number>, omegaM: number, dydt: WritableNumbers): number {
    const torque = evaluate(t, y, omegaM);
    for (let n = 0; n < size; n++) dydt[n] = psiRate[n + offset]!;
    return torque;
  }

  const squared = (at: number) => current[at]! * current[at]! + current[at + 1]! * current[at + 1]!;

  function observe(t: number, y: ArrayLike<number>, omegaM: number, thetaM: number, out: Observation): void {
    out.torque = evaluate(t, y, omegaM);
    magnetics.differentiate(psiRate, mainRate, currentRate);
    const angle = topology.angle(t, thetaM);
    const c = cosine(angle);
    const s = sine(angle);
    const omegaK = topology.speed(omegaM);
    const iD = current[0]!;
    const iQ = current[1]!;
    // Where the stator carries no current its flux is the main flux and its terminals show that flux's change.
    const uMainD = mainRate[0]! - omegaK * main[1]!;
    const uMainQ = mainRate[1]! + omegaK * main[0]!;
    const uD = offset > 0 ? uMainD : source[0]! - seriesR * iD - seriesL * (currentRate[0]! - omegaK * iQ);
    const uQ = offset > 1 ? uMainQ : source[1]! - seriesR * iQ - seriesL * (currentRate[1]! + omegaK * iD);
    const psiD = offset > 0 ? main[0]! : psi[0]! - seriesL * iD;
    const psiQ = offset > 1 ? main[1]! : psi[1]! - seriesL * iQ;
    let rotorD = 0;
    let rotorQ = 0;
    let weight = 0;
    for (let j = 0; j < cageCount; j++) {
      rotorD += gr[j]! * psi[2 + 2 * j]!;
      rotorQ += gr[j]! * psi[3 + 2 * j]!;
      weight += gr[j]!;
    }
    out.iAlpha = iD * c - iQ * s;
    out.iBeta = iD * s + iQ * c;
    out.vAlpha = source[0]! * c - source[1]! * s;
    out.vBeta = source[0]! * s + source[1]! * c;
    out.uAlpha = uD * c - uQ * s;
    out.uBeta = uD * s + uQ * c;
    out.psiAlpha = psiD * c - psiQ * s;
    out.psiBeta = psiD * s + psiQ * c;
    out.psiRAlpha = (rotorD * c - rotorQ * s) / weight;
    out.psiRBeta = (rotorD * s + rotorQ * c) / weight;
    out.irSquared1 = squared(2);
    out.irSquared2 = cageCount > 1 ? squared(4) : 0;
    out.coreSquared = core === null ? 0 : squared(coreAt);
    out.magneticEnergy = magnetics.energy();
  }

  function solveAt(y: ArrayLike<number>): void {
    for (let n = offset; n < psi.length; n++) psi[n] = y[n - offset]!;
    magnetics.solve();
  }

  function terminalCurrent(t: number, y: ArrayLike<number>, terminal: number): number {
    if (topology.stator === 'open') return 0;
    solveAt(y);
    const angle = topology.angle(t, 0) - (terminal * 2 * Math.PI) / 3;
    return current[0]! * cosine(angle) - current[1]! * sine(angle);
  }

  function toStationary(t: number, y: ArrayLike<number>, thetaM: number): FluxVector {
    if (offset > 0) solveAt(y);
    const algebraic = Array.from({ length: offset }, (_, n) => main[n]!);
    const free = Array.from({ length: size }, (_, n) => y[n]!);
    return rotate([...algebraic, ...free], topology.angle(t, thetaM));
  }

  return {
    size,
    frame: topology.frame,
    derivatives,
    observe,
    observeFlows: flowsOf(observe),
    terminalCurrent,
    fromStationary: (t, flux) => rotate(flux, -topology.angle(t, 0)).slice(offset),
    toStationary,
  };
}

/** Flows by way of the whole observation: here the currents' equation takes the time, not the writing. */
function flowsOf(observe: ElectricalModel['observe']): ElectricalModel['observeFlows'] {
  const at = newObservation();
  return (t, y, omegaM, thetaM, out) => {
    observe(t, y, omegaM, thetaM, at);
    out[FLOW.iAlpha] = at.iAlpha;
    out[FLOW.iBeta] = at.iBeta;
    out[FLOW.sourcePower] = 1.5 * (at.vAlpha * at.iAlpha + at.vBeta * at.iBeta);
    out[FLOW.torque] = at.torque;
    out[FLOW.irSquared1] = at.irSquared1;
    out[FLOW.irSquared2] = at.irSquared2;
    out[FLOW.coreSquared] = at.coreSquared;
    out[FLOW.uSquared] = at.uAlpha * at.uAlpha + at.uBeta * at.uBeta;
  };
}
