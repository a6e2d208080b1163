/** What came of a criterion. */
export type Outcome = 'pass' | 'close' | 'fail' | 'notJudged';

/** One question that decides whether plugging suits the load. */
export interface Criterion {
  readonly key: CriterionKey;
  /** Words: "temperature of the cage". */
  readonly name: string;
  /** SI (temperatures °C); null where it could not be found. */
  readonly value: number | null;
  /** Symbol of the SI unit of value and limit; '°C' for temperatures, '1' for a share or a count. */
  readonly unit: string;
  /** SI; null where there is none. */
  readonly limit: number | null;
  /** most: the value must not exceed the limit; least: it must not fall below. */
  readonly limitIs: 'most' | 'least';
  /** What is left to the limit as a share of it, negative when it is exceeded; null where it is not judged. */
  readonly margin: number | null;
  /** Where the limit comes from, in words, with its certainty. */
  readonly source: string;
  readonly outcome: Outcome;
  /** Not judged: what is missing. Else what a reader must know of it; may be empty. */
  readonly remark: string;
  /** "Suitable" is barred while it is not judged. */
  readonly required: boolean;
}

/** Every criterion, in the order of presentation. */
export const CRITERION_KEYS = [
  // the run itself
  'comesToRest',
  'staysAtRest',
  'endedBySwitch',
  'stopTime',
  'stopAngle',
  'reverseCreep',
  'deadTimeMargin',
  // heat
  'windingTemperature',
  'cageTemperature',
  'operationsPerHour',
  'lockedRotorWithstand',
  'overloadRelay',
  // contacts
  'makingCapacity',
  'breakingCapacity',
  'contactorOperationsPerHour',
  'contactLife',
  // protection and supply
  'instantaneousTrip',
  'voltageDip',
  // shaft and load
  'shaftTorque',
  'deceleration',
  'tipping',
  'sliding',
] as const;

/** Name of a criterion. */
export type CriterionKey = (typeof CRITERION_KEYS)[number];

/** A margin smaller than this share of the limit is called close to it. Common practice, no source. */
export const CLOSE_MARGIN = 0.1;

/** What a criterion is made of before it is judged. */
export type CriterionParts = Omit<Criterion, 'margin' | 'outcome'>;

/** Compares value and limit; a missing one is not judged, and then `remark` says what is missing. */
export function judged(parts: CriterionParts): Criterion {
  const { value, limit, limitIs } = parts;
  if (value === null || limit === null || Number.isNaN(value) || Number.isNaN(limit))
    return { ...parts, margin: null, outcome: 'notJudged' };
  const left = limitIs === 'most' ? limit - value : value - limit;
  const margin = limit === 0 ? Math.sign(left) : left / Math.abs(limit);
  const outcome = left < 0 ? 'fail' : margin < CLOSE_MARGIN && limit !== 0 ? 'close' : 'pass';
  return { ...parts, margin, outcome };
}

/** Source of a limit that the user has waived. */
export const WAIVED = 'the scenario states that no limit applies';

/** A criterion that the scenario states not to apply. */
export function waived(parts: Omit<CriterionParts, 'value' | 'limit' | 'source' | 'required'>): Criterion {
  return {
    ...parts,
    value: null,
    limit: null,
    source: WAIVED,
    margin: null,
    outcome: 'pass',
    required: false,
  };
}

/** A criterion whose question does not arise; `why` says so in words. */
export function notApplicable(
  parts: Omit<CriterionParts, 'value' | 'limit' | 'source' | 'remark' | 'required'>,
  why: string,
): Criterion {
  return {
    ...parts,
    value: null,
    limit: null,
    source: 'does not apply',
    margin: null,
    outcome: 'pass',
    remark: why,
    required: false,
  };
}

/** How the remark of a criterion that lacks something begins. */
export const NOT_JUDGED_BECAUSE = 'not judged because ';

/** A criterion that lacks something. */
export function notJudged(parts: Omit<CriterionParts, 'remark'>, missing: string): Criterion {
  return { ...parts, margin: null, outcome: 'notJudged', remark: `${NOT_JUDGED_BECAUSE}${missing}` };
}
