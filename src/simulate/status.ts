/**
 * How a run ended. Wrong input is an exception; what happens during integration is a status.
 *
 * - finished: everything the actions asked for has happened.
 * - endTimeReached: the stated end time came first (nothing wrong: the trace is complete up to it).
 * - switchNeverOpened: a plug command still held the reversing contactor in when the run ended.
 * - notSettled: with an automatic end time, the longest run allowed was over before the last action had done its work.
 * - lineToLineShortCircuit: a pole of one contactor touched while the other contactor's pole on the same motor
 *   terminal still conducted from another supply phase. Usual cause: dead time shorter than the arcs. Nothing after
 *   that instant is simulated.
 * - overspeed: the load drove the shaft beyond `OVERSPEED` times synchronous speed. Usual cause: a gravity load larger
 *   than the machine can hold, or one that nothing holds once the poles are open.
 * - nonFiniteValue: a derivative or state became NaN or infinite.
 * - stepLimit: `solver.maxSteps` steps were used up. Usual cause: extreme parameters (very short time constants).
 */
export type RunStatusCode =
  | 'finished'
  | 'endTimeReached'
  | 'switchNeverOpened'
  | 'notSettled'
  | 'lineToLineShortCircuit'
  | 'overspeed'
  | 'nonFiniteValue'
  | 'stepLimit';

/** How a run ended, when, and in words. */
export interface RunStatus {
  readonly code: RunStatusCode;
  /** s */
  readonly time: number;
  /** One sentence a technician can act on. */
  readonly message: string;
}

/** True when the figures of the run can be used as they stand. */
export function isSuccessful(status: RunStatus): boolean {
  return status.code === 'finished' || status.code === 'endTimeReached';
}
