/**
 * A saturable path: current as a rising function of its own flux linkage, both as magnitudes of space vectors (the
 * current vector has the direction of the flux vector). Everything follows from one energy function, so that the
 * energy balance closes exactly. No method allocates: they run in the innermost loop.
 */
export interface FluxBranch {
  /** di/dλ of the unsaturated path, 1/H. */
  readonly slopeAtZero: number;
  /** @param flux λ ≥ 0, Wb; @returns A */
  current(flux: number): number;
  /** di/dλ, 1/H, at a flux linkage and the current that belongs to it. */
  slope(flux: number, current: number): number;
  /** ∫ i dλ from zero, A·Wb, at a flux linkage and the current that belongs to it. */
  energy(flux: number, current: number): number;
}
