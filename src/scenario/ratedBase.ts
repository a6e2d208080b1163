import type { RuleContext } from './rule.ts';

/** Where a machine may state its rated frequency and voltage: with its nameplate, its tests or its circuit. */
const groups = ['nameplate', 'tests'] as const;

/**
 * Rated frequency for a rule: as stated, else the supply's.
 *
 * @returns Hz; undefined where the value that counts is missing or wrong
 */
export function ratedFrequency({ input, isStated }: RuleContext): number | undefined {
  const { machine, supply } = input;
  for (const group of groups) if (isStated('machine', group, 'frequency')) return machine?.[group]?.frequency;
  return isStated('machine', 'ratedFrequency') ? machine?.ratedFrequency : supply?.frequency;
}

/**
 * Rated voltage for a rule: as stated, else the supply's.
 *
 * @returns V between lines; undefined where the value that counts is missing or wrong
 */
export function ratedVoltage({ input, isStated }: RuleContext): number | undefined {
  const { machine, supply } = input;
  for (const group of groups)
    if (isStated('machine', group, 'lineVoltage')) return machine?.[group]?.lineVoltage;
  return supply?.lineVoltage;
}

/** Number of poles for a rule: as stated, else from the rated speed of a nameplate; undefined where neither is known. */
export function knownPoles(context: RuleContext): number | undefined {
  const { input, isStated } = context;
  if (isStated('machine', 'poles')) return input.machine?.poles;
  const speed = input.machine?.nameplate?.speed;
  const frequency = ratedFrequency(context);
  return speed === undefined || frequency === undefined ? undefined : polesFromSpeed(speed, frequency);
}

/**
 * The largest number of poles whose synchronous speed lies above the rated speed.
 *
 * @param speed rad/s, rated
 * @param frequency Hz, rated
 */
export function polesFromSpeed(speed: number, frequency: number): number {
  return 2 * Math.max(1, Math.ceil((2 * Math.PI * frequency) / speed) - 1);
}
