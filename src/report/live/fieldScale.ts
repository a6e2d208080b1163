/** Flux that takes up a whole arrow, as a multiple of that at no load: neither trapping nor switching raises it beyond. */
export const FULL_FLUX = 1.5;

/** Voltage that takes up a whole arrow, as a multiple of the supply's crest. */
export const FULL_VOLTAGE = 1.5;

/** Current that takes up a whole arrow, as a multiple of the rated crest: a plug draws about ten times that. */
export const FULL_CURRENT = 12;

/** What the length of the arrows means, in words. */
export const SCALE_WORDS = `An arrow as long as there is room: ${FULL_FLUX} times the flux at no load, ${FULL_VOLTAGE} times the supply's voltage, ${FULL_CURRENT} times the rated current; what is longer is cut and ends in a bar.`;
