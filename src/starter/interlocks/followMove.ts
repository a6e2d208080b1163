import type { CircuitModel } from './circuitModel.ts';
import { BIT_OF } from './judgeState.ts';
import { BRAKED, CROSSED, SINCE, SINCE_BITS, TURNED } from './memory.ts';
import { levelOf, MOVE, type Move, movingDevices } from './moves.ts';
import type { ExploreOptions } from './options.ts';

/** A state that has been left, with what follows from it. */
export interface Before {
  readonly state: number;
  readonly energised: number;
  readonly moving: number;
}

/** Where a move leads: written by `followMove`. */
export interface After {
  state: number;
  energised: number;
  moving: number;
  /** Properties that the move breaks, as bits; those of the state by itself are apart. */
  broken: number;
}

/**
 * What a move makes of the past and which properties it breaks.
 *
 * @param next the state after the move, with the memory of the one before
 */
export function followMove(
  model: CircuitModel,
  options: ExploreOptions,
  before: Before,
  next: number,
  move: Move,
  out: After,
): void {
  const { memoryShift, contactors } = model;
  // No contact follows the speed itself: the zero-speed switch has to move first.
  const energised = move >= MOVE.driven ? before.energised : model.energised(next);
  const moving = movingDevices(model, next, energised);
  const memory = next >>> memoryShift;
  const level = levelOf(model, next);
  const commanded = (energised & contactors) === 0 ? 0 : model.commanded(next);
  const shown = model.bitOf.switchForward | model.bitOf.switchReverse;
  let since = sinceAfter(model, before.state, next, move, memory & SINCE_BITS);
  let turned = memory & TURNED;
  if ((next & commanded) !== 0 || (level === 0 && (next & shown) === 0)) turned = 0;
  else if (move === MOVE.turned && leavesRestUnseen(model, before.state, next)) turned = TURNED;

  let broken = 0;
  if (move === MOVE.supplyReturns && (before.state & contactors) !== 0)
    broken |= BIT_OF.noStartAfterPowerReturns;
  const rise = energised & ~before.energised & contactors;
  const byCommand = rise & commanded;
  let braked = memory & BRAKED;
  if (rise !== 0) {
    broken |= startedBy(since, turned, byCommand);
    if ((rise & shownAgainst(model, next, moving)) !== 0) broken |= BIT_OF.antiPlugging;
    if (risesTooSoon(model.bitOf, rise, next)) broken |= BIT_OF.changeoverTime;
    if (byCommand !== rise && braked !== 0 && options.memoryRelay) broken |= BIT_OF.brakeEndsWithSwitch;
    if (byCommand !== 0 || (since !== SINCE.held && since !== SINCE.earlyReset)) since = SINCE.nothing;
    if (byCommand !== rise) braked = BRAKED;
  }
  const quiet = moving === 0 && ((energised | next) & contactors) === 0;
  if ((commanded & next) !== 0) braked = 0;
  if (since === SINCE.nothing && quiet && level === 0 && (next & model.buttons) === 0) since = SINCE.rest;

  out.energised = energised;
  out.moving = moving;
  out.broken = broken;
  const crossed = options.speed === 'slow' && moving !== 0 ? crossedAfter(before, move, memory) : 0;
  if (!options.memoryRelay) braked = 0;
  out.state = (next & ((1 << memoryShift) - 1)) | ((since | turned | crossed | braked) << memoryShift);
}

/** Since when nothing may start by itself. */
function sinceAfter(model: CircuitModel, before: number, next: number, move: Move, since: number): number {
  const held = (next & model.starts) !== 0;
  switch (move) {
    case MOVE.startPressed:
    case MOVE.cut:
      return SINCE.nothing;
    case MOVE.startReleased:
      return since === SINCE.held && !held ? SINCE.nothing : since;
    case MOVE.reset:
      if (held) return SINCE.held;
      return model.fed(before) ? SINCE.earlyReset : SINCE.reset;
    case MOVE.supplyReturns:
      return held ? SINCE.held : SINCE.supply;
    default:
      return since;
  }
}

/** The property broken by a coil that becomes energised. */
function startedBy(since: number, turned: number, byCommand: number): number {
  switch (since) {
    case SINCE.held:
      return byCommand === 0 ? 0 : BIT_OF.heldButton;
    case SINCE.earlyReset:
      return byCommand === 0 ? 0 : BIT_OF.noStartAfterReset;
    case SINCE.nothing:
      return 0;
  }
  // A braking branch that a turned shaft has closed; a start command owes nothing to the shaft.
  if (turned !== 0 && byCommand === 0) return BIT_OF.noStartByTurning;
  if (since === SINCE.reset) return BIT_OF.noStartAfterReset;
  return since === SINCE.supply ? BIT_OF.noStartAfterPowerReturns : 0;
}

/** True when the shaft leaves standstill and the switch does not still show that direction. */
function leavesRestUnseen(model: CircuitModel, before: number, next: number): boolean {
  if (levelOf(model, before) !== 0) return false;
  const { switchForward, switchReverse } = model.bitOf;
  return (next & (levelOf(model, next) > 0 ? switchForward : switchReverse)) === 0;
}

/** Contactors against which the switch shows rotation, or would show it if it worked. */
function shownAgainst(model: CircuitModel, state: number, moving: number): number {
  const { bitOf } = model;
  const level = levelOf(model, state);
  const shown = (bit: number, fast: boolean) => (state & bit) !== 0 || (fast && (moving & bit) === 0);
  return (
    (shown(bitOf.switchForward, level === 2) ? bitOf.reverseContactor : 0) |
    (shown(bitOf.switchReverse, level === -2) ? bitOf.forwardContactor : 0)
  );
}

/** Set once the speed has crossed a threshold while devices were moving. */
function crossedAfter({ moving }: Before, move: Move, memory: number): number {
  return move >= MOVE.driven && moving !== 0 ? CROSSED : memory & CROSSED;
}

/** A coil is energised though the other contactor has not been out for the timer's time. */
function risesTooSoon(bitOf: CircuitModel['bitOf'], rise: number, next: number): boolean {
  const forward = (rise & bitOf.forwardContactor) !== 0 && (next & bitOf.forwardTimer) === 0;
  const reverse = (rise & bitOf.reverseContactor) !== 0 && (next & bitOf.reverseTimer) === 0;
  return forward || reverse;
}
