/** What holds where a scenario says nothing. Every default that was used is listed among the origins. */

/** Relative tolerance of the integration; keeps the energy ledger below 1e-6 of the throughput. */
export const defaultRelativeTolerance = 1e-8;

/** Integration steps in one run. */
export const defaultMaxSteps = 200_000;

/** s; coil energised → contacts touch, a contactor of some ten kilowatts. Common practice, no source. */
export const defaultClosingTime = 0.02;

/** s; coil de-energised → contacts part. Common practice, no source. */
export const defaultOpeningTime = 0.01;

/** s; small auxiliary relay, coil to contacts. Common practice, no source; always listed as an assumption. */
export const defaultRelayTime = 0.01;

/** s; how long a hand presses a button. Common practice, no source. */
export const defaultPress = 0.2;

/**
 * Reactance over resistance of a source of which only the short-circuit power is known: behind a distribution
 * transformer of some hundred kVA. Common practice, no source; always listed as an assumption.
 */
export const assumedXOverR = 6;

/**
 * Reactance over resistance of the network above a transformer where nothing is said of it: R = 0.1·X. Source: IEC 60909-0,
 * from memory; always listed as an assumption.
 */
export const assumedNetworkXOverR = 10;

/**
 * Reactance of a cable of which only the cross-section is known, Ω/m at 50 Hz: multicore and closely laid low-voltage cables
 * have 0.07 to 0.09 Ω/km. Common practice, no source; always listed as an assumption.
 */
export const assumedCableReactance = 0.08e-3;

/** Hz; the frequency at which `assumedCableReactance` holds. */
export const assumedCableReactanceFrequency = 50;

/** °C; a cold cable lets the highest currents through. */
export const assumedCableTemperature = 20;

/** Current at the knee of a leakage path over rated current, both crest. Common practice, no source. */
export const typicalLeakageKnee = 2;

/** What is left of a leakage inductance when its path is saturated through. Common practice, no source. */
export const typicalLeakageRemaining = 0.6;

/**
 * Magnetising curve (flux, current) in per unit of the no-load point at rated voltage, where the stated magnetising
 * reactance holds: a machine of ordinary design, its knee just below rated flux. Common practice, no source.
 */
export const typicalMagnetisingCurve: readonly (readonly [number, number])[] = [
  [0.5, 0.42],
  [0.8, 0.73],
  [1, 1],
  [1.1, 1.25],
  [1.2, 1.7],
  [1.35, 2.9],
];

/**
 * Reactance over resistance of the winding that stands for the iron: small enough that it is a resistance, large enough
 * that its time constant L/R does not make the equations stiff. The loss is exact whatever the ratio.
 */
export const coreXOverR = 0.25;

/** °C of the cooling air. Source: IEC 60034-1, for which the limits of rise hold. */
export const defaultAmbient = 40;

/** m above sea level; the limits of rise hold unchanged up to 1000 m. Source: IEC 60034-1, from memory. */
export const defaultAltitude = 0;

/** Share of dry friction in a stated loss of friction and windage; the rest is windage. Common practice, no source. */
export const assumedFrictionShare = 0.5;
