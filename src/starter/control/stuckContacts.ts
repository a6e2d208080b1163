import type { StarterFault } from '../../scenario/scenario.ts';
import type { StuckContact } from './evaluate.ts';

const CONTACTORS = { forward: 'forwardContactor', reverse: 'reverseContactor' } as const;
const RUN_RELAYS = { forward: 'forwardRun', reverse: 'reverseRun' } as const;

/**
 * The contacts that faults keep from following their devices. A fault of a whole device (a welded contactor, a switch that does
 * not let go or sees no speed) moves the device itself and leaves its contacts true to it: it adds none here.
 */
export function stuckContacts(faults: readonly StarterFault[]): readonly StuckContact[] {
  return faults.flatMap(stuckBy);
}

function stuckBy(fault: StarterFault): readonly StuckContact[] {
  if (fault.kind === 'zeroSpeedSwitch')
    return fault.mode === 'stuckOpen'
      ? [
          { device: 'switchForward', kind: 'make', stuck: 'open' },
          { device: 'switchReverse', kind: 'make', stuck: 'open' },
        ]
      : [];
  if (fault.kind !== 'auxiliaryContact') return [];
  const { contactor, contact, stuck } = fault;
  if (contact === 'interlock')
    return [{ device: CONTACTORS[contactor], kind: 'break', role: 'interlock', stuck }];
  // The run relay holds the machine in where there is one, the contactor itself elsewhere; a circuit has one of the two.
  return [
    { device: CONTACTORS[contactor], kind: 'make', role: 'holdIn', stuck },
    { device: RUN_RELAYS[contactor], kind: 'make', role: 'holdIn', stuck },
  ];
}
