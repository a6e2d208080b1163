import { capital } from '../judgement/judgedText.ts';
import { JUDGEMENT_FIELDS } from './judgementFields.ts';

/**
 * Words for the numbers of a scenario that are varied most. `#` stands for a position in a list, `{n}` for the first of them
 * counted from 1 and `{m}` for the second.
 */
const WORDS: Readonly<Record<string, string>> = {
  ...JUDGEMENT_FIELDS,
  'supply.angle': 'supply angle at t = 0',
  'supply.lineVoltage': 'line voltage',
  'supply.frequency': 'supply frequency',
  'supply.shortCircuitPower': 'short-circuit power of the supply',
  'supply.sourceResistance': 'source resistance per phase',
  'supply.sourceReactance': 'source reactance per phase',
  'supply.sourceInductance': 'source inductance per phase',
  'machine.statorResistance': 'stator resistance',
  'machine.statorLeakage': 'stator leakage',
  'machine.magnetising': 'magnetising inductance or reactance',
  'machine.inertia': 'rotor inertia',
  'machine.cages.#.resistance': 'resistance of cage {n}',
  'machine.cages.#.leakage': 'leakage of cage {n}',
  'machine.rated.power': 'rated power',
  'machine.rated.speed': 'rated speed',
  'machine.rated.current': 'rated current',
  'load.inertia': 'load inertia',
  'load.torque.torque': 'load torque',
  'load.torque.breakaway': 'breakaway torque of the load',
  'load.torque.coefficient': 'coefficient of the load torque',
  'load.torque.#.torque': 'load torque {n}',
  'load.torque.#.breakaway': 'breakaway torque of load torque {n}',
  'load.torque.#.coefficient': 'coefficient of load torque {n}',
  'load.gear.ratio': 'gear ratio',
  'load.coupling.stiffness': 'coupling stiffness',
  'load.coupling.damping': 'coupling damping',
  'load.coupling.backlash': 'free play of the coupling',
  'starter.closingTime': 'closing time of the contactors',
  'starter.openingTime': 'opening time of the contactors',
  'starter.closingScatter.#': 'closing scatter of pole {n}',
  'starter.openingScatter.#': 'opening scatter of pole {n}',
  'starter.changeoverDelay': 'change-over delay between the coils',
  'starter.deadTime': 'dead time',
  'starter.minimumArcingTime': 'shortest arcing time',
  'starter.zeroSpeedSwitch.dropOutSpeed': 'drop-out speed of the zero-speed switch',
  'starter.zeroSpeedSwitch.pickUpSpeed': 'pick-up speed of the zero-speed switch',
  'starter.zeroSpeedSwitch.delay': 'delay of the zero-speed switch',
  'starter.zeroSpeedSwitch.reverse.dropOutSpeed': 'drop-out speed of the zero-speed switch in reverse',
  'starter.zeroSpeedSwitch.reverse.pickUpSpeed': 'pick-up speed of the zero-speed switch in reverse',
  'starter.lineResistors.resistance': 'line resistance while plugging',
  'starter.lineResistors.closingTime': 'closing time of the bypass contactor',
  'starter.lineResistors.openingTime': 'opening time of the bypass contactor',
  'starter.lineResistors.bypassAfter': 'time until the line resistors are bypassed',
  'starter.brake.torque': 'torque of the brake',
  'starter.brake.delay': 'delay of the brake',
  'starter.injection.voltage': 'voltage of the direct current',
  'starter.injection.resistance': 'resistance of the source of direct current',
  'starter.injection.delay': 'delay of the direct current',
  'starter.injection.closingTime': 'closing time of the contactor for direct current',
  'starter.injection.duration': 'duration of the direct current',
  'starter.control.emergencyStop.limit': 'longest braking of the emergency stop',
  'starter.control.changeoverTimer': 'time of the change-over timer',
  'starter.control.relayTime': 'operating time of the auxiliary relays',
  'starter.control.scanTime': 'scan time of the control program',
  'starter.control.coilVoltage.pickUp': 'pick-up voltage of the coils',
  'starter.control.coilVoltage.dropOut': 'drop-out voltage of the coils',
  'starter.control.overload.setting': 'setting of the overload relay of the control circuit',
  'starter.faults.#.at': 'instant of fault {n}',
  'starter.faults.#.until': 'end of fault {n}',
  'actions.#.at': 'instant of action {n}',
};

/** What the field at a path is in words: "load inertia"; a path without words of its own is its own name. */
export function fieldWords(path: string): string {
  return wordsOf(path) ?? path;
}

/** The same to begin with: "Load inertia"; a raw path stays as the scenario spells it. */
export function fieldName(path: string): string {
  const words = wordsOf(path);
  return words === undefined ? path : capital(words);
}

function wordsOf(path: string): string | undefined {
  const steps = path.split('.');
  const words = WORDS[steps.map((step) => (/^\d+$/u.test(step) ? '#' : step)).join('.')];
  const [first, second] = steps.filter((step) => /^\d+$/u.test(step)).map((step) => String(Number(step) + 1));
  return words?.replace('{n}', first ?? '').replace('{m}', second ?? '');
}
