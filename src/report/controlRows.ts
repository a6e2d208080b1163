import type {
  CoilVoltageData,
  ControlData,
  EmergencyStopData,
  OverloadData,
  StarterData,
} from '../scenario/scenario.ts';
import { circuitOfStarter } from '../starter/control/schemes.ts';
import { formatPercent } from './formatQuantity.ts';
import { type InputFormat, type InputRow, inputRow as row } from './inputRow.ts';

/** The control circuit's part of the inputs table; nothing where there is none. */
export function controlRows(starter: StarterData, format: InputFormat): InputRow[] {
  const { control } = starter;
  const circuit = circuitOfStarter(starter);
  if (control === undefined || circuit === null) return [];
  const { ms } = format;
  const brakes = circuit.coils.some(({ branches }) => branches.some(({ purpose }) => purpose === 'brake'));
  return [
    row('Control circuit', circuit.title),
    ...(brakes ? [row('Braking by reverse current', RESERVATION)] : []),
    ...relayRows(control),
    row('Emergency stop', stopWords(control.emergencyStop, format)),
    ...(control.changeoverTimer === 0 ? [] : [row('Change-over timer', ms(control.changeoverTimer))]),
    row('Mechanical interlock', control.mechanicalInterlock ? 'between the contactors' : 'none'),
    row('Auxiliary relays, coil to contacts', ms(control.relayTime)),
    row('Control', control.scanTime === 0 ? 'wired' : `a program that scans every ${ms(control.scanTime)}`),
    row('Coils', coilWords(control.coilVoltage)),
    row('Overload relay', overloadWords(control.overload, format)),
  ];
}

/** Clause on reverse-current braking, from memory. */
const RESERVATION =
  'IEC 60204-1: must not start the machine the other way; a device working only on time is not permitted; turning the shaft by hand must not start it';

function relayRows({ memoryRelay, readyRelay }: ControlData): InputRow[] {
  return [
    ...(memoryRelay ? [row('Memory relay', 'braking only after a contactor has driven the machine')] : []),
    ...(readyRelay
      ? [row('Ready relay', 'starting only after the reset button; drops with the supply')]
      : []),
  ];
}

function stopWords(stop: EmergencyStopData, { show }: InputFormat): string {
  return stop.category === 0
    ? 'category 0 of IEC 60204-1: both coils drop at once'
    : `category 1 of IEC 60204-1: brakes until the zero-speed switch opens, at most ${show(stop.limit, 's')}; then both coils are dead`;
}

function coilWords(voltage: CoilVoltageData | null): string {
  return voltage === null
    ? 'whatever the voltage, as long as it is there'
    : `pick up above ${formatPercent(voltage.pickUp)}, drop out below ${formatPercent(voltage.dropOut)} of rated control voltage`;
}

function overloadWords(overload: OverloadData | null, { show }: InputFormat): string {
  if (overload === null) return 'its heating is not simulated';
  const { setting, tripClass, start, memory } = overload;
  return `set to ${show(setting, 'A')}, class ${tripClass}, ${start} at t = 0, memory ${memory} without supply`;
}
