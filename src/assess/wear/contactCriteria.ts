import type { BreakingPole, MeanDuties } from '../../measure/meanDuties.ts';
import type { ContactorsData, Scenario } from '../../scenario/scenario.ts';
import type { ContactorName } from '../../starter/starter.ts';
import { type Criterion, type CriterionParts, judged, notJudged, waived } from '../criterion.ts';
import type { ContactorWear, ContactWear } from './contactWearTypes.ts';
import { MAKING_FRAME, makingCriterion } from './makingCriterion.ts';
import { breakingCapacity, type SwitchingCapacity } from './switchingCapacity.ts';

/** What a criterion is before anything is known of its value. */
type Frame = Pick<CriterionParts, 'key' | 'name' | 'unit' | 'limitIs' | 'required'>;

const BREAKING: Frame = {
  key: 'breakingCapacity',
  name: 'breaking current of the contactors',
  unit: 'A',
  limitIs: 'most',
  required: true,
};
const RATE: Frame = {
  key: 'contactorOperationsPerHour',
  name: 'operations per hour of the contactors',
  unit: '1/h',
  limitIs: 'most',
  required: false,
};
const LIFE: Frame = {
  key: 'contactLife',
  name: 'operations until the contacts are to be replaced',
  unit: 'operations',
  limitIs: 'least',
  required: true,
};

const CONTACTORS = ['forward', 'reverse'] as const;

/**
 * Judges the contactors of a scenario.
 *
 * @param means over instants of opening; null: no run ended well
 * @param wear null: no section contactors, or no means
 */
export function contactCriteria(
  scenario: Scenario,
  means: MeanDuties | null,
  wear: ContactWear | null,
): readonly Criterion[] {
  const { contactors, duty, limits } = scenario;
  const frames = [MAKING_FRAME, BREAKING, RATE, LIFE];
  if (contactors === undefined)
    return frames.map((frame) => unknown(frame, 'the section contactors is missing'));
  if (means === null || wear === null)
    return frames.map((frame) =>
      unknown(frame, 'what the contactors make and break is missing: no run ended well'),
    );
  return [
    makingCriterion(means, contactors, scenario),
    breakingCriterion(means, wear, contactors),
    rateCriterion(wear, duty?.operationsPerHour ?? null),
    lifeCriterion(wear, limits?.contactLife ?? null),
  ];
}

function unknown(frame: Frame, why: string): Criterion {
  return notJudged({ ...frame, value: null, limit: null, source: '' }, why);
}

/** A current of one contactor and what it may be. */
interface Load {
  readonly contactor: ContactorName;
  readonly current: number;
  readonly capacity: SwitchingCapacity;
}

function nearestToLimit(loads: readonly Load[]): Load | null {
  const share = ({ current, capacity }: Load) => current / capacity.current;
  return loads.reduce<Load | null>(
    (worst, load) => (worst === null || share(load) > share(worst) ? load : worst),
    null,
  );
}

function breakingCriterion(means: MeanDuties, wear: ContactWear, contactors: ContactorsData): Criterion {
  const polesOf = (contactor: ContactorName): BreakingPole[] =>
    means.breakings.filter((breaking) => breaking.contactor === contactor).flatMap(({ poles }) => poles);
  const loads = CONTACTORS.flatMap((contactor): Load[] => {
    const capacity = breakingCapacity(contactors[contactor]);
    const simulated = polesOf(contactor).map(({ worstCurrent }) => worstCurrent / Math.SQRT2);
    const inching = wear[contactor].breakings.filter(({ occasion }) => occasion === 'inching');
    return [...simulated, ...inching.map(({ current }) => current)].map((current) => ({
      contactor,
      current,
      capacity,
    }));
  });
  const worst = nearestToLimit(loads);
  if (worst === null) return unknown(BREAKING, 'a breaking is missing from the run');
  return judged({
    ...BREAKING,
    value: worst.current,
    limit: worst.capacity.current,
    source: worst.capacity.source,
    remark: `${worst.contactor} contactor: r.m.s. value of the sine whose crest is the largest current at parting of any pole and instant of opening`,
  });
}

function rateCriterion(wear: ContactWear, perHour: number | null): Criterion {
  if (perHour === null) return unknown(RATE, 'duty.operationsPerHour is missing');
  const rates = CONTACTORS.flatMap((contactor) => {
    const { closingsPerOperation, mostOperationsPerHour, recommendedCategory } = wear[contactor];
    return closingsPerOperation === null || closingsPerOperation === 0
      ? []
      : [
          {
            contactor,
            value: closingsPerOperation * perHour,
            limit: mostOperationsPerHour,
            recommendedCategory,
          },
        ];
  });
  const open = rates.filter(({ limit }) => limit === null);
  if (open.length > 0 || rates.length === 0) {
    const why = open.map(({ contactor, recommendedCategory: category }) =>
      category === null
        ? `the utilisation category of the ${contactor} contactor`
        : `the ${contactor} contactor's operationsPerHour${category === 'AC-3' ? 'Ac3' : 'Ac4'}`,
    );
    return unknown(
      RATE,
      `${why.length === 0 ? 'an operation' : why.join(' and ')} ${open.length > 1 ? 'are' : 'is'} missing`,
    );
  }
  const worst = rates.reduce((a, b) => (b.value / b.limit! > a.value / a.limit! ? b : a));
  return judged({
    ...RATE,
    value: worst.value,
    limit: worst.limit,
    source: `stated in the scenario for ${worst.recommendedCategory} (contactors)`,
    remark: `${worst.contactor} contactor`,
  });
}

function lifeCriterion(wear: ContactWear, limit: number | 'none' | null): Criterion {
  const { governing } = wear;
  if (limit === 'none')
    return waived({ key: LIFE.key, name: LIFE.name, unit: LIFE.unit, limitIs: LIFE.limitIs, remark: '' });
  const value = governing === null ? null : (wear[governing].operations?.value ?? null);
  const source = 'stated in the scenario (limits.contactLife)';
  if (limit === null)
    return notJudged({ ...LIFE, value, limit, source: '' }, 'limits.contactLife is missing');
  if (governing === null || value === null)
    return notJudged({ ...LIFE, value, limit, source }, whyNotKnown([wear.forward, wear.reverse]));
  const of = wear[governing];
  const { low, high } = of.operations!;
  const below = low < limit && value >= limit ? '; the range reaches below the limit' : '';
  const found = judged({
    ...LIFE,
    value,
    limit,
    source,
    remark:
      `${governing} contactor, ${of.basis.generic ? 'by a generic curve, not that of the device' : 'by its stated lives'}; expected between ` +
      `${rounded(low, 2)} and ${rounded(high, 2)}${below}${of.missing.some((text) => text.startsWith('make erosion')) ? '; make erosion is not in it because the bounce time is missing' : ''}`,
  });
  // A range that reaches below the limit is no clear pass.
  return below === '' ? found : { ...found, outcome: 'close' };
}

/** Why no life is known, in words that follow "because". */
function whyNotKnown(contactors: readonly ContactorWear[]): string {
  const unknownOnes = contactors.filter(({ wearUnknown }) => wearUnknown);
  if (unknownOnes.length === 0) return 'no operation of the duty wears the contacts';
  return [...new Set(unknownOnes.flatMap(({ missing }) => missing))].join('; ');
}

/** A number to so many digits, without an exponent. */
function rounded(value: number, digits: number): string {
  return String(Number(value.toPrecision(digits)));
}
