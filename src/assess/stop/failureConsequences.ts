import type { RunResult } from '../../measure/result.ts';
import { synchronousSpeed } from '../../scenario/synchronousSpeed.ts';
import { steadySpeed } from '../../shaft/steadySpeed.ts';
import { type CoastDown, coastDown, SLOW_SHARE } from './coastDown.ts';
import { type Standstill, standstill } from './standstill.ts';
import { insertedAtEnd, stopKind } from './stopKind.ts';

/** What happens where supply, reversing contactor or zero-speed switch fails during the first reversal of a run. */
export interface FailureConsequences {
  /** Supply lost, or the reversing contactor not in, at the command: the shaft coasts, without any brake. */
  readonly coast: CoastDown;
  /** What pulls at the standing shaft, and what holds it. */
  readonly standstill: Standstill;
  /**
   * The switch does not open, or the machine is reversed: steady speed in the other direction, rad/s, signed; null where the
   * machine cannot drive the load there.
   */
  readonly reverseSpeed: number | null;
  /** The same for a reader, one sentence each. */
  readonly sentences: readonly string[];
}

/** Works out what failures lead to; null where no plug or reversal takes place in the run. */
export function failureConsequences(result: RunResult): FailureConsequences | null {
  const { operations, trajectory, scenario } = result;
  const { reversal } = operations;
  if (reversal === null) return null;
  const coast = coastDown(trajectory.shaft, trajectory.at(reversal.command, 'left').speed);
  const rest = standstill(scenario);
  const back = reversal.direction === 1 ? -1 : 1;
  const reverseSpeed = steadySpeed(scenario, back, insertedAtEnd(result));
  const hasBrake = scenario.starter.brake !== undefined;
  const synchronous = synchronousSpeed(scenario.supply.frequency, 2 * scenario.machine.polePairs);
  return {
    coast,
    standstill: rest,
    reverseSpeed,
    sentences:
      stopKind(result) === 'reversal'
        ? reversing(coast, rest)
        : [
            `If the supply or the reversing contactor fails at the command, nothing brakes: ${coasting(coast)}${hasBrake ? '. The mechanical brake is not counted in this' : ''}.`,
            ...holding(rest),
            reverseSpeed === null
              ? 'If the zero-speed switch does not open, the machine stays in against a load that it cannot drive in the other direction.'
              : `If the zero-speed switch does not open, the machine runs up in the other direction to ${percent((back * reverseSpeed) / synchronous)} of synchronous speed.`,
            'Plugging neither holds nor is fail-safe: it brakes only while supply, reversing contactor and zero-speed switch work.',
          ],
  };
}

/** A drive that is meant to run up the other way. */
function reversing(coast: CoastDown, rest: Standstill): string[] {
  return [
    `If the supply or the reversing contactor fails at the command, nothing brakes: ${coasting(coast)}.`,
    ...holding(rest),
    'Reversing neither holds nor is fail-safe: it brakes only while supply and reversing contactor work, and runs up the other way.',
  ];
}

function coasting({ outcome, time, angle }: CoastDown): string {
  if (outcome === 'driven') return 'the load keeps the shaft turning';
  if (time === null || angle === null)
    return 'how long the shaft coasts is not known, because no torque is given that slows it';
  const turns = (angle / (2 * Math.PI)).toPrecision(3);
  const how = `in ${Number(time.toPrecision(3))} s and ${Number(turns)} revolutions`;
  return outcome === 'rest'
    ? `the shaft coasts to rest ${how}`
    : `the shaft coasts to ${percent(SLOW_SHARE)} of its speed ${how}, and without dry friction only approaches rest`;
}

function holding({ pull, friction, brake }: Standstill): string[] {
  if (pull === 0) return [];
  if (pull > friction + brake) return ['At rest nothing holds the load: it turns the shaft by itself.'];
  if (pull <= friction) return ['At rest the load pulls at the shaft, and friction alone would hold it.'];
  return ['At rest the load pulls at the shaft, and only the brake holds it.'];
}

function percent(share: number): string {
  return `${Number((100 * share).toPrecision(3))} %`;
}
