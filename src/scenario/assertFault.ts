import type { Demands } from './demands.ts';
import type { StarterFault } from './starterData.ts';

const PHASES = ['A', 'B', 'C'] as const;
const CONTACTORS = ['forward', 'reverse'] as const;

/** Takes down what is impossible about a fault by itself. */
export function assertFault(fault: StarterFault, path: string, demands: Demands): void {
  const { group, word } = demands;
  switch (fault?.kind) {
    case 'lostPhase':
      word(`${path}.phase`, fault.phase, PHASES);
      group(path, fault, { from: 'notNegative' });
      break;
    case 'weldedPole':
    case 'deadPole':
      word(`${path}.contactor`, fault.contactor, CONTACTORS);
      word(`${path}.pole`, fault.pole, PHASES);
      break;
    case 'weldedContactor':
      word(`${path}.contactor`, fault.contactor, CONTACTORS);
      break;
    case 'zeroSpeedSwitch':
      word(`${path}.mode`, fault.mode, ['stuckClosed', 'stuckOpen', 'doesNotPickUp']);
      break;
    case 'auxiliaryContact':
      word(`${path}.contactor`, fault.contactor, CONTACTORS);
      word(`${path}.contact`, fault.contact, ['holdIn', 'interlock']);
      word(`${path}.stuck`, fault.stuck, ['open', 'closed']);
      break;
    case 'supplyLost':
      group(path, fault, { from: 'notNegative', ...(fault.until === null ? {} : { until: 'notNegative' }) });
      break;
    case 'overloadNeverTrips':
    case 'mechanicalInterlockMissing':
      break;
    default:
      word(`${path}.kind`, Reflect.get(Object(fault), 'kind'), KINDS);
  }
}

const KINDS = [
  'lostPhase',
  'weldedPole',
  'deadPole',
  'weldedContactor',
  'zeroSpeedSwitch',
  'auxiliaryContact',
  'overloadNeverTrips',
  'supplyLost',
  'mechanicalInterlockMissing',
] as const satisfies readonly StarterFault['kind'][];
