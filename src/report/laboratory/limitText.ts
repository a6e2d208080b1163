import type { LimitPassed } from '../../survey/laboratory/limits.ts';
import { formatNumber, formatQuantity } from '../formatQuantity.ts';
import type { LaboratoryOptions } from './laboratoryOptions.ts';

const TURN = 2 * Math.PI;

/** A limit that a step may pass; on a blank sheet without the prediction, for the warning is needed there as well. */
export function limitSentence(
  { key, words, consequence, value, most, unit }: LimitPassed,
  { units, blank }: Pick<LaboratoryOptions, 'units' | 'blank'>,
): string {
  const show = (size: number) => {
    if (unit === 'rad' && size > TURN) return `${formatNumber(size / TURN)} rev`;
    return formatQuantity(size, unit, { system: units });
  };
  const named =
    key === 'instantaneousTrip'
      ? `the crest of its setting, ${show(most)} (√2 × limits.${key})`
      : `its limit of ${show(most)} (limits.${key})`;
  return `${words} may go beyond ${named}${blank ? '' : `: it may reach ${show(value)}`}. ${consequence}`;
}
