import type { Alternative } from '../survey/alternatives/alternative.ts';
import { formatQuantity, type UnitSystem } from './formatQuantity.ts';

/** Follows a value that was set. */
const PLACES = { Ω: ' per line', A: '', s: '' } as const;

/** What was set for a way to stop: the value with its unit, then where it comes from; empty where nothing is set. */
export function settingText({ chosen, setting }: Alternative, units: UnitSystem): string {
  const value =
    chosen === null
      ? ''
      : `${formatQuantity(chosen.value, chosen.unit, { system: units })}${PLACES[chosen.unit]}`;
  return [value, setting].filter((text) => text !== '').join(', ');
}
