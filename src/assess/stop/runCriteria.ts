import type { RunResult } from '../../measure/result.ts';
import { against, againstGiven, type Found, type Question } from '../againstLimit.ts';
import { type Criterion, notApplicable } from '../criterion.ts';
import { STANDARD_LIMITS } from '../standardLimits.ts';
import { comesToRest } from './comesToRest.ts';
import { deadTimeMargin } from './deadTimeMargin.ts';
import { staysAtRest } from './staysAtRest.ts';
import { endOfStop, stopKind } from './stopKind.ts';

/** Criteria of the run itself: how the stop ends, how long it takes, and the change-over. */
export function runCriteria(result: RunResult): readonly Criterion[] {
  return [
    comesToRest(result),
    staysAtRest(result),
    endedBySwitch(result),
    stopTime(result),
    stopAngle(result),
    reverseCreep(result),
    deadTimeMargin(result),
  ];
}

/** Whether the zero-speed switch ends the plugging. */
function endedBySwitch(result: RunResult): Criterion {
  const question = {
    key: 'endedBySwitch',
    name: 'plug stops that something other than the zero-speed switch ends',
    unit: '1',
    limitIs: 'most',
  } as const;
  if (stopKind(result) === 'reversal' && result.scenario.duty?.cycle !== 'startPlugStop')
    return notApplicable(question, 'a full reversal is not ended at standstill');
  const { found, remark } = endOfPlugging(result);
  const { value, source } = STANDARD_LIMITS.stopsEndedOtherwise;
  return against({ ...question, remark, required: true }, found, value, source);
}

/** How many plug stops of the run something other than the switch ends, 0 or 1, and what that is. */
function endOfPlugging(result: RunResult): { readonly found: Found; readonly remark: string } {
  const { operations, status, scenario, trajectory, controlFindings } = result;
  const { reversal } = operations;
  const unknown = (missing: string) => ({ found: { missing }, remark: '' });
  const otherwise = (remark: string) => ({ found: { value: 1 }, remark });
  if (reversal === null) return unknown('no plug or reversal takes place in this run');
  if (stopKind(result) === 'reversal')
    return unknown('the run shows a full reversal while duty.cycle states plug stops');
  if (stopKind(result) === 'timed')
    return otherwise('the reversing contactor is taken out by a later command, on time alone');
  if (scenario.starter.zeroSpeedSwitch === null)
    return otherwise('there is no zero-speed switch: plugging runs on into the other direction');
  if (controlFindings.some(({ kind }) => kind === 'limitEndsBraking'))
    return otherwise('the time limit of the emergency stop ends braking before the switch does');
  if (reversal.switchOpening !== null) return { found: { value: 0 }, remark: '' };
  const words = 'the zero-speed switch does not open in this run';
  const cut = scenario.solver.endTime !== 'auto' && reversal.to >= trajectory.tEnd;
  const shorted = status.code === 'lineToLineShortCircuit';
  return shorted || cut || reversal.touch === null ? unknown(words) : otherwise(words);
}

/** Time from the command to zero speed. */
function stopTime(result: RunResult): Criterion {
  return againstGiven(
    question('stopTime', 'time from the command to zero speed', 's'),
    untilZero(result, (command, zero) => zero - command),
    result.scenario,
    'stopTime',
  );
}

/** Angle from the command to zero speed. */
function stopAngle(result: RunResult): Criterion {
  const { trajectory } = result;
  const turned = (command: number, zero: number) =>
    Math.abs(trajectory.at(zero).position - trajectory.at(command).position);
  return againstGiven(
    question('stopAngle', 'angle from the command to zero speed', 'rad'),
    untilZero(result, turned),
    result.scenario,
    'stopAngle',
  );
}

function untilZero({ operations }: RunResult, measure: (command: number, zero: number) => number): Found {
  const { reversal } = operations;
  if (reversal === null) return { missing: 'no plug or reversal takes place in this run' };
  if (reversal.zero === null) return { missing: 'the machine does not come to zero speed in this run' };
  return { value: measure(reversal.command, reversal.zero) };
}

/** Angle against the original direction after a stop. */
function reverseCreep(result: RunResult): Criterion {
  const { creepRevolutions } = result.metrics;
  const asked = question('reverseCreep', 'rotation against the original direction after zero speed', 'rad');
  if (stopKind(result) === 'reversal')
    return notApplicable(asked, 'a full reversal is meant to turn the other way');
  const turns = creepRevolutions.value;
  const found: Found =
    turns === null
      ? { missing: creepRevolutions.missing ?? 'the run shows no creep' }
      : { value: 2 * Math.PI * turns };
  const last = result.trajectory.segments.findLast(({ t0 }) => t0 < endOfStop(result));
  const remark =
    turns === null || last?.held === true
      ? ''
      : 'the shaft is not held yet when the run ends: creep until then';
  return againstGiven({ ...asked, remark }, found, result.scenario, 'reverseCreep');
}

function question(key: Question['key'], name: string, unit: string): Question {
  return { key, name, unit, limitIs: 'most', required: false, remark: '' };
}
