import { WORD_OF_SCHEME } from './controlWords.ts';
import type { ControlData, EmergencyStopData, OverloadData } from './starterData.ts';
import { writeQuantity as write } from './writeQuantity.ts';

/** The control circuit of a file, in SI units with all digits. */
export function renderControl(control: ControlData): Readonly<Record<string, unknown>> {
  const { coilVoltage, overload } = control;
  return {
    scheme: WORD_OF_SCHEME[control.scheme],
    memoryRelay: control.memoryRelay,
    readyRelay: control.readyRelay,
    emergencyStop: renderEmergencyStop(control.emergencyStop),
    changeoverTimer: write(control.changeoverTimer, 's'),
    mechanicalInterlock: control.mechanicalInterlock,
    relayTime: write(control.relayTime, 's'),
    scanTime: write(control.scanTime, 's'),
    coilVoltage:
      coilVoltage === null ? 'ignored' : { pickUp: coilVoltage.pickUp, dropOut: coilVoltage.dropOut },
    overload: overload === null ? 'none' : renderOverload(overload),
  };
}

function renderEmergencyStop(stop: EmergencyStopData): Readonly<Record<string, unknown>> {
  return stop.category === 0 ? { category: 0 } : { category: 1, limit: write(stop.limit, 's') };
}

function renderOverload({
  setting,
  tripClass,
  start,
  memory,
}: OverloadData): Readonly<Record<string, unknown>> {
  const written = tripClass === '10A' ? tripClass : Number(tripClass);
  return { setting: write(setting, 'A'), class: written, start, memory };
}
