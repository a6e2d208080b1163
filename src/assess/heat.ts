/** Heat that one part of an operation leaves in the machine, J, and how long it lasts. */
export interface HeatPulse {
  /** In the stator winding. */
  readonly winding: number;
  /** In the cage; in the inner cage where the outer one is a body of its own. */
  readonly cage: number;
  /** In the outer cage where it is a body of its own; else 0. */
  readonly outerCage: number;
  /** In core and frame: iron loss, and friction of the motor's own bearings. */
  readonly frame: number;
  /** s */
  readonly duration: number;
}

/** No heat at all. */
export const NO_HEAT: HeatPulse = { winding: 0, cage: 0, outerCage: 0, frame: 0, duration: 0 };

/** What an operation heats: a start, running under load, and a stop. */
export interface OperationHeat {
  readonly start: HeatPulse;
  /** Steady loss under load, W; `duration` is 1 s. */
  readonly running: HeatPulse;
  /** From the stopping command to rest; a full reversal: to the steady speed of the other direction. */
  readonly stop: HeatPulse;
}
