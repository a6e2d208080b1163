import type { Contact, Network } from '../../starter/control/controlCircuit.ts';
import { isContact } from '../../starter/control/controlCircuit.ts';

/** A place in a network: `u` slots along the current path, `v` paths beside the first. */
export interface SlotPoint {
  readonly u: number;
  readonly v: number;
}

/** A contact in the slot from `u` to `u + 1` of path `v`. */
export interface SlotContact extends SlotPoint {
  readonly contact: Contact;
}

/** Contacts and the conductors between them, without a direction on paper: along and across are chosen later. */
export interface SlotLayout {
  /** Slots from end to end. */
  readonly length: number;
  /** Paths side by side. */
  readonly width: number;
  readonly contacts: readonly SlotContact[];
  /** Straight conductors. */
  readonly wires: readonly (readonly [SlotPoint, SlotPoint])[];
}

/** Lays a network out from (0, 0) to (length, 0): series one after the other, parallel side by side. */
export function layoutNetwork(network: Network): SlotLayout {
  if (isContact(network))
    return { length: 1, width: 1, contacts: [{ contact: network, u: 0, v: 0 }], wires: [] };
  return 'series' in network ? inSeries(network.series) : inParallel(network.parallel);
}

/** Moves a layout. */
export function shiftSlots(layout: SlotLayout, u: number, v: number): SlotLayout {
  const moved = (point: SlotPoint): SlotPoint => ({ u: point.u + u, v: point.v + v });
  return {
    ...layout,
    contacts: layout.contacts.map((one) => ({ ...one, ...moved(one) })),
    wires: layout.wires.map(([from, to]) => [moved(from), moved(to)] as const),
  };
}

function inSeries(networks: readonly Network[]): SlotLayout {
  let length = 0;
  const parts = networks.map(layoutNetwork).map((part) => {
    const placed = shiftSlots(part, length, 0);
    length += part.length;
    return placed;
  });
  return merged(parts, length, Math.max(1, ...parts.map((part) => part.width)), []);
}

function inParallel(networks: readonly Network[]): SlotLayout {
  // Nothing in parallel conducts nothing: a gap.
  if (networks.length === 0) return { length: 1, width: 1, contacts: [], wires: [] };
  const layouts = networks.map(layoutNetwork);
  const length = Math.max(...layouts.map((part) => part.length));
  let width = 0;
  const columns: number[] = [];
  const parts = layouts.map((part) => {
    const placed = shiftSlots(part, 0, width);
    columns.push(width);
    width += part.width;
    return placed;
  });
  const tails = layouts.flatMap((part, i) => tail(columns[i]!, part.length, length));
  const last = columns.at(-1)!;
  return merged(parts, length, width, [...tails, ...across(0, 0, last), ...across(length, 0, last)]);
}

/** The conductor from the end of a short path to the level where all paths end. */
export function tail(v: number, from: number, to: number): SlotLayout['wires'] {
  return from < to
    ? [
        [
          { u: from, v },
          { u: to, v },
        ],
      ]
    : [];
}

/** A conductor across the paths. */
export function across(u: number, from: number, to: number): SlotLayout['wires'] {
  return from === to
    ? []
    : [
        [
          { u, v: from },
          { u, v: to },
        ],
      ];
}

function merged(
  parts: readonly SlotLayout[],
  length: number,
  width: number,
  wires: SlotLayout['wires'],
): SlotLayout {
  return {
    length,
    width,
    contacts: parts.flatMap((part) => part.contacts),
    wires: [...parts.flatMap((part) => part.wires), ...wires],
  };
}
