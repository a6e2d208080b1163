import type { DutyData } from '../../scenario/scenario.ts';
import type { WearEvent } from './contactWearTypes.ts';

/** How often something happens in one operation of a duty. */
export interface DutyCounts {
  readonly events: Readonly<Record<WearEvent, number>>;
  /** Closings of the driving and of the plugging contactor. */
  readonly drivingClosings: number;
  readonly pluggingClosings: number;
  /** Times the zero-speed switch closes; inching does not reach its pick-up speed (assumed). */
  readonly switchClosings: number;
}

/**
 * What one operation of the duty consists of in the mean: the shares of plug stops and of inching, and for the rest a start that is left to coast
 * or, with the cycle of full reversals, a reversal, in which each contactor makes in every second one.
 */
export function dutyCounts(duty: DutyData): DutyCounts {
  const { pluggingShare: plugStop, inchingShare: inch } = duty;
  const rest = Math.max(0, 1 - plugStop - inch);
  const reversal = duty.cycle === 'fullReversal' ? rest : 0;
  const stop = rest - reversal;
  const start = plugStop + stop;
  return {
    events: { start, stop, plugStop, reversal, inch },
    drivingClosings: start + inch + reversal / 2,
    pluggingClosings: plugStop + reversal / 2,
    switchClosings: start + reversal,
  };
}
