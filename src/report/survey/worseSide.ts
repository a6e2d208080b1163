import type { MetricKey } from '../../measure/metric.ts';
import type { RunValue } from '../../survey/spread/moments.ts';

/** Which values of a metric are the worse ones; none: neither end is. */
export type WorseSide = 'largest' | 'smallest' | 'largestMagnitude' | 'none';

/** The side and why. Common practice, no source, where a reason names no physics. */
export interface WorseEnd {
  readonly side: WorseSide;
  readonly why: string;
}

const largest = (why: string): WorseEnd => ({ side: 'largest', why });
const smallest = (why: string): WorseEnd => ({ side: 'smallest', why });
const magnitude = (why: string): WorseEnd => ({ side: 'largestMagnitude', why });
const none = (why: string): WorseEnd => ({ side: 'none', why });

const CURRENT = largest('current loads windings, contacts and fuses');
const BRAKING = smallest('a braking torque is negative: the smallest is the hardest on the shaft');
const DRIVING = largest('the hardest driving torque is the hardest on the shaft');
const EITHER_WAY = magnitude('a coupling bears either direction alike');
const DIP = largest('a deeper dip drops contactors and disturbs others');
const SLOW = largest('the longer, the later the machine stands');
const HEAT = largest('heat ages the insulation and strains the cage');
const CONTACTS = largest('current, time and charge of an arc wear the contacts');
const GAP = smallest('the shorter, the nearer to a line-to-line short circuit');
const ANGLE = none('an angle comes round: no end of it is the worse one');

/** The worse end of every metric. Map colours and headlines follow it. */
export const WORSE_SIDE: Readonly<Record<MetricKey, WorseEnd>> = {
  startPeakCurrent: CURRENT,
  startWorstCycleCurrent: CURRENT,
  startMaximumTorque: DRIVING,
  startMinimumTorque: BRAKING,
  startCouplingTorque: EITHER_WAY,
  startVoltageDip: DIP,
  startTime: largest('a slower start heats the machine for longer'),
  startI2tA: CURRENT,
  startI2tB: CURRENT,
  startI2tC: CURRENT,
  startStatorHeat: HEAT,
  startRotorHeat: HEAT,
  startRotorHeatMultiple: HEAT,
  commandToTouch: SLOW,
  partingToTouch: GAP,
  extinctionToTouch: GAP,
  arcMargin: GAP,
  residualVoltage: largest('the more is left, the harder the closing can hit'),
  residualAngle: ANGLE,
  supplyAngleAtTouch: ANGLE,
  plugPeakCurrent: CURRENT,
  plugWorstCycleCurrent: CURRENT,
  plugMinimumTorque: BRAKING,
  plugMaximumTorque: DRIVING,
  plugCouplingTorque: EITHER_WAY,
  plugVoltageDip: DIP,
  stopTimeFromParting: SLOW,
  stopTimeFromTouch: SLOW,
  stopRevolutions: largest('the more, the farther the load travels before it stands'),
  plugI2tA: CURRENT,
  plugI2tB: CURRENT,
  plugI2tC: CURRENT,
  plugStatorHeat: HEAT,
  plugRotorHeat: HEAT,
  plugRotorHeatMultiple: HEAT,
  plugToStartHeatRatio: HEAT,
  plugLineResistorHeat: largest('heat strains the resistors'),
  plugRotorResistorHeat: largest('heat strains the resistors'),
  switchOpeningTime: SLOW,
  switchOpeningSpeed: magnitude('let go far from zero, the shaft coasts on or creeps back'),
  creepSpeed: largest('reverse motion after the stop is not wanted'),
  creepRevolutions: largest('reverse motion after the stop is not wanted'),
  reversalTime: SLOW,
  reversalRotorHeat: HEAT,
  reversalRotorHeatMultiple: HEAT,
  reversalToStartHeatRatio: HEAT,
  lowestTerminalVoltage: smallest('low voltage drops contactors and takes torque away'),
  torsionalFrequency: none('a property of the shaft: neither end is the worse one'),
  runPoleAPartingCurrent: CONTACTS,
  runPoleBPartingCurrent: CONTACTS,
  runPoleCPartingCurrent: CONTACTS,
  runPoleAClearingTime: CONTACTS,
  runPoleBClearingTime: CONTACTS,
  runPoleCClearingTime: CONTACTS,
  runPoleAArcCharge: CONTACTS,
  runPoleBArcCharge: CONTACTS,
  runPoleCArcCharge: CONTACTS,
  plugPoleAPartingCurrent: CONTACTS,
  plugPoleBPartingCurrent: CONTACTS,
  plugPoleCPartingCurrent: CONTACTS,
  plugPoleAClearingTime: CONTACTS,
  plugPoleBClearingTime: CONTACTS,
  plugPoleCClearingTime: CONTACTS,
  plugPoleAArcCharge: CONTACTS,
  plugPoleBArcCharge: CONTACTS,
  plugPoleCArcCharge: CONTACTS,
  ledgerResidual: largest('energy that is missing is an error of the computation'),
};

/** Grows from the mildest value of a metric to the worst; of one without a worse side with the value. */
export function badness(key: MetricKey): (value: number) => number {
  const { side } = WORSE_SIDE[key];
  if (side === 'smallest') return (value) => -value;
  return side === 'largestMagnitude' ? Math.abs : (value) => value;
}

/** An extreme and the name of its end. */
export interface NamedExtreme extends RunValue {
  readonly end: 'largest' | 'smallest';
}

/** Both extremes of a metric, the worse first; null where no run has a value. */
export function worseFirst(
  key: MetricKey,
  smallestOf: RunValue | null,
  largestOf: RunValue | null,
): readonly [worse: NamedExtreme, milder: NamedExtreme] | null {
  if (smallestOf === null || largestOf === null) return null;
  const bad = badness(key);
  const least: NamedExtreme = { ...smallestOf, end: 'smallest' };
  const most: NamedExtreme = { ...largestOf, end: 'largest' };
  return bad(least.value) > bad(most.value) ? [least, most] : [most, least];
}
