import type { ControlCircuit } from '../../starter/control/controlCircuit.ts';
import { type CoilLayout, coilReach, layoutCoil, type SlotCoil } from './layoutCoil.ts';
import {
  across,
  layoutNetwork,
  type SlotContact,
  type SlotLayout,
  type SlotPoint,
  shiftSlots,
  tail,
} from './layoutNetwork.ts';
import { alone, type PlannedCoil, planCoils, type SharedHead } from './sharedHeads.ts';

/** A control circuit in slots: `u` along the current paths, `v` from path to path. */
export interface ControlLayout {
  readonly contacts: readonly SlotContact[];
  readonly coils: readonly SlotCoil[];
  readonly wires: SlotLayout['wires'];
  /** Where the conductor from the control supply arrives. */
  readonly supply: SlotPoint;
  /** Where the conductor back to the control supply leaves. */
  readonly back: SlotPoint;
  /** `v` of every path in the order of their numbers, from 1 on. */
  readonly paths: readonly number[];
}

/**
 * Where the feed's contacts stand: ahead of the rail they feed (current paths downwards), or in a line of their own whose end
 * is led back to the beginning of the lines below (current paths from left to right).
 */
export type FeedPlace = 'ahead' | 'folded';

/** How far the control supply's rail stands before the one behind the feed, where the feed is folded; slots. */
const INDENT = 0.375;
/** Where the conductor back from a folded feed runs, and how much farther apart that sets the lines; paths. */
const FOLD = 0.5;

/** Lays out a whole control circuit: coils ahead of the feed first, then the feed, then the coils behind it. */
export function layoutControl(circuit: ControlCircuit, place: FeedPlace): ControlLayout {
  const ahead = circuit.coils.filter((coil) => coil.aheadOfFeed === true).map(alone);
  const fed = planCoils(circuit.coils.filter((coil) => coil.aheadOfFeed !== true));
  const feed = layoutNetwork(circuit.feed);
  const folded = place === 'folded';
  const railLevel = folded ? -INDENT : -feed.length;
  const from = folded ? 0 : railLevel;
  const coilLevel = Math.max(
    ...fed.map(coilReach),
    ...ahead.map((coil) => coilReach(coil) + from),
    folded ? feed.length : 0,
  );

  const first = sideBySide(ahead, from, coilLevel, 0);
  const feedAt = first.end;
  const placedFeed = shiftSlots(feed, from, feedAt);
  const behind = sideBySide(fed, 0, coilLevel, folded ? feedAt + feed.width + FOLD : feedAt);
  const heads = sharedHeads(behind.layouts);

  const starts = [
    ...behind.layouts.flatMap((layout) => layout.starts.filter(({ head }) => head === null)),
    ...heads.starts,
  ];
  const lastStart = Math.max(...starts.map(({ v }) => v));
  const rail = folded
    ? [
        ...[...new Set([...first.layouts.flatMap((one) => one.starts.map(({ v }) => v)), feedAt])].map(
          (v): SlotLayout['wires'][number] => [
            { u: railLevel, v },
            { u: 0, v },
          ],
        ),
        ...across(feed.length, feedAt, feedAt + FOLD),
        ...tail(feedAt + FOLD, 0, feed.length),
        ...across(0, feedAt + FOLD, lastStart),
      ]
    : across(0, feedAt, lastStart);
  const coils = [...first.layouts, ...behind.layouts].map(({ coil }) => coil);
  return {
    contacts: [
      ...placedFeed.contacts,
      ...[...first.layouts, ...behind.layouts].flatMap(({ contacts }) => contacts),
      ...heads.contacts,
    ],
    coils,
    wires: [
      ...across(railLevel, 0, feedAt),
      ...placedFeed.wires,
      ...rail,
      ...[...first.layouts, ...behind.layouts].flatMap(({ wires }) => wires),
      ...heads.wires,
      ...across(coilLevel + 1, 0, coils.at(-1)!.v),
    ],
    supply: { u: railLevel, v: 0 },
    back: { u: coilLevel + 1, v: 0 },
    paths: [
      ...counted(0, first.end),
      ...(folded ? counted(feedAt, feed.width) : []),
      ...counted(behind.begin, behind.end - behind.begin),
    ],
  };
}

interface Row {
  readonly layouts: readonly CoilLayout[];
  readonly begin: number;
  readonly end: number;
}

function sideBySide(coils: readonly PlannedCoil[], from: number, coilLevel: number, begin: number): Row {
  let v = begin;
  const layouts = coils.map((coil) => {
    const layout = layoutCoil(coil, from, coilLevel, v);
    v += layout.width;
    return layout;
  });
  return { layouts, begin, end: v };
}

/** Shared contacts stand above the first branch that begins with them; a conductor across leads to the others. */
function sharedHeads(layouts: readonly CoilLayout[]): {
  readonly contacts: readonly SlotContact[];
  readonly wires: SlotLayout['wires'];
  readonly starts: readonly SlotPoint[];
} {
  const members = new Map<SharedHead, SlotPoint[]>();
  for (const { head, u, v } of layouts.flatMap(({ starts }) => starts))
    if (head !== null) members.set(head, [...(members.get(head) ?? []), { u, v }]);
  const parts = [...members].map(([{ contacts }, points]) => {
    const { u, v } = points[0]!;
    const begin = u - contacts.length;
    return {
      contacts: contacts.map((contact, i): SlotContact => ({ contact, u: begin + i, v })),
      wires: across(u, v, points.at(-1)!.v),
      start: { u: begin, v },
    };
  });
  return {
    contacts: parts.flatMap(({ contacts }) => contacts),
    wires: parts.flatMap(({ wires }) => wires),
    starts: parts.map(({ start }) => start),
  };
}

function counted(from: number, count: number): number[] {
  return Array.from({ length: count }, (_, i) => from + i);
}
