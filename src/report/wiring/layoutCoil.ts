import type { CoilCircuit } from '../../starter/control/controlCircuit.ts';
import {
  across,
  layoutNetwork,
  type SlotContact,
  type SlotLayout,
  type SlotPoint,
  shiftSlots,
  tail,
} from './layoutNetwork.ts';
import type { PlannedCoil, SharedHead } from './sharedHeads.ts';

/** A coil in the slot from `u` to `u + 1` of path `v`. */
export interface SlotCoil extends SlotPoint {
  readonly circuit: CoilCircuit;
}

/** A coil with everything between it and what feeds it. */
export interface CoilLayout {
  readonly coil: SlotCoil;
  readonly contacts: readonly SlotContact[];
  readonly wires: SlotLayout['wires'];
  /** Where its branches begin. */
  readonly starts: readonly (SlotPoint & { readonly head: SharedHead | null })[];
  /** Paths it takes. */
  readonly width: number;
}

/** Slots that a coil needs between what feeds it and itself. */
export function coilReach({ circuit, branches }: PlannedCoil): number {
  const lengths = branches.map(
    ({ network, head }) => layoutNetwork(network).length + (head?.contacts.length ?? 0),
  );
  return Math.max(0, ...lengths) + layoutNetwork(circuit.guard).length;
}

/**
 * Lays out a coil's circuit: branches side by side from the feed on, joined ahead of the guard, the guard next to the coil.
 *
 * @param from level at which branches without shared contacts begin
 * @param coilLevel level of the coil's own slot
 * @param v its first path
 */
export function layoutCoil(planned: PlannedCoil, from: number, coilLevel: number, v: number): CoilLayout {
  const guard = layoutNetwork(planned.circuit.guard);
  const join = coilLevel - guard.length;
  const contacts: SlotContact[] = [];
  const wires: (readonly [SlotPoint, SlotPoint])[] = [];
  const starts: CoilLayout['starts'][number][] = [];
  let width = 0;
  for (const { network, head } of planned.branches) {
    const layout = layoutNetwork(network);
    const u = from + (head?.contacts.length ?? 0);
    const at = v + width;
    const placed = shiftSlots(layout, u, at);
    contacts.push(...placed.contacts);
    wires.push(...placed.wires, ...tail(at, u + layout.length, join));
    starts.push({ u, v: at, head });
    width += layout.width;
  }
  const last = starts.at(-1)?.v ?? v;
  const placedGuard = shiftSlots(guard, join, v);
  return {
    coil: { circuit: planned.circuit, u: coilLevel, v },
    contacts: [...contacts, ...placedGuard.contacts],
    wires: [...wires, ...across(join, v, last), ...placedGuard.wires],
    starts,
    width: Math.max(width, guard.width, 1),
  };
}
