import type { ActionKind, ButtonName, SchemeName, StarterFault } from '../scenario.ts';

/** Quantities of a scenario that a hand can turn while looking at what becomes of it. */
export const ADJUSTABLE_KEYS = [
  'loadInertia',
  'loadTorque',
  'deadTime',
  'closingAngle',
  'lineResistance',
  'dropOutSpeed',
  'sourcePower',
] as const;

/** Name of an adjustable quantity. */
export type AdjustableKey = (typeof ADJUSTABLE_KEYS)[number];

/** A change of a scenario's text, as data; `applyEdit` carries it out and leaves every other character where it was. */
export type Edit =
  /** SI; null takes the element out (line resistors, zero-speed switch) or makes it ideal (a stiff source). */
  | { readonly kind: 'adjust'; readonly key: AdjustableKey; readonly value: number | null }
  /** A hand on a button at an instant of the run, s; later actions are forgotten. press lets go by itself after 0.2 s. */
  | {
      readonly kind: 'button';
      readonly at: number;
      readonly do: 'press' | 'hold' | 'release';
      readonly button: ButtonName;
    }
  /** A command in a scenario without a control circuit; later actions are forgotten. */
  | { readonly kind: 'command'; readonly at: number; readonly do: ActionKind }
  /** No actions any more: the machine at rest, waiting for a hand. */
  | { readonly kind: 'clearActions' }
  /** The run lasts until then, s; 'auto': until the last action has done its work. */
  | { readonly kind: 'endTime'; readonly value: number | 'auto' }
  /** null: commands act on the coils. A change between the two translates or drops the actions. */
  | { readonly kind: 'scheme'; readonly scheme: SchemeName | null }
  | { readonly kind: 'control'; readonly option: ControlOption }
  | { readonly kind: 'faults'; readonly faults: readonly StarterFault[] };

/** One thing about the control circuit that can be chosen. */
export type ControlOption =
  | { readonly key: 'memoryRelay' | 'readyRelay' | 'mechanicalInterlock'; readonly value: boolean }
  /** s */
  | { readonly key: 'changeoverTimer' | 'scanTime' | 'relayTime'; readonly value: number }
  /** null: category 0; else category 1 with this limit, s. */
  | { readonly key: 'emergencyStopLimit'; readonly value: number | null }
  /** Whether coils feel the control voltage (80 % pick-up, 55 % drop-out where the file says nothing else). */
  | { readonly key: 'coilVoltage'; readonly value: boolean }
  /** Class; null: no relay. */
  | { readonly key: 'overload'; readonly value: '5' | '10A' | '10' | '20' | '30' | null };

/** Changes in order, without those that a later one of the same kind and quantity makes void. */
export function joinEdits(edits: readonly Edit[]): readonly Edit[] {
  return edits.filter((edit, i) => !edits.slice(i + 1).some((later) => replaces(later, edit)));
}

function replaces(later: Edit, earlier: Edit): boolean {
  if (later.kind === 'adjust') return earlier.kind === 'adjust' && earlier.key === later.key;
  if (later.kind === 'control') return earlier.kind === 'control' && earlier.option.key === later.option.key;
  return (later.kind === 'faults' || later.kind === 'endTime') && earlier.kind === later.kind;
}
