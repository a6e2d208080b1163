import type { SourcedValue } from '../standardLimits.ts';
import type { ParameterOrigin, ThermalParameter } from './thermalNetwork.ts';

/** What the scenario states, else a typical or standard value, with its origin. */
export function givenOr(
  name: string,
  given: number | null | undefined,
  otherwise: SourcedValue,
  origin: ParameterOrigin = 'assumed',
): ThermalParameter {
  if (given !== null && given !== undefined)
    return { name, value: given, unit: otherwise.unit, origin: 'given', source: 'scenario' };
  return { name, value: otherwise.value, unit: otherwise.unit, origin, source: otherwise.source };
}

/** A value computed from others. */
export function derivedParameter(
  name: string,
  value: number,
  unit: string,
  source: string,
): ThermalParameter {
  return { name, value, unit, origin: 'derived', source };
}
