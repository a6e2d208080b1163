import type { ScenarioInput } from './scenarioInput.ts';
import type { StarterFault } from './starterData.ts';

/** A fault as read. */
export type FaultInput = NonNullable<NonNullable<ScenarioInput['starter']>['faults']>[number];

const MODES = {
  'stuck closed': 'stuckClosed',
  'stuck open': 'stuckOpen',
  'does not pick up': 'doesNotPickUp',
} as const;

/** A fault of the installation, its defaults filled in. */
export function resolveFault(fault: FaultInput): StarterFault {
  switch (fault.kind) {
    case 'lost phase':
      return { kind: 'lostPhase', phase: fault.phase, from: fault.at };
    case 'welded pole':
      return { kind: 'weldedPole', contactor: fault.contactor, pole: fault.pole };
    case 'dead pole':
      return { kind: 'deadPole', contactor: fault.contactor, pole: fault.pole };
    case 'welded contactor':
      return { kind: 'weldedContactor', contactor: fault.contactor };
    case 'zero-speed switch':
      return { kind: 'zeroSpeedSwitch', mode: MODES[fault.mode] };
    case 'auxiliary contact':
      return {
        kind: 'auxiliaryContact',
        contactor: fault.contactor,
        contact: fault.contact === 'hold-in' ? 'holdIn' : 'interlock',
        stuck: fault.stuck,
      };
    case 'overload never trips':
      return { kind: 'overloadNeverTrips' };
    case 'supply lost': {
      const until = fault.until ?? 'never';
      return { kind: 'supplyLost', from: fault.at, until: until === 'never' ? null : until };
    }
    case 'mechanical interlock missing':
      return { kind: 'mechanicalInterlockMissing' };
    default:
      return fault satisfies never;
  }
}
