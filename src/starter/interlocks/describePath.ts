import type { Device } from '../control/controlCircuit.ts';
import { DEVICE_WORDS } from '../control/controlCircuit.ts';
import type { CircuitModel } from './circuitModel.ts';
import { timerNotReset } from './judgeState.ts';
import { drives, levelOf } from './moves.ts';
import type { PropertyId } from './property.ts';

/** How a property fails. */
export interface Counterexample {
  readonly property: PropertyId;
  /** What happens, in order, from a dead installation at rest. */
  readonly steps: readonly string[];
  /** What is then the case, without a full stop. */
  readonly outcome: string;
}

/** A path of states in words; its last move breaks the property. */
export function describePath(
  model: CircuitModel,
  property: PropertyId,
  path: readonly number[],
): Counterexample {
  const had = (index: number) => path.slice(0, index).some((state) => (state & model.supply) !== 0);
  const steps = path
    .slice(1)
    // Of two thresholds crossed one after the other in the same way the second says it all.
    .flatMap((next, i) =>
      goesOn(model, path[i]!, next, path[i + 2]) ? [] : [moveWords(model, path[i]!, next, had(i + 1))],
    );
  return { property, steps, outcome: outcomeWords(model, property, path) };
}

/** True when the speed crosses a threshold and, with nothing in between, the next one: away from standstill, or towards it. */
function goesOn(model: CircuitModel, before: number, next: number, after: number | undefined): boolean {
  if (after === undefined) return false;
  const [a, b, c] = [before, next, after].map((state) => levelOf(model, state)) as [number, number, number];
  const throughZero = b === 0;
  return b !== a && c - b === b - a && !throughZero && drives(model, before) === drives(model, next);
}

function moveWords(model: CircuitModel, before: number, next: number, suppliedBefore: boolean): string {
  if (levelOf(model, before) !== levelOf(model, next)) return speedWords(model, before, next);
  const changed = (before ^ next) & ((1 << model.levelShift) - 1);
  if (changed === model.supply) {
    if ((next & model.supply) === 0) return 'supply lost';
    return suppliedBefore ? 'supply returns' : 'supply switched on';
  }
  const devices = model.devices.filter((device) => (changed & model.bitOf[device]) !== 0);
  const on = (next & changed) !== 0;
  if (devices.length === 2)
    return (changed & model.starts) !== 0
      ? `forward and reverse button ${on ? 'pressed' : 'released'} at the same instant`
      : 'forward and reverse contactor pull in together';
  return deviceWords(model, devices[0]!, on, before);
}

function deviceWords(model: CircuitModel, device: Device, on: boolean, before: number): string {
  const name = DEVICE_WORDS[device];
  switch (device) {
    case 'stopButton':
    case 'forwardButton':
    case 'reverseButton':
    case 'resetButton':
    case 'emergencyStop':
      return `${name} ${on ? 'pressed' : 'released'}`;
    case 'overload':
      return `${name} ${on ? 'trips' : 'reset'}`;
    case 'forwardContactor':
    case 'reverseContactor':
      return `${name} ${on ? 'pulls in' : 'drops out'}`;
    case 'lockout':
      return `${name} ${on ? 'frees' : 'locks'} the zero-speed switch`;
    case 'forwardTimer':
    case 'reverseTimer':
    case 'limitTimer': {
      const timed = model.bitOf[device] & (on ? model.onDelay : model.offDelay);
      const live = (model.energised(before) & model.bitOf[device]) !== 0;
      if (timed !== 0 && live === on) return `${name} runs out`;
      return `${name} ${on ? 'picks up' : 'drops out'}`;
    }
    default:
      return `${name} ${on ? 'picks up' : 'drops out'}`;
  }
}

function speedWords(model: CircuitModel, before: number, next: number): string {
  const [from, to] = [levelOf(model, before), levelOf(model, next)];
  const rises = Math.abs(to) > Math.abs(from);
  const threshold = Math.max(Math.abs(from), Math.abs(to)) === 2 ? 'pick-up' : 'drop-out';
  const direction = from + to > 0 ? 'forward' : 'reverse';
  const crossing = `${direction} speed ${rises ? 'rises above' : 'falls below'} ${threshold}`;
  if (drives(model, before)) return `machine ${rises ? 'driven' : 'braked'}: ${crossing}`;
  return rises ? `shaft turned by hand or load: ${crossing}` : `machine coasts: ${crossing}`;
}

function outcomeWords(model: CircuitModel, property: PropertyId, path: readonly number[]): string {
  const state = path.at(-1)!;
  const { bitOf, contactors } = model;
  const energised = model.energised(state);
  if (property === 'neverBothClosed') return 'both contactors are closed';
  const live = energised & contactors;
  if (property === 'changeoverTime' && timerNotReset(bitOf, state))
    return 'a contactor is in and the change-over timer of the other is not reset';
  if (live === contactors) return 'both contactor coils are energised';
  const named = (bit: number) => (bit === bitOf.forwardContactor ? 'forward' : 'reverse');
  if (live !== 0) return `the coil of the ${named(live)} contactor is energised`;
  const closed = state & contactors;
  if (closed !== 0) return `the ${named(closed)} contactor is in, its coil dead`;
  return 'the braking time limit does not run';
}
