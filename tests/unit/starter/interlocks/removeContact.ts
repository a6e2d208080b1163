import type { Branch, ControlCircuit, Network } from '../../../../src/starter/control/controlCircuit.ts';
import { isContact } from '../../../../src/starter/control/controlCircuit.ts';

/** A circuit that lacks one contact: a wire is in its place. */
export interface Mutation {
  /** Where it stood: coil (or feed), device, terminals. */
  readonly contact: string;
  readonly circuit: ControlCircuit;
}

interface Variant {
  readonly contact: string;
  readonly network: Network;
}

/** Every contact of a network removed in turn, from the table itself, so that none is forgotten. */
function variants(network: Network): Variant[] {
  if (isContact(network))
    return [
      {
        contact: `${network.device} ${network.kind} ${network.terminals}`,
        network: { series: [] },
      },
    ];
  const parts = 'series' in network ? network.series : network.parallel;
  return parts.flatMap((part, i) =>
    variants(part).map((variant) => {
      const changed = parts.with(i, variant.network);
      return {
        contact: variant.contact,
        network: 'series' in network ? { series: changed } : { parallel: changed },
      };
    }),
  );
}

/** Every circuit that lacks one contact of the given one. */
export function mutations(circuit: ControlCircuit): readonly Mutation[] {
  const inFeed = variants(circuit.feed).map(({ contact, network }) => ({
    contact: `feed: ${contact}`,
    circuit: { ...circuit, feed: network },
  }));
  const inCoils = circuit.coils.flatMap((coil, i) => {
    const at = (contact: string, changed: Partial<typeof coil>): Mutation => ({
      contact: `${coil.coil}: ${contact}`,
      circuit: { ...circuit, coils: circuit.coils.with(i, { ...coil, ...changed }) },
    });
    return [
      ...variants(coil.guard).map(({ contact, network }) => at(contact, { guard: network })),
      ...coil.branches.flatMap((branch, j) =>
        variants(branch.network).map(({ contact, network }) => {
          const changed: Branch = { ...branch, network };
          return at(`${branch.purpose}: ${contact}`, { branches: coil.branches.with(j, changed) });
        }),
      ),
    ];
  });
  return [...inFeed, ...inCoils];
}
