import type { SourcedValue } from '../standardLimits.ts';

const typical = (value: number, unit: string, what: string): SourcedValue => ({
  value,
  unit,
  source: `assumed: ${what}`,
});

/** What is taken of a motor's heating where the scenario does not say it. None of it is a property of this motor. */
export const TYPICAL_THERMAL = {
  ratedRise: typical(
    80,
    'K',
    'the limit of class 130, which motors of class 155 commonly keep too (common practice, no source)',
  ),
  cageOverWinding: typical(
    20,
    'K',
    'the cage runs this much hotter than the winding at rated load (common practice, no source)',
  ),
  cageLimit: typical(300, '°C', 'an aluminium cage (common practice, no source)'),
  frameShare: typical(
    0.5,
    '1',
    'rise of core and frame over that of the winding at rated load (common practice, no source)',
  ),
  currentDensity: typical(
    5.5e6,
    'A/m²',
    'current density of the winding at rated load, 5.5 A/mm² (common practice, no source)',
  ),
  coolingTimeConstant: typical(
    1800,
    's',
    'half an hour, a small fan-cooled motor (common practice, no source)',
  ),
  standstillCooling: typical(
    0.3,
    '1',
    'a motor with a fan on its own shaft gives off this share of the heat at rest (common practice, no source)',
  ),
  cageEqualising: typical(
    20,
    's',
    'time constant with which the temperatures of outer and inner cage become equal (no source)',
  ),
} as const satisfies Record<string, SourcedValue>;

/** Copper: what its adiabatic heating depends on. */
export const COPPER = {
  /** Resistivity at 20 °C, Ω·m: IEC 60028. */
  resistivity: 1.7241e-8,
  /** Resistance is proportional to this plus the temperature in °C, K: IEC 60034-1. */
  zeroResistance: 235,
  /** Heat capacity of a volume, J/(m³·K): 8930 kg/m³ times 385 J/(kg·K), handbook values (from memory). */
  volumetricHeat: 3.44e6,
} as const;
