import type { Limit, LimitsData, Scenario } from '../scenario/scenario.ts';
import { type Criterion, type CriterionParts, judged, notJudged, waived } from './criterion.ts';

/** A value that was found, or why there is none. */
export type Found = { readonly value: number } | { readonly missing: string };

/** A criterion before value and limit are known. */
export type Question = Pick<CriterionParts, 'key' | 'name' | 'unit' | 'limitIs' | 'required' | 'remark'>;

/** Limits that are a number, `none` or not known. */
export type LimitKey = Exclude<keyof LimitsData, 'decelerationRadius'>;

/** A limit as the scenario states it; null: not known. */
export function limitOf(scenario: Pick<Scenario, 'limits'>, key: LimitKey): Limit {
  return scenario.limits?.[key] ?? null;
}

/** Words for the source of a limit that the user sets. */
export function givenIn(...keys: readonly LimitKey[]): string {
  return `${keys.map((key) => `limits.${key}`).join(', ')}, given in the scenario`;
}

/**
 * Judges a value against a limit of the user: waived where the scenario states that none applies, not judged where value or limit
 * is missing.
 *
 * @param convert from the stated limit to that of the value, in the value's unit
 */
export function againstGiven(
  question: Question,
  found: Found,
  scenario: Pick<Scenario, 'limits'>,
  key: LimitKey,
  convert: (stated: number) => number = (stated) => stated,
): Criterion {
  const stated = limitOf(scenario, key);
  if (stated === 'none') return waived(question);
  const limit = stated === null ? null : convert(stated);
  const parts = {
    ...question,
    value: 'value' in found ? found.value : null,
    limit,
    source: limit === null ? 'none given' : givenIn(key),
  };
  if ('missing' in found) return notJudged(parts, found.missing);
  return limit === null ? notJudged(parts, `limits.${key} is missing`) : judged(parts);
}

/** Judges a value against a limit that is known. */
export function against(question: Question, found: Found, limit: number, source: string): Criterion {
  if ('missing' in found) return notJudged({ ...question, value: null, limit, source }, found.missing);
  return judged({ ...question, value: found.value, limit, source });
}
