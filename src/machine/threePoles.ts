import { cosine, sine, sineAndCosine } from '../numeric/sineCosine.ts';
import type { WritableNumbers } from '../numeric/writableNumbers.ts';
import type { Circuit } from './circuit.ts';
import type { ElectricalModel, FluxVector, Observation } from './electricalModel.ts';
import { FLOW, FLOW_COUNT } from './flows.ts';
import { copyFlows, observeRotor, squaredCageCurrents } from './observeRotor.ts';
import { rotate } from './rotate.ts';
import type { SupplyVector } from './supplyVector.ts';

/**
 * All three terminals connected. In axes turning at ω_k:
 *
 *     dψs/dt  = u − R·is − jω_k·ψs
 *     dψrj/dt =   − Rrj·irj − j(ω_k − ω_r)·ψrj
 *
 * with ψm = (gs·ψs + Σ grj·ψrj)/gAll, is = gs·(ψs − ψm), irj = grj·(ψrj − ψm), Te = (3/2)·p·Im(ψs*·is).
 *
 * In the synchronous axes of the applied sequence the supply vector is constant and the solution flattens out to a
 * constant, so that a step may span whole cycles. A connection of mixed sequence uses stationary axes.
 * Source: the arbitrary-frame model of the textbooks (Krause, Analysis of Electric Machinery), complex form.
 */
export function threePoles(
  circuit: Circuit,
  supply: SupplyVector,
  frame: 'auto' | 'stationary' = 'auto',
): ElectricalModel {
  const { R, gs, gr, gAll, Rr, cageCount, polePairs } = circuit;
  const sequence = frame === 'stationary' ? 0 : supply.sequence;
  const omegaK = sequence * supply.omega;
  const size = 2 + 2 * cageCount;
  const [pRe, pIm] = supply.positive;
  const [nRe, nIm] = supply.negative;
  const scratch = new Float64Array(size);

  /** Supply vector in the model's own axes. */
  let uRe = sequence === 1 ? pRe : nRe;
  let uIm = sequence === 1 ? pIm : nIm;
  function setVoltage(t: number): void {
    if (sequence !== 0) return;
    const c = cosine(supply.omega * t);
    const s = sine(supply.omega * t);
    uRe = (pRe + nRe) * c - (pIm - nIm) * s;
    uIm = (pIm + nIm) * c + (pRe - nRe) * s;
  }

  const gs0 = gs / gAll;
  const gr1 = gr[0]! / gAll;
  const gr2 = cageCount > 1 ? gr[1]! / gAll : 0;
  function mainFlux(y: ArrayLike<number>, axis: 0 | 1): number {
    const first = gs0 * y[axis]! + gr1 * y[2 + axis]!;
    return cageCount > 1 ? first + gr2 * y[4 + axis]! : first;
  }

  function manyCages(t: number, y: ArrayLike<number>, omegaM: number, dydt: WritableNumbers): number {
    setVoltage(t);
    const psiD = y[0]!;
    const psiQ = y[1]!;
    const mainD = mainFlux(y, 0);
    const mainQ = mainFlux(y, 1);
    const iD = gs * (psiD - mainD);
    const iQ = gs * (psiQ - mainQ);
    dydt[0] = uRe - R * iD + omegaK * psiQ;
    dydt[1] = uIm - R * iQ - omegaK * psiD;
    const slipOmega = omegaK - polePairs * omegaM;
    for (let j = 0; j < cageCount; j++) {
      const d = 2 + 2 * j;
      const rate = Rr[j]! * gr[j]!;
      dydt[d] = -rate * (y[d]! - mainD) + slipOmega * y[d + 1]!;
      dydt[d + 1] = -rate * (y[d + 1]! - mainQ) - slipOmega * y[d]!;
    }
    return 1.5 * polePairs * (psiD * iQ - psiQ * iD);
  }

  // One cage, the same with the main flux put in: the constants of each flux, and of the torque.
  const statorRate = R * gs * (1 - gs0);
  const fromRotor = R * gs * gr1;
  const rotorRate = Rr[0]! * gr[0]! * (1 - gr1);
  const fromStator = Rr[0]! * gr[0]! * gs0;
  const torqueFactor = 1.5 * polePairs * gs * gr1;
  function oneCage(t: number, y: ArrayLike<number>, omegaM: number, dydt: WritableNumbers): number {
    setVoltage(t);
    const psiD = y[0]!;
    const psiQ = y[1]!;
    const rotorD = y[2]!;
    const rotorQ = y[3]!;
    const slipOmega = omegaK - polePairs * omegaM;
    dydt[0] = uRe - statorRate * psiD + fromRotor * rotorD + omegaK * psiQ;
    dydt[1] = uIm - statorRate * psiQ + fromRotor * rotorQ - omegaK * psiD;
    dydt[2] = fromStator * psiD - rotorRate * rotorD + slipOmega * rotorQ;
    dydt[3] = fromStator * psiQ - rotorRate * rotorQ - slipOmega * rotorD;
    return torqueFactor * (psiQ * rotorD - psiD * rotorQ);
  }
  const derivatives = cageCount === 1 ? oneCage : manyCages;

  /** Sine and cosine of the axes' angle at the instant looked at last. */
  const turn = new Float64Array(2);
  const flows = new Float64Array(FLOW_COUNT);
  const isStiff = circuit.seriesR === 0 && circuit.seriesL === 0;
  /** Terminal voltage in the model's axes, of the instant looked at last, V. */
  let terminalD = 0;
  let terminalQ = 0;

  function observeFlows(
    t: number,
    y: ArrayLike<number>,
    omegaM: number,
    _thetaM: number,
    out: Float64Array,
  ): void {
    setVoltage(t);
    sineAndCosine(omegaK * t, turn);
    const s = turn[0]!;
    const c = turn[1]!;
    const psiD = y[0]!;
    const psiQ = y[1]!;
    const mainD = mainFlux(y, 0);
    const mainQ = mainFlux(y, 1);
    const iD = gs * (psiD - mainD);
    const iQ = gs * (psiQ - mainQ);
    out[FLOW.iAlpha] = iD * c - iQ * s;
    out[FLOW.iBeta] = iD * s + iQ * c;
    out[FLOW.sourcePower] = 1.5 * (uRe * iD + uIm * iQ);
    out[FLOW.torque] = 1.5 * polePairs * (psiD * iQ - psiQ * iD);
    squaredCageCurrents(circuit, y, 2, mainD, mainQ, out);
    terminalD = uRe;
    terminalQ = uIm;
    if (!isStiff) {
      // Terminal voltage behind source, cable and line resistors: u = v − Rseries·i − Lseries·di/dt, with di/dt in stationary axes.
      derivatives(t, y, omegaM, scratch);
      const diD = gs * (scratch[0]! - mainFlux(scratch, 0)) - omegaK * iQ;
      const diQ = gs * (scratch[1]! - mainFlux(scratch, 1)) + omegaK * iD;
      terminalD -= circuit.seriesR * iD + circuit.seriesL * diD;
      terminalQ -= circuit.seriesR * iQ + circuit.seriesL * diQ;
    }
    out[FLOW.uSquared] = terminalD * terminalD + terminalQ * terminalQ;
  }

  function observe(t: number, y: ArrayLike<number>, omegaM: number, thetaM: number, out: Observation): void {
    observeFlows(t, y, omegaM, thetaM, flows);
    copyFlows(flows, out);
    const s = turn[0]!;
    const c = turn[1]!;
    out.vAlpha = uRe * c - uIm * s;
    out.vBeta = uRe * s + uIm * c;
    out.uAlpha = terminalD * c - terminalQ * s;
    out.uBeta = terminalD * s + terminalQ * c;
    const mainD = mainFlux(y, 0);
    const mainQ = mainFlux(y, 1);
    const iD = gs * (y[0]! - mainD);
    const iQ = gs * (y[1]! - mainQ);
    const rotorEnergy = observeRotor(circuit, y, 2, mainD, mainQ, c, s, out);
    out.magneticEnergy = 0.75 * (y[0]! * iD + y[1]! * iQ + rotorEnergy);
    const psiD = y[0]! - circuit.seriesL * iD;
    const psiQ = y[1]! - circuit.seriesL * iQ;
    out.psiAlpha = psiD * c - psiQ * s;
    out.psiBeta = psiD * s + psiQ * c;
  }

  function terminalCurrent(t: number, y: ArrayLike<number>, terminal: number): number {
    const angle = omegaK * t - (terminal * 2 * Math.PI) / 3;
    const iD = gs * (y[0]! - mainFlux(y, 0));
    const iQ = gs * (y[1]! - mainFlux(y, 1));
    return iD * cosine(angle) - iQ * sine(angle);
  }

  return {
    size,
    frame: sequence === 0 ? 'stationary' : `synchronous, ${sequence === 1 ? 'forward' : 'reverse'} sequence`,
    derivatives,
    observe,
    observeFlows,
    terminalCurrent,
    fromStationary: (t, flux) => rotate(flux, -omegaK * t),
    toStationary: (t, y): FluxVector =>
      rotate(
        Array.from({ length: size }, (_, i) => y[i]!),
        omegaK * t,
      ),
  };
}
