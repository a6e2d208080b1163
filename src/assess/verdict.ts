import type { RunResult } from '../measure/result.ts';
import { type Criterion, type CriterionKey, NOT_JUDGED_BECAUSE, WAIVED } from './criterion.ts';
import { runReasons } from './runReasons.ts';
import { saturationRemark } from './saturationRemark.ts';

/** What the criteria come to. */
export type VerdictOutcome = 'suitable' | 'notSuitable' | 'notJudged';

/** Whether plugging suits the load by the criteria, in one sentence. */
export interface Verdict {
  readonly outcome: VerdictOutcome;
  /** For the top of the page. */
  readonly sentence: string;
  /** The criteria that decide: failed, or required and not judged, or the closest to its limit. */
  readonly decisive: readonly CriterionKey[];
  /** Criteria that are not judged and do not bar "suitable". */
  readonly leftOpen: readonly CriterionKey[];
  /** What the verdict does not cover, one sentence each. */
  readonly reservations: readonly string[];
}

/** More reasons than these are counted, not named. */
const MOST_REASONS = 4;
/** An excess above this is told as a multiple of the limit, not in per cent. */
const LARGEST_EXCESS = 9.995;

/**
 * Joins the criteria: one that fails decides; then one that is required and not judged; else plugging is suitable by them. A run
 * that could not be completed gives no verdict; a short circuit or a control that fails speaks against plugging by itself.
 */
export function verdict(criteria: readonly Criterion[], result: RunResult): Verdict {
  const { unusable, against, lacking } = runReasons(result);
  const failed = criteria.filter(({ outcome }) => outcome === 'fail');
  const missing = criteria.filter(({ outcome, required }) => outcome === 'notJudged' && required);
  const leftOpen = criteria
    .filter(({ outcome, required }) => outcome === 'notJudged' && !required)
    .map(({ key }) => key);
  const common = { leftOpen, reservations: reservations(criteria, result) };
  const open = (reasons: readonly string[], decisive: readonly CriterionKey[]): Verdict => ({
    ...common,
    outcome: 'notJudged',
    sentence: `Plugging could not be judged because ${list([...new Set(reasons)])}.`,
    decisive,
  });
  if (unusable !== null) return open([unusable], []);
  if (failed.length + against.length > 0)
    return {
      ...common,
      outcome: 'notSuitable',
      sentence: `Plugging is not suitable by these criteria: ${list([...against, ...failed.map(failure)])}.`,
      decisive: failed.map(({ key }) => key),
    };
  if (lacking !== null) return open([lacking], []);
  if (missing.length > 0)
    return open(
      missing.map(lack),
      missing.map(({ key }) => key),
    );
  const [closest] = criteria
    .filter(({ margin, limit }) => margin !== null && limit !== 0)
    .sort((a, b) => (a.margin ?? 0) - (b.margin ?? 0));
  return {
    ...common,
    outcome: 'suitable',
    sentence: `Plugging is suitable by these criteria${closest === undefined ? '' : `; the closest to its limit is ${closest.name}, ${closeness(closest)}`}.`,
    decisive: closest === undefined ? [] : [closest.key],
  };
}

function failure({ name, unit, margin, limit, value, limitIs, remark }: Criterion): string {
  if (limit === 0 || limit === null || margin === null || value === null)
    return remark === '' ? `${name} is not zero` : `${name}: ${remark}`;
  if (unit === '°C') return `${name} exceeds its limit by ${Number((value - limit).toPrecision(2))} K`;
  if (limitIs === 'least') return `${name} falls short of its limit by ${percent(-margin)}`;
  return -margin > LARGEST_EXCESS
    ? `${name} is ${Number((value / limit).toPrecision(2))} times its limit`
    : `${name} exceeds its limit by ${percent(-margin)}`;
}

/** What a criterion lacks, without the words that say that it is not judged. */
function lack({ remark }: Criterion): string {
  return remark.replace(NOT_JUDGED_BECAUSE, '');
}

function closeness({ margin, limitIs, unit, value, limit }: Criterion): string {
  if (unit === '°C' && value !== null && limit !== null)
    return `${Number((limit - value).toPrecision(2))} K below it`;
  return `${percent(margin ?? 0)} ${limitIs === 'most' ? 'below' : 'above'} it`;
}

function list(reasons: readonly string[]): string {
  const named = reasons.slice(0, MOST_REASONS);
  const more = reasons.length - named.length;
  return [...named, ...(more > 0 ? [`and ${more} more`] : [])].join('; ');
}

function percent(share: number): string {
  return `${Number((100 * share).toPrecision(2))} %`;
}

function reservations(criteria: readonly Criterion[], { scenario }: RunResult): readonly string[] {
  const waived = criteria.filter(({ source }) => source === WAIVED).map(({ name }) => name);
  const saturation = saturationRemark(scenario);
  return [
    'Criteria of current, torque and deceleration take the worst of the closing angles that were run; all other figures are those of one closing angle of the supply.',
    ...(saturation === '' ? [] : [`${saturation.charAt(0).toUpperCase()}${saturation.slice(1)}.`]),
    ...(waived.length === 0
      ? []
      : [`By the scenario's own statement no limit applies to: ${waived.join('; ')}.`]),
  ];
}
