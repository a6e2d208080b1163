import { displayUnit, formatNumber, formatQuantity, type UnitSystem } from '../formatQuantity.ts';

/** Digits of a factor between units. */
const FACTOR_DIGITS = 5;

/**
 * The inertia as the formulas of the evaluation take it: so that J·ω² gives an energy and J times a slope of speed a torque in the
 * units of the sheet. Pounds of mass are no such unit.
 */
export function inertiaSentence(inertia: number, units: UnitSystem): string {
  const stated = formatQuantity(inertia, 'kg·m²', { system: units });
  const speeds = 'Speeds go in as rad/s: r/min times π/30.';
  if (units === 'SI')
    return `J, the inertia of all that turns, is ${stated}. ${speeds} Torques then come out in N·m and energies in joules.`;
  const torque = displayUnit('N·m', { system: units }).perSi;
  const divisor = displayUnit('kg·m²', { system: units }).perSi / torque;
  const perHeat = torque / displayUnit('J', { system: units }).perSi;
  return `J, the inertia of all that turns, is ${stated}, divided by ${divisor.toPrecision(FACTOR_DIGITS)}: ${formatNumber(torque * inertia)} lbf·ft·s². ${speeds} Torques then come out in lbf·ft and energies in ft·lbf; ${formatNumber(perHeat)} of these are 1 Btu.`;
}

/** An energy in the unit that the formulas give. */
export function energyText(energy: number, units: UnitSystem): string {
  const shown = formatQuantity(energy, 'J', { system: units });
  if (units === 'SI') return shown;
  return `${formatNumber(energy * displayUnit('N·m', { system: units }).perSi)} ft·lbf (${shown})`;
}
