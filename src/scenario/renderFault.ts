import type { StarterFault } from './starterData.ts';
import { writeQuantity as write } from './writeQuantity.ts';

const MODES = {
  stuckClosed: 'stuck closed',
  stuckOpen: 'stuck open',
  doesNotPickUp: 'does not pick up',
} as const;

/** A fault of a file, in SI units with all digits. */
export function renderFault(fault: StarterFault): Readonly<Record<string, string>> {
  switch (fault.kind) {
    case 'lostPhase':
      return { kind: 'lost phase', phase: fault.phase, at: write(fault.from, 's') };
    case 'weldedPole':
      return { kind: 'welded pole', contactor: fault.contactor, pole: fault.pole };
    case 'deadPole':
      return { kind: 'dead pole', contactor: fault.contactor, pole: fault.pole };
    case 'weldedContactor':
      return { kind: 'welded contactor', contactor: fault.contactor };
    case 'zeroSpeedSwitch':
      return { kind: 'zero-speed switch', mode: MODES[fault.mode] };
    case 'auxiliaryContact':
      return {
        kind: 'auxiliary contact',
        contactor: fault.contactor,
        contact: fault.contact === 'holdIn' ? 'hold-in' : 'interlock',
        stuck: fault.stuck,
      };
    case 'overloadNeverTrips':
      return { kind: 'overload never trips' };
    case 'supplyLost': {
      const until = fault.until === null ? 'never' : write(fault.until, 's');
      return { kind: 'supply lost', at: write(fault.from, 's'), until };
    }
    case 'mechanicalInterlockMissing':
      return { kind: 'mechanical interlock missing' };
    default:
      return fault satisfies never;
  }
}
