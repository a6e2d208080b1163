import { contactorTimes } from '../contactorTimes.ts';
import { brakes } from '../controlWords.ts';
import { defaultRelayTime } from '../defaults.ts';
import type { ControlData, Scenario, SchemeName, StarterData, StarterFault } from '../scenario.ts';
import { FAULT_NAMES } from './faultFields.ts';

/**
 * What another control circuit, or none, takes out of a scenario, in words; what it would put in again by itself is not lost.
 *
 * @param scheme null: commands act on the coils
 */
export function lostWith(scenario: Scenario, scheme: SchemeName | null): readonly string[] {
  const { starter } = scenario;
  const { control } = starter;
  if ((control?.scheme ?? null) === scheme) return [];
  const lost =
    control === undefined
      ? stated(starter)
      : scheme === null
        ? allOf(control)
        : brakes(scheme)
          ? []
          : braking(control);
  return [...lost, ...aroundIt(scenario, scheme)];
}

/** The dead time of a starter without a control circuit, where it is not what the contactors make of themselves. */
function stated({ closingTime, openingTime, changeoverDelay }: StarterData): string[] {
  const own = contactorTimes({ closingTime, openingTime }).changeoverDelay;
  return changeoverDelay === own ? [] : ['dead time of the contacts'];
}

function allOf(control: ControlData): string[] {
  const { readyRelay, changeoverTimer, relayTime, scanTime, coilVoltage, mechanicalInterlock, overload } =
    control;
  return words([
    ...braking(control).map((one) => [one, true] as const),
    ['ready relay', readyRelay],
    ['change-over timer', changeoverTimer > 0],
    ['time of the auxiliary relays', relayTime !== defaultRelayTime],
    ['scan time of the program', scanTime > 0],
    ['voltages of the coils', coilVoltage !== null],
    ['that no mechanical interlock is fitted', !mechanicalInterlock],
    ['warm start of the overload relay', overload?.start === 'warm'],
    ['that the overload relay forgets without its supply', overload?.memory === 'lost'],
  ]);
}

/** What only a circuit that brakes has. */
function braking({ memoryRelay, emergencyStop }: ControlData): string[] {
  return words([
    ['memory relay', memoryRelay],
    ['emergency stop of category 1', emergencyStop.category === 1],
  ]);
}

/** What stands outside the control circuit and goes with it. */
function aroundIt({ starter, initial, actions }: Scenario, scheme: SchemeName | null): string[] {
  const lockout = starter.zeroSpeedSwitch?.lockout === true;
  const faults = (starter.faults ?? []).filter((fault) => !canBe(fault, scheme));
  const hands = new Set(actions.map((action) => ('button' in action ? action.button : null)));
  const oneWay = scheme === 'plugStop';
  return [
    ...words([
      ['lock-out of the zero-speed switch', lockout && (scheme === null || scheme === 'antiPlugging')],
      ['presses of reset', scheme === null && (hands.has('reset') || hands.has('overloadReset'))],
      ['presses of reverse', oneWay && hands.has('reverse')],
      [
        'that the machine runs at first',
        (scheme === 'jog' && initial !== 'rest') || (oneWay && initial === 'runningReverse'),
      ],
    ]),
    ...faults.map(({ kind }) => `fault: ${FAULT_NAMES[kind]}`),
  ];
}

function canBe(fault: StarterFault, scheme: SchemeName | null): boolean {
  switch (fault.kind) {
    case 'overloadNeverTrips':
    case 'mechanicalInterlockMissing':
      return scheme !== null;
    case 'auxiliaryContact':
      if (scheme === null) return false;
      return !(
        fault.contact === 'holdIn' &&
        (scheme === 'jog' || (scheme === 'plugStop' && fault.contactor === 'reverse'))
      );
    default:
      return true;
  }
}

function words(all: readonly (readonly [string, boolean])[]): string[] {
  return all.filter(([, is]) => is).map(([one]) => one);
}
