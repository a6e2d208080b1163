import { contradiction } from './contradiction.ts';
import { SCHEME_OF_WORD } from './controlWords.ts';
import { defaultRelayTime } from './defaults.ts';
import { derivedValue, type Note, within } from './origin.ts';
import type { ScenarioInput } from './scenarioInput.ts';
import type { ControlData, EmergencyStopData, OverloadData } from './starterData.ts';
import { stated } from './stated.ts';

type ControlInput = NonNullable<NonNullable<ScenarioInput['starter']>['control']>;

/**
 * Fills in the control circuit.
 *
 * @param input as stated, in SI
 * @param ratedCurrent of the machine, A; null where it is not known
 * @param note takes down what was not given
 */
export function resolveControl(input: ControlInput, ratedCurrent: number | null, note: Note): ControlData {
  const noteDefault = (key: keyof ControlInput, value: string) => {
    if (input[key] === undefined) note(key, value, 'default');
  };
  noteDefault('memoryRelay', 'no');
  noteDefault('readyRelay', 'no');
  if (input.emergencyStop === undefined) note('emergencyStop.category', '0', 'default');
  noteDefault('changeoverTimer', '0 ms');
  noteDefault('mechanicalInterlock', 'yes');
  if (input.relayTime === undefined)
    note(
      'relayTime',
      derivedValue(defaultRelayTime * 1e3, 'ms'),
      'assumed',
      'typical of small auxiliary relays, common practice, no source',
    );
  noteDefault('scanTime', '0 ms');
  noteDefault('coilVoltage', 'ignored');
  noteDefault('overload', 'none');
  const coilVoltage = input.coilVoltage ?? 'ignored';
  return {
    scheme: SCHEME_OF_WORD[input.scheme],
    memoryRelay: input.memoryRelay ?? false,
    readyRelay: input.readyRelay ?? false,
    emergencyStop: resolveEmergencyStop(input.emergencyStop),
    changeoverTimer: input.changeoverTimer ?? 0,
    mechanicalInterlock: input.mechanicalInterlock ?? true,
    relayTime: input.relayTime ?? defaultRelayTime,
    scanTime: input.scanTime ?? 0,
    coilVoltage:
      coilVoltage === 'ignored' ? null : { pickUp: coilVoltage.pickUp, dropOut: coilVoltage.dropOut },
    overload: resolveOverload(input.overload ?? 'none', ratedCurrent, within('overload', note)),
  };
}

function resolveEmergencyStop(input: ControlInput['emergencyStop']): EmergencyStopData {
  if (input === undefined || input.category === 0) return { category: 0 };
  return { category: 1, limit: stated(input.limit, 'limit') };
}

function resolveOverload(
  input: NonNullable<ControlInput['overload']>,
  ratedCurrent: number | null,
  note: Note,
): OverloadData | null {
  if (input === 'none') return null;
  const setting = input.setting ?? ratedCurrent;
  if (setting === null) {
    const message = 'states no setting, and no rated current is known';
    throw contradiction('starter.control.overload', 'a group of keys', message, 'a setting such as `14.6 A`');
  }
  if (input.setting === undefined)
    note('setting', derivedValue(setting, 'A'), 'derived', 'rated current of the machine');
  if (input.start === undefined) note('start', 'cold', 'default');
  if (input.memory === undefined) note('memory', 'kept', 'default');
  return {
    setting,
    tripClass: input.class,
    start: input.start ?? 'cold',
    memory: input.memory ?? 'kept',
  };
}
