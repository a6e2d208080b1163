/** What is taken of a drive where nobody states it. */

/**
 * Drop-out speed of a zero-speed switch over synchronous speed where none is stated: 60 r/min of 1500. Common practice, no
 * source.
 */
export const DROP_OUT_SHARE = 0.04;

/** Pick-up speed over drop-out speed. Common practice, no source. */
export const PICK_UP_OVER_DROP_OUT = 2;

/** Dry friction over rated torque where nothing is known of the load torque: bearings and seals. Common practice, no source. */
export const FRICTION_SHARE = 0.05;
