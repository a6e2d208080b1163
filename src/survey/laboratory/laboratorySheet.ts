import { stiff } from '../../machine/breakdown.ts';
import { steadyState } from '../../machine/steadyState.ts';
import type { RunResult } from '../../measure/result.ts';
import { simulate } from '../../measure/simulate.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { shaftOf } from '../../shaft/shaft.ts';
import { OPENING_INSTANTS } from '../openingInstants.ts';
import { type Bench, benchOf } from './bench.ts';
import { instrumentsFor } from './instruments.ts';
import type { LaboratorySheet, LaboratoryStep, Prediction } from './laboratory.ts';
import { lateSwitchOf } from './lateSwitch.ts';
import { leastTimeOf } from './leastTime.ts';
import { limitsPassed } from './limits.ts';
import { pausesOf } from './pause.ts';
import { QUANTITIES, type QuantityKey } from './quantities.ts';
import { QUANTITY_WORDS } from './quantityWords.ts';
import { type Range, rangesOf } from './ranges.ts';
import { storedEnergy } from './steadyQuantities.ts';
import { EVALUATED, REPEATED, REPEATS, STEP_PLANS, type StepPlan } from './steps.ts';
import { TOLERANCES } from './tolerances.ts';

/**
 * The laboratory procedure for a set: steps in order, every reading with its prediction and the range it should lie in, the pause between
 * trials, and what to make of it all. About a hundred runs.
 *
 * @param cageIsFitted the circuit was fitted to a nameplate: the sheet then says that its ranges are too narrow
 * @throws ScenarioError as `simulate` does, or where the scenario starts, plugs and reverses nothing
 */
export function laboratorySheet(scenario: Scenario, cageIsFitted = false): LaboratorySheet {
  const result = simulate(scenario);
  const bench = benchOf(result);
  const ranges = rangesOf(bench);
  const { supply, machine } = bench.scenario;
  const steps = STEP_PLANS.filter((plan) => whyWithout(plan, bench) === null).flatMap((plan) =>
    step(plan, scenario, ranges),
  );
  const pauses = pausesOf(result, cageIsFitted);
  const lateSwitch = lateSwitchOf(bench);
  return {
    scenario,
    steps,
    evaluation: EVALUATED.flatMap((key) => prediction(key, ranges)),
    tolerances: TOLERANCES,
    closingAngles: OPENING_INSTANTS,
    instruments: instrumentsFor(ranges, {
      lineVoltage: supply.lineVoltage,
      frequency: supply.frequency,
      ratedCurrent: result.rated.current,
      lockedTorque: steadyState(machine, stiff(supply), 1).torque,
    }),
    pauses,
    leastTime: leastTimeOf(
      steps.map(({ key }) => key),
      ranges,
      pauses,
      lateSwitch.length,
    ),
    lateSwitch,
    inertia: shaftOf(bench.scenario).inertia,
    storedEnergy: storedEnergy(bench.scenario, bench.direction),
    leftOut: leftOut(result, bench, ranges, cageIsFitted),
  };
}

/** Null where nothing stands against a step. */
function whyWithout({ key }: StepPlan, { plugs, scenario }: Bench): string | null {
  const switched = key === 'plugStop' || key === 'creep';
  if (!plugs && (switched || key === 'reversal')) return NOTHING_PLUGS;
  if (switched && scenario.starter.zeroSpeedSwitch === null) return NO_SWITCH;
  return null;
}

const NOTHING_PLUGS =
  'The scenario plugs and reverses nothing, so that plug stop, late switch and reversal are left out; an action `do: plug` after the start brings them in.';
const NO_SWITCH =
  'The starter has no zero-speed switch: a plug stop would run on into the other direction, so that plug stop and late switch are left out and what concerns the stop is read in the reversal.';

/** A step without any reading that should have one says nothing. */
function step(plan: StepPlan, scenario: Scenario, ranges: ReadonlyMap<QuantityKey, Range>): LaboratoryStep[] {
  const { reads, ...words } = plan;
  const readings = reads.flatMap((key) => prediction(key, ranges));
  return reads.length > 0 && readings.length === 0
    ? []
    : [{ ...words, limits: limitsPassed(plan.key, scenario, ranges), readings }];
}

function prediction(key: QuantityKey, ranges: ReadonlyMap<QuantityKey, Range>): Prediction[] {
  const range = ranges.get(key);
  if (range === undefined) return [];
  const { openBy, ...rest } = range;
  return [
    {
      key,
      ...QUANTITY_WORDS[key],
      unit: QUANTITIES[key].unit,
      repeats: REPEATED.includes(key) ? REPEATS : 1,
      ...rest,
      open:
        openBy.length === 0
          ? null
          : `Within the tolerance of ${openBy.join(' and of ')} some runs do not get so far: the range is open.`,
    },
  ];
}

/** What the sheet cannot say, with the reason. */
function leftOut(
  { scenario, usable }: RunResult,
  bench: Bench,
  ranges: ReadonlyMap<QuantityKey, Range>,
  cageIsFitted: boolean,
): readonly string[] {
  const steps = STEP_PLANS.map((plan) => whyWithout(plan, bench));
  const notThere = (key: QuantityKey, why: string) => (ranges.has(key) ? [] : [why]);
  return [
    ...new Set(steps.flatMap((why) => why ?? [])),
    ...(scenario.machine.core === undefined
      ? [
          'The circuit has no iron loss (machine.ironLoss), so that the power running light is not predicted: a meter shows copper, friction and iron together.',
        ]
      : []),
    ...notThere(
      'noLoadCurrent',
      'The motor cannot drive this load at any steady speed: running light and run-down are left out.',
    ),
    ...(ranges.has('noLoadCurrent')
      ? notThere(
          'runDownTime',
          'No dry friction brings the set to rest (or its load drives it), so that the run-down has no end to be timed.',
        )
      : []),
    ...notThere(
      'lockedRotorVoltage',
      'The rated current is above that of the locked rotor at full voltage: the locked-rotor test is left out.',
    ),
    ...notThere('startTime', 'The start does not come up to speed, so that its time and heat are left out.'),
    ...(cageIsFitted
      ? [
          'The circuit was fitted to a nameplate: many circuits fit it as well, so that expect readings farther off than these ranges. `motor` shows what was assumed.',
        ]
      : []),
    ...(usable
      ? []
      : ['The run of the scenario itself does not end well; the pause cannot be worked out from it.']),
  ];
}
