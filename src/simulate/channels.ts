import type { PhaseName } from '../scenario/scenario.ts';
import type { CoilDevice, Device } from '../starter/control/controlCircuit.ts';
import type { ContactorName } from '../starter/starter.ts';

/** Something discrete that is recorded over the whole run. */
export type ChannelOf =
  /** Position of a device of the control circuit: on = pressed, tripped, actuated, pulled in, timer's contact over. */
  | { readonly kind: 'device'; readonly device: Device }
  /** on = the coil is energised. */
  | { readonly kind: 'coil'; readonly device: CoilDevice }
  /** A main pole: open, closed, arcing. */
  | { readonly kind: 'pole'; readonly contactor: ContactorName; readonly phase: PhaseName }
  /** on = the control circuit has voltage enough to hold its coils in. */
  | { readonly kind: 'controlVoltage' };

/** Value of a channel. */
export type ChannelValue = 'on' | 'off' | 'open' | 'closed' | 'arcing';

/** A channel's history: its first change is its value at t = 0, s. */
export interface Channel {
  readonly of: ChannelOf;
  /** Every change in order of time: from `t` on, s, it has this `value`; the first is at t = 0. */
  readonly changes: readonly { readonly t: number; readonly value: ChannelValue }[];
}

/** Thermal memory of the overload relay over time: hottest phase, 1 trips. */
export interface ThermalRecord {
  /** s, ascending */
  readonly t: readonly number[];
  /** Share of the trip level, in the order of `t`. */
  readonly value: readonly number[];
}
