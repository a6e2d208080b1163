import type { CircuitModel } from './circuitModel.ts';
import { CROSSED } from './memory.ts';

/** What happened, as far as what is remembered of the past depends on it. */
export const MOVE = {
  /** A device follows its coil or the speed. */
  device: 0,
  startPressed: 1,
  startReleased: 2,
  /** Stop or reset button, pressed or released. */
  button: 3,
  /** Emergency stop pressed, overload relay tripped, supply lost. */
  cut: 4,
  /** Emergency stop released, overload relay reset. */
  reset: 5,
  supplyReturns: 6,
  timer: 7,
  // From here on the speed.
  /** A contactor drives or brakes the shaft. */
  driven: 8,
  coasts: 9,
  /** By hand or by an overhauling load, away from standstill. */
  turned: 10,
} as const;

/** One of the kinds above. */
export type Move = (typeof MOVE)[keyof typeof MOVE];

/** Called with each state that may follow and what leads to it. */
export type Visit = (next: number, move: Move) => void;

/** Speed level of a state: −2 … 2. */
export function levelOf(model: CircuitModel, state: number): number {
  return ((state >>> model.levelShift) & 7) - 2;
}

/**
 * Bits of the devices that are about to move by themselves: armatures and relays after their coils, timers where they move at
 * once, zero-speed switch contacts after the speed. None: the circuit has come to rest.
 */
export function movingDevices(model: CircuitModel, state: number, energised: number): number {
  const { bitOf } = model;
  let moving = (state ^ energised) & model.coils;
  moving &= ~(model.onDelay & energised) & ~(model.offDelay & ~energised) & ~(model.welded & state);
  if (model.mechanicalInterlock) {
    if ((state & bitOf.forwardContactor) !== 0) moving &= ~(bitOf.reverseContactor & energised);
    if ((state & bitOf.reverseContactor) !== 0) moving &= ~(bitOf.forwardContactor & energised);
  }
  if (model.shaft) {
    const level = levelOf(model, state);
    moving |= switchMoves(model, state, bitOf.switchForward, level);
    moving |= switchMoves(model, state, bitOf.switchReverse, -level);
  }
  return moving;
}

/** Timers whose time may run out. */
function runningTimers(model: CircuitModel, state: number, energised: number): number {
  return (state ^ energised) & ((model.onDelay & energised) | (model.offDelay & ~energised));
}

/** With a lockout a contact is actuated only while the solenoid lets it; actuated it stays until drop-out. */
function switchMoves(model: CircuitModel, state: number, bit: number, level: number): number {
  if ((state & bit) !== 0) return level <= 0 && !model.switchStuckClosed ? bit : 0;
  const { lockout } = model.bitOf;
  const free = lockout === 0 || (state & lockout) !== 0;
  return level === 2 && free && !model.switchSeesNothing ? bit : 0;
}

/**
 * Visits every state that may follow. Devices move in any order, the speed at any time; hands, trips, timers and the supply wait
 * until every device has come to rest, for a hand is slower than a relay.
 *
 * @param moving bits of `movingDevices`
 */
export function eachMove(
  model: CircuitModel,
  state: number,
  energised: number,
  moving: number,
  visit: Visit,
): void {
  // Of counterexamples of one length the first found is kept: the machine drives before the load, relays follow before it turns on.
  if (moving === 0) {
    if (model.shaft) ownSpeed(model, state, visit);
    outsideMoves(model, state, energised, visit);
  } else {
    deviceMoves(model, state, energised, moving, visit);
    if (model.shaft) ownSpeed(model, state, visit);
  }
  if (model.shaft) turning(model, state, visit);
}

function deviceMoves(
  model: CircuitModel,
  state: number,
  energised: number,
  moving: number,
  visit: Visit,
): void {
  for (let rest = moving; rest !== 0; rest &= rest - 1) visit(state ^ (rest & -rest), MOVE.device);
  // Armatures that set off within one travel of each other meet in the middle unless something bars them.
  const both = model.contactors;
  if ((moving & both) === both && (state & both) === 0 && (energised & both) === both)
    if (!model.mechanicalInterlock) visit(state | both, MOVE.device);
}

/** True while the supply drives or brakes the shaft through one contactor. */
export function drives(model: CircuitModel, state: number): boolean {
  const armatures = state & model.contactors;
  return (state & model.supply) !== 0 && armatures !== 0 && armatures !== model.contactors;
}

/** Driven or braked by a contactor, or coasting. */
function ownSpeed(model: CircuitModel, state: number, visit: Visit): void {
  if (hasCrossed(model, state)) return;
  const level = levelOf(model, state);
  const unit = 1 << model.levelShift;
  if (!drives(model, state)) {
    if (level !== 0) visit(level > 0 ? state - unit : state + unit, MOVE.coasts);
    return;
  }
  const up = (state & model.bitOf.forwardContactor) !== 0;
  if (up ? level < 2 : level > -2) visit(up ? state + unit : state - unit, MOVE.driven);
}

/** By hand or by an overhauling load, where no contactor has the shaft. */
function turning(model: CircuitModel, state: number, visit: Visit): void {
  if (drives(model, state) || hasCrossed(model, state)) return;
  const level = levelOf(model, state);
  const unit = 1 << model.levelShift;
  if (level >= 0 && level < 2) visit(state + unit, MOVE.turned);
  if (level <= 0 && level > -2) visit(state - unit, MOVE.turned);
}

function hasCrossed(model: CircuitModel, state: number): boolean {
  return ((state >>> model.memoryShift) & CROSSED) !== 0;
}

function outsideMoves(model: CircuitModel, state: number, energised: number, visit: Visit): void {
  const { bitOf, starts } = model;
  const supplied = (state & model.supply) !== 0;
  visit(state ^ model.supply, supplied ? MOVE.cut : MOVE.supplyReturns);
  const pressed = state & model.buttons;
  const one = (pressed & (pressed - 1)) === 0;
  for (let rest = model.buttons; rest !== 0; rest &= rest - 1) {
    const bit = rest & -rest;
    const start = (bit & starts) !== 0;
    if ((state & bit) !== 0) visit(state ^ bit, start ? MOVE.startReleased : MOVE.button);
    // Two hands: no third button.
    else if (one) visit(state | bit, start ? MOVE.startPressed : MOVE.button);
  }
  if (bitOf.forwardButton !== 0 && bitOf.reverseButton !== 0) {
    if (pressed === 0) visit(state | starts, MOVE.startPressed);
    if (pressed === starts) visit(state ^ starts, MOVE.startReleased);
  }
  const stop = bitOf.emergencyStop;
  if (stop !== 0) visit(state ^ stop, (state & stop) === 0 ? MOVE.cut : MOVE.reset);
  if ((state & bitOf.overload) !== 0) visit(state ^ bitOf.overload, MOVE.reset);
  else if (model.overloadTrips && supplied) visit(state | bitOf.overload, MOVE.cut);
  for (let rest = runningTimers(model, state, energised); rest !== 0; rest &= rest - 1)
    visit(state ^ (rest & -rest), MOVE.timer);
}
