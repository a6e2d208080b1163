/** Heat that one part of an operation leaves in the machine, all of it in J, and how long it lasts. */
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
  /** How the run stops; absent: by braking. */
  readonly stopKind?: 'coast' | 'braking' | 'reversal';
  /** How long coasting from the running speed to rest takes, s; absent: friction does not end it. */
  readonly coastTime?: number;
  /** Of a full reversal: its first part, from the command to zero speed; absent: `stop` is that. */
  readonly braking?: HeatPulse;
}

/** Two pulses one after the other. */
export function sumOfPulses(a: HeatPulse, b: HeatPulse): HeatPulse {
  return {
    winding: a.winding + b.winding,
    cage: a.cage + b.cage,
    outerCage: a.outerCage + b.outerCage,
    frame: a.frame + b.frame,
    duration: a.duration + b.duration,
  };
}

/** Heat from the stopping command to rest. */
export function brakingHeat(heat: OperationHeat): HeatPulse {
  return heat.braking ?? heat.stop;
}

/**
 * Heat of a full reversal, from one steady speed to that of the other direction. Where the run ends at rest it is the sum of
 * stop and start: the run-up does not know from which side it came to rest.
 */
export function reversalHeat(heat: OperationHeat): HeatPulse {
  return heat.stopKind === 'reversal' ? heat.stop : sumOfPulses(brakingHeat(heat), heat.start);
}

/** All of a pulse, J. */
export function totalHeat(pulse: HeatPulse): number {
  return pulse.winding + pulse.cage + pulse.outerCage + pulse.frame;
}
