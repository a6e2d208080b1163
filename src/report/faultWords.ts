import type { StarterFault } from '../scenario/scenario.ts';
import { formatInstant } from './formatQuantity.ts';

const SWITCH_MODES = {
  stuckClosed: 'is stuck closed: once actuated its contacts stay so',
  stuckOpen: 'is stuck open: its make contacts never close',
  doesNotPickUp: 'does not pick up: nothing ever actuates its contacts',
} as const;

/** A fault of the installation in words. */
export function faultWords(fault: StarterFault): string {
  switch (fault.kind) {
    case 'lostPhase':
      return `supply phase ${fault.phase} is lost from ${formatInstant(fault.from)} on`;
    case 'weldedPole':
      return `pole ${fault.pole} of the ${fault.contactor} contactor is welded: once closed it does not part`;
    case 'deadPole':
      return `pole ${fault.pole} of the ${fault.contactor} contactor is dead: it never touches`;
    case 'weldedContactor':
      return `the ${fault.contactor} contactor is welded: once closed poles and armature stay in`;
    case 'zeroSpeedSwitch':
      return `the zero-speed switch ${SWITCH_MODES[fault.mode]}`;
    case 'auxiliaryContact': {
      const contact = fault.contact === 'holdIn' ? 'hold-in' : 'interlock';
      return `the ${contact} contact of the ${fault.contactor} contactor is stuck ${fault.stuck}`;
    }
    case 'overloadNeverTrips':
      return 'the overload relay never trips, however hot';
    case 'supplyLost':
      return fault.until === null
        ? `the supply is lost from ${formatInstant(fault.from)} on`
        : `the supply is lost from ${formatInstant(fault.from)} to ${formatInstant(fault.until)}`;
    case 'mechanicalInterlockMissing':
      return 'the mechanical interlock is missing: both contactors can be in at once';
    default:
      return fault satisfies never;
  }
}
