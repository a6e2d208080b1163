import { describe, expect, it } from 'vitest';
import type { StarterFault } from '../../../../src/scenario/scenario.ts';
import { allContacts } from '../../../../src/starter/control/controlCircuit.ts';
import { conducts } from '../../../../src/starter/control/evaluate.ts';
import { controlCircuit } from '../../../../src/starter/control/schemes.ts';
import { stuckContacts } from '../../../../src/starter/control/stuckContacts.ts';
import { controlOf } from './controlOf.ts';

/** Contacts of a circuit that a fault keeps from following their devices. */
function held(stated: Parameters<typeof controlOf>[0], fault: StarterFault): string[] {
  const stuck = stuckContacts([fault]);
  const circuit = controlCircuit(controlOf(stated), false);
  const follows = (contact: ReturnType<typeof allContacts>[number]) =>
    [true, false].every(
      (on) => conducts(contact, { [contact.device]: on }, stuck) === (on === (contact.kind === 'make')),
    );
  return allContacts(circuit)
    .filter((contact) => !follows(contact))
    .map(({ device, terminals }) => `${device} ${terminals}`);
}

const auxiliary = (contactor: 'forward' | 'reverse', contact: 'holdIn' | 'interlock'): StarterFault => ({
  kind: 'auxiliaryContact',
  contactor,
  contact,
  stuck: 'closed',
});

describe('contacts that a fault holds', () => {
  it('are the hold-in contact of the contactor alone, not its other make contacts', () => {
    expect(held({ scheme: 'plugStop', memoryRelay: true }, auxiliary('forward', 'holdIn'))).toEqual([
      'forwardContactor 13-14',
    ]);
  });

  it('are those of the run relay where it holds in, and never those of the ready relay', () => {
    expect(held({ scheme: 'plugStopBoth', readyRelay: true }, auxiliary('reverse', 'holdIn'))).toEqual([
      'reverseRun 13-14',
    ]);
    expect(held({ scheme: 'jog', readyRelay: true }, auxiliary('reverse', 'holdIn'))).toEqual([]);
  });

  it("are the break contact in the other contactor's circuit, not that of the change-over timer", () => {
    expect(held({ scheme: 'direct', changeoverTimer: 0.3 }, auxiliary('forward', 'interlock'))).toEqual([
      'forwardContactor 21-22',
    ]);
  });

  it('are every make contact of a zero-speed switch with a broken wire, and no break contact', () => {
    const broken: StarterFault = { kind: 'zeroSpeedSwitch', mode: 'stuckOpen' };
    expect(held({ scheme: 'plugStopBoth', memoryRelay: true }, broken)).toEqual([
      'switchForward 23-24',
      'switchReverse 43-44',
      'switchReverse 33-34',
      'switchForward 13-14',
    ]);
    expect(held({ scheme: 'antiPlugging' }, broken)).toEqual([]);
  });

  it('are none where the device itself is at fault', () => {
    for (const fault of [
      { kind: 'weldedContactor', contactor: 'forward' },
      { kind: 'zeroSpeedSwitch', mode: 'stuckClosed' },
      { kind: 'zeroSpeedSwitch', mode: 'doesNotPickUp' },
      { kind: 'overloadNeverTrips' },
      { kind: 'mechanicalInterlockMissing' },
    ] as const)
      expect(stuckContacts([fault])).toEqual([]);
  });
});
