import { cosine, sine } from '../numeric/sineCosine.ts';
import type { WritableNumbers } from '../numeric/writableNumbers.ts';
import type { Circuit } from './circuit.ts';
import type { ElectricalModel, FluxVector, Observation } from './electricalModel.ts';
import { FLOW, FLOW_COUNT } from './flows.ts';
import { copyFlows, observeRotor, squaredCageCurrents } from './observeRotor.ts';
import { rotate } from './rotate.ts';

/**
 * No current in the stator. The rotor flux decays and turns with the rotor; in axes fixed to the rotor (turned by
 * p·θm since the segment began) only the decay is left:
 *
 *     dψrj/dt = −Rrj·irj,  irj = grj·(ψrj − ψm),  ψm = Σ grj·ψrj / gOpen,  Te = 0
 *
 * One cage: ψr(t) = ψr(0)·e^{−t·Rr/(Llr+Lm)} exactly. The terminals show dψm/dt, the residual voltage.
 */
export function noPoles(circuit: Circuit): ElectricalModel {
  const { gr, gOpen, Rr, cageCount, polePairs } = circuit;
  const size = 2 * cageCount;
  const scratch = new Float64Array(size);

  function mainFlux(y: ArrayLike<number>, axis: 0 | 1): number {
    let sum = 0;
    for (let j = 0; j < cageCount; j++) sum += gr[j]! * y[2 * j + axis]!;
    return sum / gOpen;
  }

  function derivatives(_t: number, y: ArrayLike<number>, _omegaM: number, dydt: WritableNumbers): number {
    const mainD = mainFlux(y, 0);
    const mainQ = mainFlux(y, 1);
    for (let j = 0; j < cageCount; j++) {
      const rate = Rr[j]! * gr[j]!;
      dydt[2 * j] = -rate * (y[2 * j]! - mainD);
      dydt[2 * j + 1] = -rate * (y[2 * j + 1]! - mainQ);
    }
    return 0;
  }

  const flows = new Float64Array(FLOW_COUNT);

  function observeFlows(
    _t: number,
    y: ArrayLike<number>,
    _omegaM: number,
    _thetaM: number,
    out: Float64Array,
  ): void {
    out[FLOW.iAlpha] = 0;
    out[FLOW.iBeta] = 0;
    out[FLOW.sourcePower] = 0;
    out[FLOW.torque] = 0;
    out[FLOW.uSquared] = Number.NaN;
    squaredCageCurrents(circuit, y, 0, mainFlux(y, 0), mainFlux(y, 1), out);
  }

  function observe(t: number, y: ArrayLike<number>, omegaM: number, thetaM: number, out: Observation): void {
    observeFlows(t, y, omegaM, thetaM, flows);
    copyFlows(flows, out);
    out.vAlpha = 0;
    out.vBeta = 0;
    const c = cosine(polePairs * thetaM);
    const s = sine(polePairs * thetaM);
    const omegaR = polePairs * omegaM;
    const mainD = mainFlux(y, 0);
    const mainQ = mainFlux(y, 1);
    const rotorEnergy = observeRotor(circuit, y, 0, mainD, mainQ, c, s, out);
    out.magneticEnergy = 0.75 * rotorEnergy;
    out.psiAlpha = mainD * c - mainQ * s;
    out.psiBeta = mainD * s + mainQ * c;
    derivatives(t, y, omegaM, scratch);
    const uD = mainFlux(scratch, 0) - omegaR * mainQ;
    const uQ = mainFlux(scratch, 1) + omegaR * mainD;
    out.uAlpha = uD * c - uQ * s;
    out.uBeta = uD * s + uQ * c;
  }

  return {
    size,
    frame: 'fixed to the rotor',
    derivatives,
    observe,
    observeFlows,
    terminalCurrent: () => 0,
    fromStationary: (_t, flux) => flux.slice(2),
    toStationary: (_t, y, thetaM): FluxVector => {
      const flux = [mainFlux(y, 0), mainFlux(y, 1), ...Array.from({ length: size }, (_, i) => y[i]!)];
      return rotate(flux, polePairs * thetaM);
    },
  };
}
