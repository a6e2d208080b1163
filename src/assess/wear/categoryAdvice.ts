import type { ContactorData, DutyData } from '../../scenario/scenario.ts';
import { STANDARD_LIMITS } from '../standardLimits.ts';
import { CATEGORY_RULE } from './breakingCategory.ts';
import type { BreakingWear } from './contactWearTypes.ts';

/** The utilisation category a contactor should be chosen by, and what goes with it. */
export interface CategoryAdvice {
  readonly recommendedCategory: 'AC-3' | 'AC-4' | null;
  readonly categoryReason: string;
  readonly mostOperationsPerHour: number | null;
}

const MINUTES_PER_HOUR = 60;

/**
 * AC-4 (IEC 60947-4-1: starting, plugging, inching) where any breaking of the duty is AC-4-like, else AC-3 (starting, and
 * switching off while running), whatever the contactor is called.
 *
 * @param breakings those that occur in the duty
 */
export function categoryAdvice(
  device: ContactorData,
  breakings: readonly BreakingWear[],
  duty: DutyData | null,
): CategoryAdvice {
  if (breakings.length === 0)
    return {
      recommendedCategory: null,
      categoryReason: 'no breaking of this contactor is known',
      mostOperationsPerHour: null,
    };
  const hardest = breakings.reduce((a, b) => (b.life.operations < a.life.operations ? b : a));
  const heavy = breakings.find(({ category }) => category === 'AC-4-like');
  const shown = heavy === undefined || hardest.category === 'AC-4-like' ? hardest : heavy;
  const multiple = shown.current / device.ratedCurrentAc3;
  const recommendedCategory = heavy === undefined ? 'AC-3' : 'AC-4';
  return {
    recommendedCategory,
    categoryReason:
      `utilisation category of IEC 60947-4-1: its hardest breaking is ${shown.category}, ${Number(shown.current.toPrecision(3))} A ` +
      `(${Number(multiple.toPrecision(2))} times its rated current in AC-3) against ${Number(shown.recoveryVoltage.toPrecision(3))} V; ` +
      `${CATEGORY_RULE}${oftenWords(duty)}`,
    mostOperationsPerHour:
      recommendedCategory === 'AC-3' ? device.operationsPerHourAc3 : device.operationsPerHourAc4,
  };
}

/** Where plugging and inching come so often that North American practice asks for a rating of their own. */
function oftenWords(duty: DutyData | null): string {
  if (duty === null || duty.operationsPerHour === null) return '';
  const perTenMinutes = (duty.operationsPerHour * (duty.pluggingShare + duty.inchingShare)) / 6;
  const { plugDutyPerMinute, plugDutyPerTenMinutes } = STANDARD_LIMITS;
  const often =
    perTenMinutes > plugDutyPerTenMinutes.value ||
    (perTenMinutes * 6) / MINUTES_PER_HOUR > plugDutyPerMinute.value;
  return often
    ? `; with ${perTenMinutes.toPrecision(3)} plug stops and inchings in ten minutes this is plugging and jogging duty (${plugDutyPerTenMinutes.source})`
    : '';
}
