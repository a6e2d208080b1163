import { cosine, sine } from '../numeric/sineCosine.ts';
import type { WritableNumbers } from '../numeric/writableNumbers.ts';
import type { Circuit } from './circuit.ts';
import type { ElectricalModel, FluxVector, Observation } from './electricalModel.ts';
import { FLOW, FLOW_COUNT } from './flows.ts';
import { copyFlows, observeRotor, squaredCageCurrents } from './observeRotor.ts';
import { rotate } from './rotate.ts';
import type { Connection } from './supplyVector.ts';

/**
 * Two terminals connected, terminal k open: i_k = 0. With α on the axis of phase k the stator current has one
 * degree of freedom, along β:
 *
 *     isα = 0, hence ψsα = ψmα = Σ grj·ψrjα / gOpen        (algebraic, no state)
 *     dψsβ/dt = usβ − R·isβ,  usβ = (u_l − u_m)/√3,  l = k+1, m = k+2
 *
 * and the rotor as always, in stationary axes. States: [ψsβ, ψr1α, ψr1β, …].
 */
export function twoPoles(
  circuit: Circuit,
  supply: { readonly lineVoltage: number; readonly frequency: number; readonly angle: number },
  connection: Connection,
): ElectricalModel {
  const { R, gs, gr, gAll, gOpen, Rr, cageCount, polePairs } = circuit;
  const open = connection.indexOf(-1);
  const axis = (open * 2 * Math.PI) / 3;
  const axisCos = cosine(axis);
  const axisSin = sine(axis);
  const omega = 2 * Math.PI * supply.frequency;
  const crest = supply.lineVoltage * Math.sqrt(2 / 3);
  const angleOf = (terminal: number) => supply.angle - (connection[terminal % 3]! * 2 * Math.PI) / 3;
  // (u_l − u_m)/√3 as one phasor
  const uRe = (crest * (cosine(angleOf(open + 1)) - cosine(angleOf(open + 2)))) / Math.sqrt(3);
  const uIm = (crest * (sine(angleOf(open + 1)) - sine(angleOf(open + 2)))) / Math.sqrt(3);
  const size = 1 + 2 * cageCount;
  const scratch = new Float64Array(size);

  const voltage = (t: number) => uRe * cosine(omega * t) - uIm * sine(omega * t);
  function mainAlpha(y: ArrayLike<number>): number {
    let sum = 0;
    for (let j = 0; j < cageCount; j++) sum += gr[j]! * y[1 + 2 * j]!;
    return sum / gOpen;
  }
  function mainBeta(y: ArrayLike<number>): number {
    let sum = gs * y[0]!;
    for (let j = 0; j < cageCount; j++) sum += gr[j]! * y[2 + 2 * j]!;
    return sum / gAll;
  }

  function derivatives(t: number, y: ArrayLike<number>, omegaM: number, dydt: WritableNumbers): number {
    const mainA = mainAlpha(y);
    const mainB = mainBeta(y);
    const iB = gs * (y[0]! - mainB);
    const omegaR = polePairs * omegaM;
    dydt[0] = voltage(t) - R * iB;
    for (let j = 0; j < cageCount; j++) {
      const a = 1 + 2 * j;
      const rate = Rr[j]! * gr[j]!;
      dydt[a] = -rate * (y[a]! - mainA) - omegaR * y[a + 1]!;
      dydt[a + 1] = -rate * (y[a + 1]! - mainB) + omegaR * y[a]!;
    }
    return 1.5 * polePairs * mainA * iB;
  }

  const flows = new Float64Array(FLOW_COUNT);
  const current = (y: ArrayLike<number>) => gs * (y[0]! - mainBeta(y));

  function observeFlows(
    t: number,
    y: ArrayLike<number>,
    _omegaM: number,
    _thetaM: number,
    out: Float64Array,
  ): void {
    const mainA = mainAlpha(y);
    const mainB = mainBeta(y);
    const iB = gs * (y[0]! - mainB);
    out[FLOW.iAlpha] = -axisSin * iB;
    out[FLOW.iBeta] = axisCos * iB;
    out[FLOW.sourcePower] = 1.5 * voltage(t) * iB;
    out[FLOW.torque] = 1.5 * polePairs * mainA * iB;
    out[FLOW.uSquared] = Number.NaN;
    squaredCageCurrents(circuit, y, 1, mainA, mainB, out);
  }

  function observe(t: number, y: ArrayLike<number>, omegaM: number, thetaM: number, out: Observation): void {
    observeFlows(t, y, omegaM, thetaM, flows);
    copyFlows(flows, out);
    const mainA = mainAlpha(y);
    const mainB = mainBeta(y);
    const iB = current(y);
    const v = voltage(t);
    out.vAlpha = -axisSin * v;
    out.vBeta = axisCos * v;
    const rotorEnergy = observeRotor(circuit, y, 1, mainA, mainB, axisCos, axisSin, out);
    out.magneticEnergy = 0.75 * (y[0]! * iB + rotorEnergy);
    const psiB = y[0]! - circuit.seriesL * iB;
    out.psiAlpha = axisCos * mainA - axisSin * psiB;
    out.psiBeta = axisSin * mainA + axisCos * psiB;
    // The open terminal shows the voltage induced along its axis; the other two the supply less the drop ahead of them.
    derivatives(t, y, omegaM, scratch);
    const uA = mainAlpha(scratch);
    const diB = gs * (scratch[0]! - mainBeta(scratch));
    const uB = v - circuit.seriesR * iB - circuit.seriesL * diB;
    out.uAlpha = axisCos * uA - axisSin * uB;
    out.uBeta = axisSin * uA + axisCos * uB;
  }

  function terminalCurrent(_t: number, y: ArrayLike<number>, terminal: number): number {
    if (terminal === open) return 0;
    // i_l = (√3/2)·isβ, i_m = −i_l
    const iL = (Math.sqrt(3) / 2) * current(y);
    return terminal === (open + 1) % 3 ? iL : -iL;
  }

  return {
    size,
    frame: "stationary, on the open phase's axis",
    derivatives,
    observe,
    observeFlows,
    terminalCurrent,
    fromStationary: (_t, flux) => rotate(flux, -axis).slice(1),
    toStationary: (_t, y): FluxVector =>
      rotate([mainAlpha(y), ...Array.from({ length: size }, (_, i) => y[i]!)], axis),
  };
}
