import type { Contact, Device, Network } from '../control/controlCircuit.ts';
import { isContact } from '../control/controlCircuit.ts';
import type { StuckContact } from '../control/evaluate.ts';

/** Conducts where all bits of `mask` read as in `value`. */
export interface Cube {
  readonly mask: number;
  readonly value: number;
}

/** A network as the alternatives under which it conducts: none, and it never does. */
export type Cubes = readonly Cube[];

/** Conducts always. */
export const CONDUCTS: Cubes = [{ mask: 0, value: 0 }];

/**
 * The alternatives under which a network conducts.
 *
 * @param bitOf the bit that is set while a device is actuated
 * @param stuck contacts that do not follow their devices
 */
export function cubesOf(
  network: Network,
  bitOf: Readonly<Record<Device, number>>,
  stuck: readonly StuckContact[],
): Cubes {
  if (isContact(network)) return cubesOfContact(network, bitOf[network.device], stuck);
  if ('parallel' in network) return network.parallel.flatMap((part) => cubesOf(part, bitOf, stuck));
  return network.series
    .map((part) => cubesOf(part, bitOf, stuck))
    .reduce((all, part) => inSeries(all, part), CONDUCTS);
}

/** Two networks in series: every pair of alternatives that does not contradict itself. */
export function inSeries(first: Cubes, second: Cubes): Cubes {
  return first.flatMap((a) =>
    second
      .filter((b) => (a.value & b.mask) === (b.value & a.mask))
      .map((b) => ({ mask: a.mask | b.mask, value: a.value | b.value })),
  );
}

/** True while one of the alternatives holds. */
export function cubesConduct(cubes: Cubes, state: number): boolean {
  return cubes.some(({ mask, value }) => (state & mask) === value);
}

function cubesOfContact(contact: Contact, bit: number, stuck: readonly StuckContact[]): Cubes {
  const fault = stuck.find(
    ({ device, kind, role }) =>
      device === contact.device && kind === contact.kind && (role === undefined || role === contact.role),
  );
  if (fault !== undefined) return fault.stuck === 'closed' ? CONDUCTS : [];
  return [{ mask: bit, value: contact.kind === 'make' ? bit : 0 }];
}
