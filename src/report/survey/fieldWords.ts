import { capital } from '../judgement/judgedText.ts';

/**
 * Words for the numbers of a scenario that are varied most. `#` stands for a position in a list and `{n}`
 * for it counted from 1.
 */
const WORDS: Readonly<Record<string, string>> = {
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
  'starter.lineResistors.resistance': 'line resistance while plugging',
  'duty.operationsPerHour': 'operations per hour',
  'duty.operationsPerDay': 'operations per day',
  'duty.cyclicDurationFactor': 'cyclic duration factor',
  'duty.runningTime': 'running time of a cycle',
  'duty.pluggingShare': 'share of operations that plug',
  'duty.inchingShare': 'share of operations that inch',
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
  const position = steps.find((step) => /^\d+$/u.test(step));
  return words?.replace('{n}', String(Number(position) + 1));
}
