import type { ControlData, StarterFault } from '../../../../src/scenario/scenario.ts';
import type { PropertyId } from '../../../../src/starter/interlocks/property.ts';

/**
 * What a device fault is expected to break that holds in the healthy starter, written from the circuits' descriptions before the
 * check existed (common practice, no source).
 */
export interface ExpectedFault {
  readonly fault: StarterFault;
  readonly breaks: readonly PropertyId[];
  readonly reason: string;
}

/** A starter and all faults that can be asked of it. */
export interface FaultForm {
  readonly name: string;
  readonly control: Partial<ControlData> & Pick<ControlData, 'scheme'>;
  readonly faults: readonly ExpectedFault[];
}

type Side = 'forward' | 'reverse';

const welded = (contactor: Side, breaks: readonly PropertyId[], reason: string): ExpectedFault => ({
  fault: { kind: 'weldedContactor', contactor },
  breaks,
  reason,
});
const auxiliary = (
  contactor: Side,
  contact: 'holdIn' | 'interlock',
  stuck: 'open' | 'closed',
  breaks: readonly PropertyId[],
  reason: string,
): ExpectedFault => ({ fault: { kind: 'auxiliaryContact', contactor, contact, stuck }, breaks, reason });
const zeroSpeedSwitch = (
  mode: 'stuckClosed' | 'stuckOpen' | 'doesNotPickUp',
  breaks: readonly PropertyId[],
  reason: string,
): ExpectedFault => ({ fault: { kind: 'zeroSpeedSwitch', mode }, breaks, reason });

/** A welded contactor drives on whatever its coil does. */
const DRIVES_ON: readonly PropertyId[] = [
  'emergencyStop',
  'overloadDropsBoth',
  'stopEndsRunning',
  'noStartAfterPowerReturns',
];

const neverTrips: ExpectedFault = {
  fault: { kind: 'overloadNeverTrips' },
  breaks: [],
  reason: 'the property says nothing about a relay that never trips',
};
const noMechanical = (breaks: readonly PropertyId[], reason: string): ExpectedFault => ({
  fault: { kind: 'mechanicalInterlockMissing' },
  breaks,
  reason,
});

const sealsItself =
  'its hold-in contact stays closed: its coil is energised again as soon as the feed is back';
const closedStarts = 'the coil needs no button: it is energised as soon as the feed is there';
const noHold = 'the machine runs only while the button is pressed';
const otherNever = 'the other contactor never closes';
const onlyOneOpens = 'the push buttons and the mechanical interlock still keep the two apart';

const both = (make: (side: Side) => ExpectedFault): ExpectedFault[] => [make('forward'), make('reverse')];

const holdInFaults = (closedBreaks: readonly PropertyId[], sides: readonly Side[]): ExpectedFault[] =>
  sides.flatMap((side) => [
    auxiliary(side, 'holdIn', 'open', [], noHold),
    auxiliary(side, 'holdIn', 'closed', closedBreaks, closedStarts),
  ]);

const interlockFaults = (closedBreaks: readonly PropertyId[], reason: string): ExpectedFault[] =>
  both((side) => auxiliary(side, 'interlock', 'open', [], otherNever)).concat(
    both((side) => auxiliary(side, 'interlock', 'closed', closedBreaks, reason)),
  );

const restarts: readonly PropertyId[] = ['noStartAfterReset', 'noStartAfterPowerReturns'];

const brakesAgainstCommand =
  'the braking branch is closed while the machine is driven, or a start button reaches a coil beside the braking one';

const switchFaults: readonly ExpectedFault[] = [
  zeroSpeedSwitch(
    'stuckClosed',
    ['brakeEndsWithSwitch'],
    'the braking contactor stays in and drives the machine up the other way',
  ),
  zeroSpeedSwitch('stuckOpen', [], 'nothing brakes: the machine coasts'),
  zeroSpeedSwitch('doesNotPickUp', [], 'nothing brakes: the machine coasts'),
];

/** Forms whose faults are all listed. */
export const FAULT_FORMS: readonly FaultForm[] = [
  {
    name: 'through stop',
    control: { scheme: 'throughStop' },
    faults: [
      ...both((side) => welded(side, [...DRIVES_ON, 'noStartAfterReset'], sealsItself)),
      ...holdInFaults(restarts, ['forward', 'reverse']),
      ...interlockFaults(
        ['neverBothCommanded'],
        'while one runs, the other button energises the second coil too',
      ),
      neverTrips,
      noMechanical(['neverBothClosed'], 'both buttons at the same instant: the armatures arrive together'),
    ],
  },
  {
    name: 'direct',
    control: { scheme: 'direct' },
    faults: [
      ...both((side) => welded(side, [...DRIVES_ON, 'noStartAfterReset'], sealsItself)),
      ...holdInFaults(restarts, ['forward', 'reverse']),
      ...interlockFaults([], onlyOneOpens),
      neverTrips,
      noMechanical([], 'push-button and contact interlock keep the coils apart'),
    ],
  },
  {
    name: 'anti-plugging',
    control: { scheme: 'antiPlugging' },
    faults: [
      ...both((side) => welded(side, [...DRIVES_ON, 'noStartAfterReset'], sealsItself)),
      ...holdInFaults(restarts, ['forward', 'reverse']),
      ...interlockFaults([], onlyOneOpens),
      zeroSpeedSwitch('stuckClosed', [], 'the opposite direction stays blocked'),
      zeroSpeedSwitch('stuckOpen', [], 'only break contacts are used, and they work'),
      zeroSpeedSwitch('doesNotPickUp', ['antiPlugging'], 'nothing blocks the opposite direction'),
      neverTrips,
      noMechanical([], 'push-button and contact interlock keep the coils apart'),
    ],
  },
  {
    name: 'plug to stop, memory and ready relay',
    control: { scheme: 'plugStop', memoryRelay: true, readyRelay: true },
    faults: [
      welded('forward', [...DRIVES_ON, 'noStartAfterReset'], `${sealsItself} and the ready relay set`),
      welded(
        'reverse',
        [
          'emergencyStop',
          'overloadDropsBoth',
          'stopEndsRunning',
          'noStartAfterPowerReturns',
          'brakeEndsWithSwitch',
        ],
        'the braking contactor does not let go: the machine runs up in reverse',
      ),
      ...holdInFaults(restarts, ['forward']),
      ...interlockFaults(['neverBothCommanded', 'neverBothCommandedBriefly'], brakesAgainstCommand),
      ...switchFaults,
      neverTrips,
      noMechanical([], 'the coils are never energised together'),
    ],
  },
  {
    name: 'plug to stop, both directions, memory and ready relays',
    control: { scheme: 'plugStopBoth', memoryRelay: true, readyRelay: true },
    faults: [
      ...both((side) =>
        welded(
          side,
          [...DRIVES_ON, 'brakeEndsWithSwitch'],
          'it drives on; the run relay, not the contactor, holds in',
        ),
      ),
      ...holdInFaults(restarts, ['forward', 'reverse']),
      ...interlockFaults(['neverBothCommanded', 'neverBothCommandedBriefly'], brakesAgainstCommand),
      ...switchFaults,
      neverTrips,
      noMechanical([], 'the coils are never energised together'),
    ],
  },
  {
    name: 'inching, memory and ready relays',
    control: { scheme: 'jog', memoryRelay: true, readyRelay: true },
    faults: [
      ...both((side) =>
        welded(side, [...DRIVES_ON, 'brakeEndsWithSwitch'], 'it drives on; nothing holds in'),
      ),
      ...interlockFaults(['neverBothCommanded', 'neverBothCommandedBriefly'], brakesAgainstCommand),
      ...switchFaults,
      neverTrips,
      noMechanical([], 'the coils are never energised together'),
    ],
  },
];
