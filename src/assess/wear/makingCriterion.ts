import { steadyState } from '../../machine/steadyState.ts';
import type { MakingPole, MeanDuties } from '../../measure/meanDuties.ts';
import { exponential } from '../../numeric/exponential.ts';
import { squared } from '../../numeric/raised.ts';
import type { ContactorData, ContactorsData, Scenario } from '../../scenario/scenario.ts';
import type { ContactorName } from '../../starter/starter.ts';
import { type Criterion, type CriterionParts, judged, notJudged } from '../criterion.ts';
import { STANDARD_LIMITS } from '../standardLimits.ts';
import { makingCapacity } from './switchingCapacity.ts';

/** The criterion before anything is known of its value. */
export const MAKING_FRAME: Pick<CriterionParts, 'key' | 'name' | 'unit' | 'limitIs' | 'required'> = {
  key: 'makingCapacity',
  name: 'making current of the contactors',
  unit: 'A',
  limitIs: 'most',
  required: true,
};

/** What one contactor makes beside what it may make. */
interface Making {
  readonly contactor: ContactorName;
  readonly value: number;
  readonly limit: number;
  readonly source: string;
  /** Words. */
  readonly what: string;
}

/**
 * Judges what the contactors make: the highest crest of any pole and closing angle against the crest of the test of rated making
 * capacity, and the alternating current that is left once the offset has decayed against that capacity itself, which is the r.m.s.
 * value of the alternating component. The one that comes nearer to its limit counts.
 */
export function makingCriterion(
  means: MeanDuties,
  contactors: ContactorsData,
  plant: Pick<Scenario, 'machine' | 'supply' | 'starter'>,
): Criterion {
  const makings = (['forward', 'reverse'] as const).flatMap((contactor) => {
    const poles = means.makings
      .filter((making) => making.contactor === contactor)
      .flatMap((making) => making.poles);
    return poles.length === 0
      ? []
      : makingsOf(contactor, contactor === means.driving, poles, contactors[contactor], plant);
  });
  const [worst] = makings.toSorted((a, b) => b.value / b.limit - a.value / a.limit);
  if (worst === undefined)
    return notJudged(
      { ...MAKING_FRAME, value: null, limit: null, source: '' },
      'a making is missing from the run',
    );
  const { value, limit, source, contactor, what } = worst;
  return judged({ ...MAKING_FRAME, value, limit, source, remark: `${contactor} contactor: ${what}` });
}

/** Slips at which a contactor makes: at rest, or against full speed. */
const SLIP = { driving: 1, plugging: 2 } as const;

function makingsOf(
  contactor: ContactorName,
  drives: boolean,
  poles: readonly MakingPole[],
  device: ContactorData,
  { machine, supply, starter }: Pick<Scenario, 'machine' | 'supply' | 'starter'>,
): readonly Making[] {
  const { current: capacity, source } = makingCapacity(device);
  const crest = Math.max(...poles.map(({ worstCrest }) => worstCrest));
  const rms = Math.max(...poles.map(({ worstRms }) => worstRms));
  const inserted = {
    lineResistance: drives ? 0 : (starter.lineResistors?.resistance ?? 0),
    rotorResistance: drives ? 0 : (machine.rotorResistors?.plugging ?? 0),
    star: !drives && starter.plugConnection === 'star',
  };
  const alternating = steadyState(machine, supply, SLIP[drives ? 'driving' : 'plugging'], inserted).current;
  const { factor, words } = testCrest(device);
  const common = { contactor, source };
  return [
    {
      ...common,
      value: crest,
      limit: Math.SQRT2 * factor * capacity,
      what:
        `highest crest of a pole at the worst of the closing angles (r.m.s. over its first period ${digits(rms)} A, offset included), against the ` +
        `crest of the making test, √2 × ${factor.toFixed(2)} × ${digits(capacity)} A; ${words}`,
    },
    {
      ...common,
      value: alternating,
      limit: capacity,
      what: `r.m.s. of the alternating current without offset, from the circuit ${drives ? 'at rest' : 'against full speed'} (crest up to ${digits(crest)} A)`,
    },
  ];
}

/** Crest over √2 times the r.m.s. of the making test: κ = 1.02 + 0.98·e^(−3·R/X) at its power factor. */
function testCrest({ ratedCurrentAc3 }: ContactorData): { factor: number; words: string } {
  const { testPowerFactor, testPowerFactorLarge, testPowerFactorStep } = STANDARD_LIMITS;
  const { value, source } =
    ratedCurrentAc3 <= testPowerFactorStep.value ? testPowerFactor : testPowerFactorLarge;
  const ratio = value / Math.sqrt(1 - squared(value));
  return {
    factor: 1.02 + 0.98 * exponential(-3 * ratio),
    words: `power factor ${value} (${source}), crest factor of IEC 60909-0`,
  };
}

function digits(value: number): string {
  return String(Number(value.toPrecision(3)));
}
