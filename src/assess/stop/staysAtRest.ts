import type { RunResult } from '../../measure/result.ts';
import { against } from '../againstLimit.ts';
import { type Criterion, notApplicable } from '../criterion.ts';
import { standstill } from './standstill.ts';
import { stopKind } from './stopKind.ts';

/** Whether a load that pulls at the standing shaft is held. */
export function staysAtRest(result: RunResult): Criterion {
  const question = {
    key: 'staysAtRest',
    name: 'torque that pulls at the standing shaft',
    unit: 'N·m',
    limitIs: 'most',
  } as const;
  if (stopKind(result) === 'reversal')
    return notApplicable(question, 'a full reversal does not stop the machine');
  const { pull, friction, brake, brakeIdle } = standstill(result.scenario);
  const held = friction + brake;
  const remark =
    pull > held
      ? `the load turns the standing shaft: ${whatIsWrong(brake, brakeIdle)}`
      : whatHolds(pull, brake);
  return against(
    { ...question, remark, required: true },
    { value: pull },
    held,
    'physics: friction that holds the load, motor bearings, loss of the gear and holding brake at the motor shaft, as given',
  );
}

function whatIsWrong(brake: number, brakeIdle: boolean): string {
  if (brakeIdle) return 'the brake does not set by itself after plugging';
  return brake > 0 ? 'the brake is too weak' : 'a holding brake is missing';
}

function whatHolds(pull: number, brake: number): string {
  if (pull === 0 || brake > 0) return '';
  return 'held by friction alone, which wears and which oil lowers: a holding brake is common practice';
}
