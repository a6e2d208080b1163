import type { CircuitModel } from './circuitModel.ts';
import { levelOf } from './moves.ts';
import type { ExploreOptions } from './options.ts';
import { PROPERTIES, type PropertyId } from './property.ts';

/** One bit for each property, in the order of `PROPERTIES`. */
export const BIT_OF = Object.fromEntries(PROPERTIES.map(({ id }, i) => [id, 1 << i])) as Readonly<
  Record<PropertyId, number>
>;

/**
 * Properties that a state breaks whatever came before, as bits.
 *
 * @param energised bits of energised coils
 * @param settled no device is moving
 */
export function judgeState(
  model: CircuitModel,
  options: ExploreOptions,
  state: number,
  energised: number,
  settled: boolean,
): number {
  const { bitOf, contactors } = model;
  const live = energised & contactors;
  const armatures = state & contactors;
  let broken = 0;
  if (live === contactors) broken |= BIT_OF.neverBothCommandedBriefly;
  if (armatures === contactors) broken |= BIT_OF.neverBothClosed;
  const stopped = (state & bitOf.emergencyStop) !== 0;
  const tripped = (state & bitOf.overload) !== 0;
  if (stopped && live !== 0 && mustBeDead(model, options, state)) broken |= BIT_OF.emergencyStop;
  if (tripped && live !== 0) broken |= BIT_OF.overloadDropsBoth;
  if (!settled) return broken;

  if (live === contactors) broken |= BIT_OF.neverBothCommanded;
  const driving = live === 0 ? 0 : live & model.commanded(state);
  const stuckIn = armatures & ~live;
  const uncalled = driving | stuckIn;
  if (tripped && stuckIn !== 0) broken |= BIT_OF.overloadDropsBoth;
  if ((state & bitOf.stopButton) !== 0 && uncalled !== 0) broken |= BIT_OF.stopEndsRunning;
  if (bitOf.forwardButton !== 0 && bitOf.reverseButton !== 0)
    if ((state & model.starts) === model.starts && driving !== 0) broken |= BIT_OF.bothButtonsStartNothing;
  if (stopped) {
    const limitStands = options.emergencyStopCategory === 1 && (energised & bitOf.limitTimer) !== 0;
    const brakesBlindly = (live & ~driving & ~brakedByItsSwitch(model, state)) !== 0;
    if (uncalled !== 0 || limitStands || brakesBlindly) broken |= BIT_OF.emergencyStop;
  }
  if (timerNotReset(bitOf, state)) broken |= BIT_OF.changeoverTime;
  const brakes = model.braking & ((live & ~driving) | stuckIn);
  if ((brakes & ~againstRotation(model, state)) !== 0) broken |= BIT_OF.brakeEndsWithSwitch;
  return broken;
}

/** Category 0: at once. Category 1: when the limit has run out. */
function mustBeDead(model: CircuitModel, options: ExploreOptions, state: number): boolean {
  return options.emergencyStopCategory === 0 || (state & model.bitOf.limitTimer) === 0;
}

/** Contactors whose zero-speed switch contact shows rotation against them. */
function brakedByItsSwitch({ bitOf }: CircuitModel, state: number): number {
  return (
    ((state & bitOf.switchReverse) !== 0 ? bitOf.forwardContactor : 0) |
    ((state & bitOf.switchForward) !== 0 ? bitOf.reverseContactor : 0)
  );
}

/** The contactor that brakes the machine as it turns. */
function againstRotation(model: CircuitModel, state: number): number {
  const level = levelOf(model, state);
  if (level === 0) return 0;
  return level > 0 ? model.bitOf.reverseContactor : model.bitOf.forwardContactor;
}

/** A contactor is in and the timer that keeps the other one out has not been reset. */
export function timerNotReset(bitOf: CircuitModel['bitOf'], state: number): boolean {
  const forward = (state & bitOf.forwardContactor) !== 0 && (state & bitOf.reverseTimer) !== 0;
  const reverse = (state & bitOf.reverseContactor) !== 0 && (state & bitOf.forwardTimer) !== 0;
  return forward || reverse;
}
