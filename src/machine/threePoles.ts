import { cosine, sine } from '../numeric/sineCosine.ts';
import type { Circuit } from './circuit.ts';
import type { ElectricalModel, FluxVector, Observation } from './electricalModel.ts';
import { observeRotor } from './observeRotor.ts';
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
  const scratch: number[] = new Array<number>(size).fill(0);

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

  function mainFlux(y: ArrayLike<number>, axis: 0 | 1): number {
    let sum = gs * y[axis]!;
    for (let j = 0; j < cageCount; j++) sum += gr[j]! * y[2 + 2 * j + axis]!;
    return sum / gAll;
  }

  function derivatives(t: number, y: ArrayLike<number>, omegaM: number, dydt: number[]): number {
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

  function observe(t: number, y: ArrayLike<number>, omegaM: number, _thetaM: number, out: Observation): void {
    setVoltage(t);
    const c = cosine(omegaK * t);
    const s = sine(omegaK * t);
    const mainD = mainFlux(y, 0);
    const mainQ = mainFlux(y, 1);
    const iD = gs * (y[0]! - mainD);
    const iQ = gs * (y[1]! - mainQ);
    out.torque = 1.5 * polePairs * (y[0]! * iQ - y[1]! * iD);
    out.iAlpha = iD * c - iQ * s;
    out.iBeta = iD * s + iQ * c;
    out.vAlpha = uRe * c - uIm * s;
    out.vBeta = uRe * s + uIm * c;
    const rotorEnergy = observeRotor(circuit, y, 2, mainD, mainQ, c, s, out);
    out.magneticEnergy = 0.75 * (y[0]! * iD + y[1]! * iQ + rotorEnergy);
    const psiD = y[0]! - circuit.seriesL * iD;
    const psiQ = y[1]! - circuit.seriesL * iQ;
    out.psiAlpha = psiD * c - psiQ * s;
    out.psiBeta = psiD * s + psiQ * c;
    out.uAlpha = out.vAlpha;
    out.uBeta = out.vBeta;
    if (circuit.seriesR === 0 && circuit.seriesL === 0) return;
    // Terminal voltage behind source, cable and line resistors: u = v − Rseries·i − Lseries·di/dt, with di/dt in stationary axes.
    derivatives(t, y, omegaM, scratch);
    const diD = gs * (scratch[0]! - mainFlux(scratch, 0)) - omegaK * iQ;
    const diQ = gs * (scratch[1]! - mainFlux(scratch, 1)) + omegaK * iD;
    out.uAlpha -= circuit.seriesR * out.iAlpha + circuit.seriesL * (diD * c - diQ * s);
    out.uBeta -= circuit.seriesR * out.iBeta + circuit.seriesL * (diD * s + diQ * c);
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
    terminalCurrent,
    fromStationary: (t, flux) => rotate(flux, -omegaK * t),
    toStationary: (t, y): FluxVector =>
      rotate(
        Array.from({ length: size }, (_, i) => y[i]!),
        omegaK * t,
      ),
  };
}
