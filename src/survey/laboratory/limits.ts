import { type LimitKey, limitOf } from '../../assess/againstLimit.ts';
import { STANDARD_LIMITS } from '../../assess/standardLimits.ts';
import { weakestShaftPart } from '../../assess/stop/shaftTorque.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { shaftOf } from '../../shaft/shaft.ts';
import type { LaboratoryStep, StepKey } from './laboratory.ts';
import type { RunFigures } from './movingQuantities.ts';
import type { Quantities, QuantityKey } from './quantities.ts';
import type { Range } from './ranges.ts';

/** A limit of the scenario that the upper end of a prediction goes beyond. SI. */
export type LimitPassed = LaboratoryStep['limits'][number];

type Highs = (key: QuantityKey) => number | null;

const TURN = 2 * Math.PI;
/** Steps with a start from rest, the first of them included; steps that plug. */
const STARTING: readonly StepKey[] = ['direction', 'start'];
const PLUGGING: readonly StepKey[] = ['plugStop', 'reversal'];

/** The limits of a scenario that the readings of a step may pass, with the words for it. */
export function limitsPassed(
  step: StepKey,
  scenario: Scenario,
  ranges: ReadonlyMap<QuantityKey, Pick<Range, 'high'>>,
): readonly LimitPassed[] {
  const high: Highs = (key) => ranges.get(key)?.high ?? null;
  return [
    ...(STARTING.includes(step)
      ? [...trips(scenario, high('startPeakCurrent')), ...breaks(scenario, high('startShaftTorque'))]
      : []),
    ...(PLUGGING.includes(step)
      ? [...trips(scenario, high('plugPeakCurrent')), ...breaks(scenario, high('plugShaftTorque'))]
      : []),
    ...(step === 'plugStop' ? stops(scenario, high) : []),
    ...(step === 'creep'
      ? passed(scenario, 'reverseCreep', high('creepAngle'), {
          words: 'What the flywheel turns backwards',
          consequence: 'Whatever minds that is taken off before.',
          unit: 'rad',
        })
      : []),
  ];
}

function trips(scenario: Scenario, crest: number | null): readonly LimitPassed[] {
  const words = {
    words: 'The crest of the current',
    consequence:
      'The instantaneous trip may open the circuit in the middle of this step, and the set then coasts behind its guard. The instructor decides about the setting; nobody changes it to get a reading.',
    unit: 'A',
  };
  return passed(scenario, 'instantaneousTrip', crest, words, Math.SQRT2);
}

function stops(scenario: Scenario, high: Highs): readonly LimitPassed[] {
  const fromTouch = high('stopTimeFromTouch');
  const turns = high('stopRevolutions');
  // The limit counts from the command: coil off to contacts parting, and the dead time, come before the touch.
  const before = scenario.starter.openingTime + (high('partingToTouch') ?? 0);
  const consequence = 'Nobody relies on the set standing by then.';
  return [
    ...passed(scenario, 'stopTime', fromTouch === null ? null : fromTouch + before, {
      words: 'The time from the command to standstill',
      consequence,
      unit: 's',
    }),
    ...passed(scenario, 'stopAngle', turns === null ? null : TURN * turns, {
      words: 'The angle from the command to standstill',
      consequence,
      unit: 'rad',
    }),
  ];
}

function breaks(scenario: Scenario, torque: number | null): readonly LimitPassed[] {
  const weakest = weakestShaftPart(scenario);
  if (weakest === null) return [];
  const counted =
    scenario.load.coupling === undefined
      ? 'Counted twice, as an elastic shaft may swing after a step of torque. '
      : '';
  return passed(scenario, weakest.key, torque, {
    words: 'The torque between motor and flywheel',
    consequence: `${counted}The instructor decides whether the step is done at all.`,
    unit: 'N·m',
  });
}

function passed(
  scenario: Scenario,
  key: LimitKey,
  value: number | null,
  words: Pick<LimitPassed, 'words' | 'consequence' | 'unit'>,
  perStated = 1,
): readonly LimitPassed[] {
  const stated = limitOf(scenario, key);
  if (value === null || typeof stated !== 'number' || value <= perStated * stated) return [];
  return [{ key, value, most: perStated * stated, ...words }];
}

/**
 * Largest torque between motor and load in start and plug stop, N·m: that of an elastic coupling, else twice what the air gap sends
 * through a rigid shaft. The friction of the load, small beside it, is left out.
 */
export function shaftTorques(
  scenario: Scenario,
  { start, plug }: Pick<RunFigures, 'start' | 'plug'>,
): Quantities {
  const { coupling, loadInertia, inertia } = shaftOf(scenario);
  const share = (STANDARD_LIMITS.torsionalStep.value * loadInertia) / inertia;
  const largest = (...values: readonly (number | null | undefined)[]) =>
    Math.max(0, ...values.map((value) => Math.abs(value ?? 0)));
  const starting =
    coupling === null
      ? share * largest(start?.startMaximumTorque.value, start?.startMinimumTorque.value)
      : largest(start?.startCouplingTorque.value);
  const plugging =
    coupling === null
      ? share * largest(plug?.plugMaximumTorque.value, plug?.plugMinimumTorque.value)
      : largest(plug?.plugCouplingTorque.value);
  return {
    ...(starting > 0 && { startShaftTorque: starting }),
    ...(plugging > 0 && { plugShaftTorque: plugging }),
  };
}
