import { stiff } from '../../machine/breakdown.ts';
import { steadyState } from '../../machine/steadyState.ts';
import { simulate } from '../../measure/simulate.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { shaftOf } from '../../shaft/shaft.ts';
import { OPENING_INSTANTS } from '../openingInstants.ts';
import { benchOf } from './bench.ts';
import { instrumentsFor } from './instruments.ts';
import type { LaboratorySheet, LaboratoryStep, Prediction } from './laboratory.ts';
import { lateSwitchOf } from './lateSwitch.ts';
import { leastTimeOf } from './leastTime.ts';
import { leftOut, readable, whyWithout } from './leftOut.ts';
import { limitsPassed } from './limits.ts';
import { pausesOf } from './pause.ts';
import { QUANTITIES, type QuantityKey } from './quantities.ts';
import { QUANTITY_WORDS } from './quantityWords.ts';
import { type Range, rangesOf } from './ranges.ts';
import { storedEnergy } from './steadyQuantities.ts';
import { EVALUATED, REPEATED, REPEATS, STEP_PLANS, type StepPlan, WEIGHT_TOO } from './steps.ts';
import { assertSuitable, pullsOneWay } from './suitable.ts';
import { TOLERANCES } from './tolerances.ts';

/**
 * The laboratory procedure for a set: steps in order, every reading with its prediction and the range it should lie in, the pause between
 * trials, and what to make of it all. About a hundred runs.
 *
 * @param cageIsFitted the circuit was fitted to a nameplate: the sheet then says that its ranges are too narrow
 * @throws ScenarioError as `simulate` does, or where the scenario starts, plugs and reverses nothing, states faults, or has a load that
 * pulls when the motor is off and that friction does not hold
 */
export function laboratorySheet(scenario: Scenario, cageIsFitted = false): LaboratorySheet {
  assertSuitable(scenario);
  const result = simulate(scenario);
  const bench = benchOf(result);
  const ranges = rangesOf(bench);
  const read = readable(ranges, bench);
  const shaft = shaftOf(bench.scenario);
  const isWeight = pullsOneWay(shaft);
  const runDown = ranges.get('runDownTime');
  const { supply, machine } = bench.scenario;
  const steps = STEP_PLANS.filter((plan) => whyWithout(plan, result, bench, ranges) === null).flatMap(
    (plan) => {
      const doing = [...plan.doing, ...(isWeight ? (WEIGHT_TOO[plan.key] ?? []) : [])];
      return step({ ...plan, doing }, scenario, read);
    },
  );
  const pauses = pausesOf(result, cageIsFitted);
  const lateSwitch = lateSwitchOf(bench);
  return {
    scenario,
    steps,
    evaluation: EVALUATED.flatMap((key) => prediction(key, read)),
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
    turnsOn: runDown === undefined ? null : { most: runDown.high, isOpen: runDown.openBy.length > 0 },
    inertia: shaft.inertia,
    storedEnergy: storedEnergy(bench.scenario, bench.direction),
    leftOut: leftOut(result, bench, ranges, cageIsFitted),
  };
}

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
