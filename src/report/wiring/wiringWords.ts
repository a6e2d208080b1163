import type { StarterData } from '../../scenario/scenario.ts';
import {
  type Contact,
  type ControlCircuit,
  DESIGNATIONS,
  isContact,
  type Network,
} from '../../starter/control/controlCircuit.ts';

/** Stands on every sheet. */
export const WIRING_CAUTION =
  'Not for construction without review. Local codes and a licensed electrician decide.';

/** What the drawing does not say by itself. */
export function wiringNotes(starter: StarterData): readonly string[] {
  return [
    'Drawn at rest: no voltage, no button pressed, shaft at rest.',
    ...((starter.control?.scanTime ?? 0) > 0
      ? [
          'A program stands in for the contacts above the interlocks: there the paths show its logic, not wires.',
        ]
      : []),
    ...(starter.lineResistors === undefined
      ? []
      : ['The coil of K10 is not in the control circuit drawn here.']),
    ...(starter.plugConnection === undefined
      ? []
      : ['The contactors that connect the windings in star while plugging are not drawn.']),
  ];
}

/** A control circuit in words, coil by coil, for people who cannot see the drawing. */
export function circuitInWords(circuit: ControlCircuit): string {
  const feed = networkInWords(circuit.feed);
  const coils = circuit.coils.map((coil) => {
    const branches = coil.branches.map(({ network }) => networkInWords(network));
    const guard = networkInWords(coil.guard);
    const ways = branches.length > 1 ? `(${branches.join(' or ')})` : branches.join('');
    const conditions = [ways, guard].filter((words) => words !== '').join(' and ');
    const source = coil.aheadOfFeed === true ? ', ahead of the feed' : '';
    return `Coil ${DESIGNATIONS[coil.coil]}${source}: ${conditions}.`;
  });
  return [`Feed: ${feed}.`, ...coils].join(' ');
}

function networkInWords(network: Network): string {
  if (isContact(network)) return contactInWords(network);
  if ('series' in network)
    return network.series
      .map(networkInWords)
      .filter((words) => words !== '')
      .join(' and ');
  return `(${network.parallel.map(networkInWords).join(' or ')})`;
}

function contactInWords({ device, kind, terminals }: Contact): string {
  return `${DESIGNATIONS[device]} ${terminals} (${kind})`;
}
