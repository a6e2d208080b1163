import type { WritableNumbers } from '../numeric/writableNumbers.ts';

/**
 * The electrical equations of one conducting set in one reference frame. The states are flux linkages, Wb; which
 * ones are free depends on the conducting set. The integrator sees arrays of numbers and nothing else.
 */
export interface ElectricalModel {
  /** Number of electrical states. */
  readonly size: number;
  /** The axes the states are written in, in words. */
  readonly frame: string;
  /**
   * Writes the derivatives of the electrical states into `dydt[0 … size−1]`.
   * @param t s
   * @param y electrical states first; longer arrays are allowed
   * @param omegaM mechanical speed, rad/s
   * @returns air-gap torque, N·m
   */
  derivatives(t: number, y: ArrayLike<number>, omegaM: number, dydt: WritableNumbers): number;
  /**
   * Fills `out` with everything electrical at one instant, in stationary axes.
   * @param thetaM shaft angle turned since the segment began, rad
   */
  observe(t: number, y: ArrayLike<number>, omegaM: number, thetaM: number, out: Observation): void;
  /** The part of `observe` that energies and extremes are made of, laid out as `FLOW` says. */
  observeFlows(t: number, y: ArrayLike<number>, omegaM: number, thetaM: number, out: Float64Array): void;
  /** Picks the free states out of the fluxes in stationary axes (layout of `FluxVector`). */
  fromStationary(t: number, flux: FluxVector): number[];
  /** Stator and rotor fluxes in stationary axes. */
  toStationary(t: number, y: ArrayLike<number>, thetaM: number): FluxVector;
  /** Current of terminal 0, 1, 2 (A, B, C), A. */
  terminalCurrent(t: number, y: ArrayLike<number>, terminal: number): number;
}

/**
 * [ψsα, ψsβ, ψr1α, ψr1β, (ψr2α, ψr2β), (ψfeα, ψfeβ)] in stationary axes, Wb; ψs includes the inductance ahead of the machine;
 * the core's pair is last and there only when the machine has a core.
 */
export type FluxVector = readonly number[];

/** Electrical quantities at one instant; space vectors amplitude invariant in stationary axes, α on phase A. */
export interface Observation {
  /** Stator current, A. */
  iAlpha: number;
  iBeta: number;
  /** Ideal source ahead of all series impedance, V. Only its component along the current's freedom does work. */
  vAlpha: number;
  vBeta: number;
  /** Motor terminals, V. */
  uAlpha: number;
  uBeta: number;
  /** Stator flux linkage of the machine alone, Wb. */
  psiAlpha: number;
  psiBeta: number;
  /** Rotor flux linkage, mean of the cages weighted by 1/leakage, Wb. */
  psiRAlpha: number;
  psiRBeta: number;
  /** Air-gap torque, N·m. */
  torque: number;
  /** Squared magnitude of each cage's current vector, A². */
  irSquared1: number;
  irSquared2: number;
  /** Squared magnitude of the core's current vector, A²; 0 without a core. */
  coreSquared: number;
  /** Energy in all inductances including the source's and the cable's, J. */
  magneticEnergy: number;
}

/** A zeroed observation to be filled. */
export function newObservation(): Observation {
  return {
    iAlpha: 0,
    iBeta: 0,
    vAlpha: 0,
    vBeta: 0,
    uAlpha: 0,
    uBeta: 0,
    psiAlpha: 0,
    psiBeta: 0,
    psiRAlpha: 0,
    psiRBeta: 0,
    torque: 0,
    irSquared1: 0,
    irSquared2: 0,
    coreSquared: 0,
    magneticEnergy: 0,
  };
}
