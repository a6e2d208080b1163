import type { StarterFault } from '../../scenario/scenario.ts';
import { allContacts, type ControlCircuit } from '../control/controlCircuit.ts';
import { stuckContacts } from '../control/stuckContacts.ts';
import type { ExploreOptions } from './options.ts';

const SIDES = ['forward', 'reverse'] as const;

/** The device faults that can be asked of a circuit: those of devices and contacts it has. */
export function faultsOfCircuit(circuit: ControlCircuit, options: ExploreOptions): readonly StarterFault[] {
  const contacts = allContacts(circuit);
  const hasSwitch = contacts.some(({ device }) => device === 'switchForward' || device === 'switchReverse');
  const touches = (fault: StarterFault) =>
    stuckContacts([fault]).some(({ device, kind, role }) =>
      contacts.some((one) => one.device === device && one.kind === kind && one.role === role),
    );
  const auxiliary = SIDES.flatMap((contactor) =>
    (['holdIn', 'interlock'] as const).flatMap((contact) =>
      (['open', 'closed'] as const).map(
        (stuck): StarterFault => ({ kind: 'auxiliaryContact', contactor, contact, stuck }),
      ),
    ),
  );
  return [
    ...SIDES.map((contactor): StarterFault => ({ kind: 'weldedContactor', contactor })),
    ...(hasSwitch
      ? (['stuckClosed', 'stuckOpen', 'doesNotPickUp'] as const).map(
          (mode): StarterFault => ({ kind: 'zeroSpeedSwitch', mode }),
        )
      : []),
    ...auxiliary.filter(touches),
    ...(options.overload ? [{ kind: 'overloadNeverTrips' } as const] : []),
    ...(options.mechanicalInterlock ? [{ kind: 'mechanicalInterlockMissing' } as const] : []),
  ];
}
