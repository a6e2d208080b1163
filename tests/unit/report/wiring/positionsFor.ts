import {
  allContacts,
  type ControlCircuit,
  type Device,
  isContact,
  type Network,
} from '../../../../src/starter/control/controlCircuit.ts';
import type { Positions } from '../../../../src/starter/control/evaluate.ts';

/**
 * Positions of all devices, reproducible: for each coil some that energise it where that can be, and the same with one or two
 * devices moved, which is where a wrong connection shows.
 */
export function positionsFor(circuit: ControlCircuit, perCoil: number): readonly Positions[] {
  const random = generator(1);
  const devices = [...new Set(allContacts(circuit).map(({ device }) => device))];
  return circuit.coils.flatMap((coil) =>
    Array.from({ length: perCoil }, (_, i) => {
      const positions: Partial<Record<Device, boolean>> = Object.fromEntries(
        devices.map((device) => [device, random() < 0.5]),
      );
      if (coil.aheadOfFeed !== true) close(circuit.feed, positions, random);
      close(coil.branches[Math.floor(random() * coil.branches.length)]!.network, positions, random);
      close(coil.guard, positions, random);
      for (let moved = 0; moved < i % 3; moved += 1) {
        const device = devices[Math.floor(random() * devices.length)]!;
        positions[device] = positions[device] !== true;
      }
      return positions;
    }),
  );
}

/** Moves devices so that a network conducts. */
function close(network: Network, positions: Partial<Record<Device, boolean>>, random: () => number): void {
  if (isContact(network)) positions[network.device] = network.kind === 'make';
  else if ('series' in network) for (const part of network.series) close(part, positions, random);
  else if (network.parallel.length > 0)
    close(network.parallel[Math.floor(random() * network.parallel.length)]!, positions, random);
}

/** Lehmer's generator with the multiplier 48271 of Park and Miller. */
function generator(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}
