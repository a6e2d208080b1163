import { cosine, sine } from '../numeric/sineCosine.ts';
import type { Circuit } from './circuit.ts';
import type { StatorPart } from './magnetics.ts';
import type { Connection, SupplyVector } from './supplyVector.ts';

/** A conducting set and the axes its equations are written in. */
export interface Topology {
  readonly stator: StatorPart;
  /** The axes in words. */
  readonly frame: string;
  /** Angle from stationary axes to the model's, rad; `thetaM` is the shaft angle turned since the segment began. */
  angle(t: number, thetaM: number): number;
  /** Speed of the axes, electrical rad/s. */
  speed(omegaM: number): number;
  /** Writes the voltage of the ideal source in the model's axes, V; a component that meets no current is zero. */
  voltage(t: number, out: Float64Array): void;
}

/** All three terminals connected: synchronous axes of a pure sequence, where the supply vector stands still, else stationary ones. */
export function connectedStator(supply: SupplyVector, frame: 'auto' | 'stationary'): Topology {
  const sequence = frame === 'stationary' ? 0 : supply.sequence;
  const omegaK = sequence * supply.omega;
  const [pRe, pIm] = supply.positive;
  const [nRe, nIm] = supply.negative;
  return {
    stator: 'both',
    frame: sequence === 0 ? 'stationary' : `synchronous, ${sequence === 1 ? 'forward' : 'reverse'} sequence`,
    angle: (t) => omegaK * t,
    speed: () => omegaK,
    voltage: (t, out) => {
      if (sequence !== 0) {
        out[0] = sequence === 1 ? pRe : nRe;
        out[1] = sequence === 1 ? pIm : nIm;
        return;
      }
      const c = cosine(supply.omega * t);
      const s = sine(supply.omega * t);
      out[0] = (pRe + nRe) * c - (pIm - nIm) * s;
      out[1] = (pIm + nIm) * c + (pRe - nRe) * s;
    },
  };
}

/**
 * Terminal k open: stationary axes with α on phase k's axis, so that the current is along β alone; the voltage there is
 * (u_l − u_m)/√3, l = k+1, m = k+2.
 */
export function openTerminal(
  supply: { readonly lineVoltage: number; readonly frequency: number; readonly angle: number },
  connection: Connection,
): Topology {
  const open = connection.indexOf(-1);
  const axis = (open * 2 * Math.PI) / 3;
  const omega = 2 * Math.PI * supply.frequency;
  const crest = supply.lineVoltage * Math.sqrt(2 / 3);
  const angleOf = (terminal: number) => supply.angle - (connection[terminal % 3]! * 2 * Math.PI) / 3;
  const uRe = (crest * (cosine(angleOf(open + 1)) - cosine(angleOf(open + 2)))) / Math.sqrt(3);
  const uIm = (crest * (sine(angleOf(open + 1)) - sine(angleOf(open + 2)))) / Math.sqrt(3);
  return {
    stator: 'beta',
    frame: "stationary, on the open phase's axis",
    angle: () => axis,
    speed: () => 0,
    voltage: (t, out) => {
      out[0] = 0;
      out[1] = uRe * cosine(omega * t) - uIm * sine(omega * t);
    },
  };
}

/** No terminal connected: axes fixed to the rotor, where its flux only decays. */
export function openStator(circuit: Pick<Circuit, 'polePairs'>): Topology {
  return {
    stator: 'open',
    frame: 'fixed to the rotor',
    angle: (_t, thetaM) => circuit.polePairs * thetaM,
    speed: (omegaM) => circuit.polePairs * omegaM,
    voltage: (_t, out) => {
      out[0] = 0;
      out[1] = 0;
    },
  };
}
