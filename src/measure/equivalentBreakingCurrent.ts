/**
 * Mean arc charge of one opening at random instants over Î/ω, all poles together: isolated star point, symmetrical current of
 * crest Î, first pole to clear. 1 + √3; textbook physics (from memory), a test simulates it.
 */
export const MEAN_ARC_CHARGE = 1 + Math.sqrt(3);

/**
 * The symmetrical current whose mean arc charge over random instants of opening is the given one:
 *
 *     Q = (1 + √3)·√2·I/ω
 *
 * It makes what a real opening does to the contacts (offset, motor EMF, falling current) comparable with the currents that
 * contacts are tested at.
 *
 * @param arcCharge mean over random instants, all poles together, C
 * @param frequency Hz
 * @returns A r.m.s.
 */
export function equivalentBreakingCurrent(arcCharge: number, frequency: number): number {
  return (arcCharge * 2 * Math.PI * frequency) / (MEAN_ARC_CHARGE * Math.SQRT2);
}

/** The way back: mean arc charge of a symmetrical current (A r.m.s.), all poles together, C. */
export function meanArcCharge(current: number, frequency: number): number {
  return (MEAN_ARC_CHARGE * Math.SQRT2 * current) / (2 * Math.PI * frequency);
}
