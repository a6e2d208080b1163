import type { Problem } from '../../scenario/problem.ts';

/** What a table of starters calls the keys of a scenario that its cells fill. */
const COLUMNS: Readonly<Record<string, string>> = {
  'machine.nameplate': 'nameplate',
  'machine.nameplate.power': 'power',
  'machine.nameplate.speed': 'speed',
  'machine.nameplate.current': 'rated current',
  'machine.nameplate.powerFactor': 'power factor',
  'machine.nameplate.efficiency': 'efficiency',
  'machine.nameplate.lockedRotorCurrent': 'locked-rotor current',
  'machine.nameplate.codeLetter': 'code letter',
  'machine.nameplate.lockedRotorTorque': 'locked-rotor torque',
  'machine.nameplate.breakdownTorque': 'breakdown torque',
  'machine.nameplate.design': 'design',
  'machine.nameplate.inertia': 'rotor inertia',
  'machine.poles': 'poles',
  'supply.lineVoltage': 'voltage',
  'supply.frequency': 'frequency',
  'load.inertia': 'load inertia',
  'load.torque': 'load torque',
  'load.torque.torque': 'load torque',
};

/** Why a row cannot be planned, in the words of its table instead of those of the scenario made of it. */
export function reasonOf({ path, message, expected }: Problem): string {
  // The only state that such a scenario begins with is steady running.
  if (path === 'initial')
    return 'the motor cannot drive this load at any steady speed (power, load kind, load torque)';
  return `${COLUMNS[path] ?? 'data that contradict each other:'} ${message}; expected ${expected}`;
}
