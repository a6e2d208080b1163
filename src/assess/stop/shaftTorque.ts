import type { RunResult } from '../../measure/result.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { windageTorque } from '../../shaft/loadTorque.ts';
import { effectiveInertia } from '../../shaft/shaftRates.ts';
import type { Segment } from '../../simulate/segment.ts';
import { givenIn, type LimitKey, limitOf } from '../againstLimit.ts';
import { type Criterion, type CriterionParts, judged, notJudged, waived } from '../criterion.ts';
import { joinRemarks, saturationRemark } from '../saturationRemark.ts';
import { STANDARD_LIMITS } from '../standardLimits.ts';
import { largestInRun } from './largestInRun.ts';

const PARTS = [
  'couplingTorque',
  'gearboxTorque',
  'keyTorque',
  'brakeTorque',
] as const satisfies readonly LimitKey[];

/** The part with the lowest torque limit given, N·m; null where none is. */
export function weakestShaftPart(
  scenario: Scenario,
): { readonly key: (typeof PARTS)[number]; readonly limit: number } | null {
  const given = PARTS.flatMap((key) => {
    const limit = limitOf(scenario, key);
    return typeof limit === 'number' ? [{ key, limit }] : [];
  });
  return given.toSorted((a, b) => a.limit - b.limit)[0] ?? null;
}

/**
 * Largest torque between motor and load over start and plug, against the weakest part given.
 *
 * With an elastic coupling it is the coupling's torque. A rigid shaft carries the air-gap torque less what turns the rotor itself,
 * and hides that a real one twists: after a step of torque it swings up to twice as far. Above the limit without that swing the
 * criterion fails; below it even with the swing it passes; in between the stiffness of the coupling is missing.
 */
export function shaftTorque(result: RunResult): Criterion {
  const { scenario, trajectory } = result;
  const stated = PARTS.map((key) => ({ key, limit: limitOf(scenario, key) }));
  const unknown = stated.filter(({ limit }) => limit === null).map(({ key }) => `limits.${key}`);
  const weakest = weakestShaftPart(scenario);
  const rigid = trajectory.shaft.coupling === null;
  const name = 'torque between motor and load';
  const question = { key: 'shaftTorque', name, unit: 'N·m', limitIs: 'most', required: true } as const;
  if (weakest === null && unknown.length === 0) return waived({ ...question, remark: '' });
  const value = rigid ? rigidTorque(result) : couplingTorque(result);
  const parts: Omit<CriterionParts, 'remark'> = {
    ...question,
    value,
    limit: weakest?.limit ?? null,
    source: weakest === null ? 'none given' : givenIn(weakest.key),
  };
  if (value === null) return notJudged(parts, 'the run contains neither a start nor a reversal');
  if (weakest === null) return notJudged(parts, whatIsUnknown(unknown));
  const common = joinRemarks(
    unknown.length === 0 ? '' : `not given: ${unknown.join(', ')}`,
    saturationRemark(scenario),
  );
  if (!rigid) return judged({ ...parts, remark: common });
  const swing = STANDARD_LIMITS.torsionalStep.value;
  if (value > weakest.limit)
    return judged({
      ...parts,
      value: swing * value,
      remark: joinRemarks(
        `twice the torque of a rigid shaft, which exceeds the limit by itself: ${Number(value.toPrecision(3))} N·m`,
        common,
      ),
    });
  if (swing * value > weakest.limit)
    return notJudged(
      { ...parts, value: swing * value },
      'the stiffness of the coupling (load.coupling) is missing: a rigid shaft keeps the limit, an elastic one may swing to ' +
        'twice this torque and then does not',
    );
  return judged({
    ...parts,
    value: swing * value,
    remark: joinRemarks(
      'twice the torque of a rigid shaft, as after a step of torque; near resonance with the supply it is more, which a coupling with its stiffness would show',
      common,
    ),
  });
}

function whatIsUnknown(limits: readonly string[]): string {
  return limits.length === PARTS.length
    ? 'a torque limit of coupling, gearbox, key or brake (section limits) is missing'
    : `${limits.join(', ')} ${limits.length === 1 ? 'is' : 'are'} missing`;
}

/** Torque of largest magnitude in the elastic coupling, N·m. */
function couplingTorque({ metrics }: RunResult): number | null {
  const found = [metrics.startCouplingTorque, metrics.plugCouplingTorque].flatMap(({ value }) =>
    value === null ? [] : [Math.abs(value)],
  );
  return found.length === 0 ? null : Math.max(...found);
}

/**
 * Largest magnitude of what a rigid shaft carries from motor to load, N·m at the motor:
 * T_e − windage − bearings − J_M·dω/dt, which without gear loss is (J_L·(T_e − windage − bearings) + J_M·T_load)/(J_M + J_L).
 */
function rigidTorque({ trajectory, operations }: RunResult): number | null {
  const { shaft } = trajectory;
  const carried = (t: number, { mode }: Segment) => {
    const { torque, loadTorque, speed } = trajectory.at(t);
    const [motor] = mode.masses;
    const acceleration = motor!.held ? 0 : (torque - loadTorque) / effectiveInertia(shaft, mode);
    const own = windageTorque(shaft, speed) + shaft.motor.friction * motor!.direction;
    return Math.abs(torque - own - shaft.motorInertia * acceleration);
  };
  const { start, reversal } = operations;
  const found = [
    start === null ? null : largestInRun(trajectory, start.from, start.to, carried),
    reversal === null ? null : largestInRun(trajectory, reversal.command, reversal.to, carried),
  ].filter((value) => value !== null);
  return found.length === 0 ? null : Math.max(...found);
}
