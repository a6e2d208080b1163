import type { RunResult } from '../../measure/result.ts';
import { UP_TO_SPEED } from '../../measure/startMetrics.ts';
import { synchronousSpeed } from '../../scenario/synchronousSpeed.ts';
import { loadMass } from '../../shaft/shaftMode.ts';
import { steadySpeed } from '../../shaft/steadySpeed.ts';
import { against, type Found, type Question } from '../againstLimit.ts';
import type { Criterion } from '../criterion.ts';
import { coastDown } from './coastDown.ts';
import { endOfStop, insertedAtEnd, stopKind } from './stopKind.ts';

const BY_DEFINITION = 'by definition: a stop ends at rest, a reversal in steady motion the other way';

/** Whether the shaft ends at rest, or in steady motion after a full reversal. */
export function comesToRest(result: RunResult): Criterion {
  const reverses = stopKind(result) === 'reversal';
  const { found, remark } = badEnd(result) ?? (reverses ? missingSpeed(result) : remainingSpeed(result));
  const question: Question = {
    key: 'comesToRest',
    name: reverses
      ? 'speed that is missing at the end of the reversal'
      : 'speed that is left at the end of the stop',
    unit: 'rad/s',
    limitIs: 'most',
    required: true,
    remark,
  };
  return against(question, found, 0, BY_DEFINITION);
}

interface Finding {
  readonly found: Found;
  readonly remark: string;
}

const lacking = (missing: string): Finding => ({ found: { missing }, remark: '' });
const speedLeft = (value: number, remark: string): Finding => ({ found: { value }, remark });

/** What a run comes to that shows neither rest nor steady motion; null: it shows one of them. */
function badEnd({ operations, status, trajectory, metrics }: RunResult): Finding | null {
  if (operations.reversal === null) return lacking('no plug or reversal takes place in this run');
  if (metrics.reversalTime.value !== null) return null;
  if (status.code === 'lineToLineShortCircuit') return lacking('the run ends in a short circuit');
  if (status.code !== 'overspeed') return null;
  return speedLeft(Math.abs(trajectory.at(trajectory.tEnd).speed), 'the load runs away with the shaft');
}

/** Speed that a stop leaves for good: 0 where the shaft stands, or coasts to rest after the end of the run. */
function remainingSpeed(result: RunResult): Finding {
  const { trajectory, operations, scenario } = result;
  const end = endOfStop(result);
  const { speed } = trajectory.at(end, 'left');
  const last = trajectory.segments.findLast(({ t0 }) => t0 < end);
  const cut = end < trajectory.tEnd || scenario.solver.endTime !== 'auto';
  if (last === undefined || last.kind !== 'none') {
    const runsOn = result.controlFindings.some(({ kind }) => kind === 'runsUpInReverse');
    if (cut && !runsOn) return lacking('the run is cut off while a contactor is still in');
    return speedLeft(Math.abs(speed), 'a contactor is still in and the machine runs');
  }
  if (last.mode.masses[loadMass(trajectory.shaft)]!.held || speed === 0) return speedLeft(0, '');
  // Open poles before the touch are the dead time, not the end of the stop.
  const touch = operations.reversal?.touch ?? end;
  if (touch >= end) return lacking('the run is cut off before the incoming contactor closes');
  const coast = coastDown(trajectory.shaft, speed);
  switch (coast.outcome) {
    case 'rest':
      return speedLeft(0, 'the shaft comes to rest by itself after the end of the run');
    case 'slows':
      return speedLeft(0, 'without dry friction the shaft only approaches rest');
    case 'driven':
      return speedLeft(
        Math.abs(speed),
        'once the poles are open the load drives the shaft and nothing holds it',
      );
    case 'goesOn':
      return lacking('dry friction or another torque that slows the coasting shaft is missing');
  }
}

/** What a full reversal lacks to `UP_TO_SPEED` of the steady speed in the other direction. */
function missingSpeed(result: RunResult): Finding {
  const { operations, trajectory, metrics, scenario } = result;
  const { reversal } = operations;
  if (reversal === null || metrics.reversalTime.value !== null) return speedLeft(0, '');
  if (reversal.to < trajectory.tEnd || scenario.solver.endTime !== 'auto')
    return lacking('the run is cut off before the machine has run up in the other direction');
  const back = reversal.direction === 1 ? -1 : 1;
  const target = steadySpeed(scenario, back, insertedAtEnd(result));
  const speed = back * trajectory.at(reversal.to, 'left').speed;
  const wanted =
    UP_TO_SPEED *
    Math.abs(target ?? synchronousSpeed(scenario.supply.frequency, 2 * scenario.machine.polePairs));
  return speedLeft(
    Math.max(0, wanted - speed),
    target === null ? 'the load is more than the machine can drive in the other direction' : '',
  );
}
