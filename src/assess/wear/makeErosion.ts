import { meanArcCharge } from '../../measure/equivalentBreakingCurrent.ts';
import type { MeanMaking } from '../../measure/meanDuties.ts';
import type { ContactorData } from '../../scenario/scenario.ts';
import { STANDARD_LIMITS } from '../standardLimits.ts';
import { lifeAtBreaking } from './contactLife.ts';

/** What bouncing contacts lose at one making. */
export interface MakeErosion {
  /** Mean charge during the bounce, all poles together, C; null: not judged. */
  readonly bounceCharge: number | null;
  /** What the durability tests' making brings over the same time and is therefore in the stated lives, C. */
  readonly contained: number | null;
  /** Share of the contacts used up beyond that; null: not judged. */
  readonly wear: number | null;
  /** Why it is not judged, or how it was counted. */
  readonly remark: string;
}

/** Mean of |sin| over its crest. */
const MEAN_OF_HALF_WAVE = 2 / Math.PI;

/**
 * Wear of a making by the charge that flows while the contacts bounce.
 *
 * The rule (common practice, no source): the whole charge of the bounce time counts as arc charge. The lives of AC-3 and AC-4 come
 * from tests that make six times the rated current, bouncing as the device does, so that they contain the charge of a symmetrical current of that size
 * over the bounce time; only what exceeds it wears in addition, as the same arc charge does in the AC-3 test: contacts
 * that bounce close again, no voltage recovers between them.
 *
 * @param ratedVoltage V r.m.s. line to line
 * @param frequency Hz
 */
export function makeErosion(
  making: MeanMaking,
  device: ContactorData,
  ratedVoltage: number,
  frequency: number,
): MakeErosion {
  const charges = making.poles.flatMap(({ meanBounceCharge }) => meanBounceCharge ?? []);
  if (device.bounceTime === null || charges.length < making.poles.length)
    return {
      bounceCharge: null,
      contained: null,
      wear: null,
      remark: 'make erosion is not judged because the bounce time is missing',
    };
  const bounceCharge = charges.reduce((sum, charge) => sum + charge, 0);
  const crest = Math.SQRT2 * STANDARD_LIMITS.durabilityMakeMultiple.value * device.ratedCurrentAc3;
  const contained = making.poles.length * MEAN_OF_HALF_WAVE * crest * device.bounceTime;
  const excess = Math.max(0, bounceCharge - contained);
  const breaking = STANDARD_LIMITS.durabilityBreakAc3.value * device.ratedCurrentAc3;
  const voltage = STANDARD_LIMITS.durabilityVoltageAc3.value * (device.ratedVoltage ?? ratedVoltage);
  const perCharge =
    1 /
    (lifeAtBreaking(device, breaking, voltage, ratedVoltage).operations * meanArcCharge(breaking, frequency));
  return {
    bounceCharge,
    contained,
    wear: excess * perCharge,
    remark:
      excess > 0
        ? `the charge while the contacts bounce exceeds that of the durability tests' making (${STANDARD_LIMITS.durabilityMakeMultiple.value} times the rated current); the excess counts as arc charge (rule: common practice, no source)`
        : `the charge while the contacts bounce does not exceed that of the durability tests' making (${STANDARD_LIMITS.durabilityMakeMultiple.value} times the rated current), which the stated lives contain`,
  };
}
