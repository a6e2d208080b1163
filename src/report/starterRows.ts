import type {
  BrakeData,
  InjectionData,
  LineResistorData,
  StarterData,
  StarterFault,
  SwitchSpeeds,
  ZeroSpeedSwitchData,
} from '../scenario/scenario.ts';
import { controlRows } from './controlRows.ts';
import { faultWords } from './faultWords.ts';
import { type InputFormat, type InputRow, inputRow as row } from './inputRow.ts';

/** The starter's part of the inputs table. */
export function starterRows(starter: StarterData, format: InputFormat): InputRow[] {
  const { ms } = format;
  const { zeroSpeedSwitch, lineResistors } = starter;
  return [
    row('Coil energised to contacts touch', ms(starter.closingTime)),
    row('Coil released to contacts part', ms(starter.openingTime)),
    row('Closing scatter of poles A, B, C', starter.closingScatter.map(ms).join(', ')),
    row('Opening scatter of poles A, B, C', starter.openingScatter.map(ms).join(', ')),
    ...(starter.control === undefined
      ? [row('Change-over delay between the coils', ms(starter.changeoverDelay))]
      : []),
    row('Poles', starter.poles === 'arcing' ? 'arc to their own current zero' : 'ideal: interrupt at once'),
    row('Shortest arcing time', ms(starter.minimumArcingTime)),
    row('Phases exchanged in reverse', [...starter.exchangedPhases].join(' and ')),
    row('Zero-speed switch', zeroSpeedSwitch === null ? 'none' : switchWords(zeroSpeedSwitch, format)),
    ...(lineResistors === undefined ? [] : resistorRows(lineResistors, format)),
    ...(starter.plugConnection === undefined
      ? []
      : [
          row('Windings while plugging', `in ${starter.plugConnection}`),
          row('Delta winding A lies between terminals', [...(starter.windingOrder ?? 'AB')].join(' and ')),
        ]),
    ...(starter.brake === undefined ? [] : brakeRows(starter.brake, format)),
    ...(starter.injection === undefined ? [] : injectionRows(starter.injection, format)),
    ...controlRows(starter, format),
    ...(starter.faults ?? []).map((fault: StarterFault) => row('Fault', faultWords(fault))),
  ];
}

function switchWords(data: ZeroSpeedSwitchData, { show, ms }: InputFormat): string {
  const { reverse, lockout } = data;
  const speeds = ({ dropOutSpeed, pickUpSpeed }: SwitchSpeeds) =>
    `drops out below ${show(dropOutSpeed, 'rad/s')}, picks up above ${show(pickUpSpeed, 'rad/s')}`;
  return [
    speeds(data),
    ...(reverse === undefined ? [] : [`in reverse ${speeds(reverse)}`]),
    `delay ${ms(data.delay)}`,
    ...(lockout === undefined ? [] : ['with a lockout solenoid']),
  ].join(', ');
}

function resistorRows(resistors: LineResistorData, { show, ms }: InputFormat): InputRow[] {
  const { bypassAfter } = resistors;
  return [
    row('Line resistors while plugging, per phase', show(resistors.resistance, 'Ω')),
    row(
      'Bypass of the line resistors',
      bypassAfter === null
        ? 'not while the reversal lasts'
        : `its coil is energised ${show(bypassAfter, 's')} after the reversing coil`,
    ),
    row(
      'Bypass: coil to contacts touch, coil to contacts part',
      `${ms(resistors.closingTime)}, ${ms(resistors.openingTime)}`,
    ),
  ];
}

function brakeRows({ torque, delay, sets }: BrakeData, { show, ms }: InputFormat): InputRow[] {
  const when = sets === 'afterPlugging' ? 'on command and after plugging' : 'on command';
  return [
    row(
      'Mechanical brake at the motor shaft',
      `${show(torque, 'N·m')}, ${ms(delay)} after its coil is released, ${when}`,
    ),
  ];
}

function injectionRows(injection: InjectionData, { show, ms }: InputFormat): InputRow[] {
  const { voltage, resistance, delay, closingTime, duration } = injection;
  return [
    row('Direct current into terminals B and C', `${show(voltage, 'V')} behind ${show(resistance, 'Ω')}`),
    row('Direct current: command to coil, coil to contacts touch', `${ms(delay)}, ${ms(closingTime)}`),
    row(
      'Direct current flows',
      duration === null ? 'until the zero-speed switch opens' : `for ${show(duration, 's')}`,
    ),
  ];
}
