import type { LaboratorySheet, StepKey } from './laboratory.ts';
import type { Pause } from './pause.ts';
import type { QuantityKey } from './quantities.ts';
import type { Range } from './ranges.ts';
import { REPEATS, RUN_DOWNS } from './steps.ts';

/** How long the trials of a procedure take at least. SI. */
export type LeastTime = Exclude<LaboratorySheet['leastTime'], string>;

/** Pauses are kept to whole multiples of this, rounded up, s. */
export const TIME_STEP = 5;

const SECONDS_PER_HOUR = 3600;

/** A pause as it is kept with a clock: rounded up, s. */
export function keptPause({ time }: Pause): number {
  return Math.ceil(time / TIME_STEP) * TIME_STEP;
}

/**
 * The least time of the trials, each with the pause after it; connecting, warming up and writing come on top.
 *
 * @returns words where a pause that is needed is not known
 */
export function leastTimeOf(
  steps: readonly StepKey[],
  ranges: ReadonlyMap<QuantityKey, Pick<Range, 'predicted'>>,
  pauses: LaboratorySheet['pauses'],
  delays: number,
): LeastTime | string {
  const coast = ranges.get('runDownTime')?.predicted ?? 0;
  const runUp = ranges.get('startTime')?.predicted ?? 0;
  const whole = (pause: Pause) => SECONDS_PER_HOUR / pause.perHour - pause.time + keptPause(pause);
  const coasting = (pause: Pause) => runUp + pause.running + coast + keptPause(pause);
  const { plugStop, reversal } = pauses;
  const plans = [
    { step: 'runDown', trials: RUN_DOWNS, pause: plugStop, of: coasting },
    { step: 'start', trials: 1, pause: plugStop, of: coasting },
    { step: 'plugStop', trials: REPEATS, pause: plugStop, of: whole },
    { step: 'creep', trials: delays, pause: plugStop, of: whole },
    // It is let run down from the other direction before the pause begins.
    { step: 'reversal', trials: 1, pause: reversal, of: (pause: Pause) => whole(pause) + coast },
  ] as const;
  const parts: { step: StepKey; trials: number; each: number }[] = [];
  for (const { step, trials, pause, of } of plans) {
    if (!steps.includes(step) || trials === 0) continue;
    if (typeof pause === 'string') return pause;
    parts.push({ step, trials, each: of(pause) });
  }
  return { parts, total: parts.reduce((sum, { trials, each }) => sum + trials * each, 0) };
}
