import type { Branch, CoilCircuit, Contact, ControlCircuit, Device, Network } from './controlCircuit.ts';
import { isContact } from './controlCircuit.ts';

/** True where a device is actuated: button pressed, relay tripped, armature pulled in, speed shown. Absent: not. */
export type Positions = Readonly<Partial<Record<Device, boolean>>>;

/** A contact that does not follow its device. */
export interface StuckContact {
  readonly device: Device;
  readonly kind: 'make' | 'break';
  /** Only contacts with this role; absent: every contact of that kind. */
  readonly role?: 'holdIn' | 'interlock';
  readonly stuck: 'open' | 'closed';
}

/** True while the contact conducts. */
export function conducts(contact: Contact, positions: Positions, stuck: readonly StuckContact[]): boolean {
  const fault = stuck.find(
    (one) =>
      one.device === contact.device &&
      one.kind === contact.kind &&
      (one.role === undefined || one.role === contact.role),
  );
  if (fault !== undefined) return fault.stuck === 'closed';
  return (positions[contact.device] === true) === (contact.kind === 'make');
}

/** True while a network conducts from end to end. */
export function networkConducts(
  network: Network,
  positions: Positions,
  stuck: readonly StuckContact[],
): boolean {
  if (isContact(network)) return conducts(network, positions, stuck);
  if ('series' in network) return network.series.every((part) => networkConducts(part, positions, stuck));
  return network.parallel.some((part) => networkConducts(part, positions, stuck));
}

/** Branches of a coil that conduct; what the program or the wiring asks for, feed and guard apart. */
export function conductingBranches(
  coil: CoilCircuit,
  positions: Positions,
  stuck: readonly StuckContact[],
): readonly Branch[] {
  return coil.branches.filter((branch) => networkConducts(branch.network, positions, stuck));
}

/** True while the contacts that are wired whatever a program says conduct: feed and guard. */
export function wiringConducts(
  circuit: ControlCircuit,
  coil: CoilCircuit,
  positions: Positions,
  stuck: readonly StuckContact[],
): boolean {
  const fed = coil.aheadOfFeed === true || networkConducts(circuit.feed, positions, stuck);
  return fed && networkConducts(coil.guard, positions, stuck);
}

/**
 * Devices whose contacts are wired even where a program does the rest: what stops the machine, and the relays that pass it on.
 */
const WIRED_DEVICES: readonly Device[] = ['emergencyStop', 'overload', 'ready', 'forwardRun', 'reverseRun'];

/** True while the wired contacts of a network leave it a way; every other contact is taken to conduct. */
export function wiredPartConducts(
  network: Network,
  positions: Positions,
  stuck: readonly StuckContact[],
): boolean {
  if (isContact(network))
    return !WIRED_DEVICES.includes(network.device) || conducts(network, positions, stuck);
  if ('series' in network) return network.series.every((part) => wiredPartConducts(part, positions, stuck));
  return network.parallel.some((part) => wiredPartConducts(part, positions, stuck));
}
