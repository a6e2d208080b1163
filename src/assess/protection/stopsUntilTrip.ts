import { exponentialLessOne } from '../../numeric/exponential.ts';
import { heatAfter, type OverloadConstants, TRIP_LEVEL } from '../../starter/overloadRelay.ts';

/** A stretch of what an overload relay sees: a start, running, a stop, or a pause. */
export interface RelayStretch {
  /** s */
  readonly duration: number;
  /** ∫ e^(−(t₁−s)/τ)·i(s)² ds of each phase, A²·s; zeros in a pause. */
  readonly weighted: readonly [number, number, number];
}

/** How often an overload relay lets an operation happen. */
export interface RelayUse {
  /** Whole operations before it trips; Infinity: it never does. */
  readonly operations: number;
  /** Highest heat of the hottest phase when the operations go on for ever, shares of the trip level. */
  readonly steadyPeak: number;
}

/** Operations after which the relay counts as never tripping: its heat then creeps towards the trip level. */
const MOST = 1_000_000;

/**
 * How many operations an overload relay stands until it trips, and the heat they would lead to. Heat is read at the end of each
 * stretch, where it is highest: within starts and stops it rises nearly to their ends, and at steady current it only rises or
 * only falls.
 *
 * @param setting A r.m.s.
 * @param operation its stretches in order, the pause before the next one last
 * @param initialHeat of every phase, shares of the trip level
 */
export function stopsUntilTrip(
  constants: OverloadConstants,
  setting: number,
  operation: readonly RelayStretch[],
  initialHeat: number,
): RelayUse {
  const once = (heats: readonly number[]) => {
    let peak = Number.NEGATIVE_INFINITY;
    let end = heats;
    for (const { duration, weighted } of operation) {
      end = end.map((heat, phase) => heatAfter(heat, duration, weighted[phase]!, constants, setting));
      peak = Math.max(peak, ...end);
    }
    return { peak, end };
  };
  // One operation takes H to H·decay + g: for ever, H = g/(1 − decay).
  const period = operation.reduce((sum, { duration }) => sum + duration, 0);
  const left = -exponentialLessOne(-period / constants.tau);
  const steadyPeak = once(once([0, 0, 0]).end.map((g) => g / left)).peak;
  let state = once([initialHeat, initialHeat, initialHeat]);
  // From above the heat falls, from below it rises towards what repeats for ever: the first operation or that decides.
  if (state.peak < TRIP_LEVEL && steadyPeak < TRIP_LEVEL)
    return { operations: Number.POSITIVE_INFINITY, steadyPeak };
  for (let operations = 0; operations < MOST; operations++) {
    if (state.peak >= TRIP_LEVEL) return { operations, steadyPeak };
    state = once(state.end);
  }
  return { operations: Number.POSITIVE_INFINITY, steadyPeak };
}
