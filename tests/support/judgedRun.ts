import type { Metric, MetricKey } from '../../src/measure/metric.ts';
import type { RunResult } from '../../src/measure/result.ts';
import { simulate } from '../../src/measure/simulate.ts';
import type { LimitsData } from '../../src/scenario/scenario.ts';
import { ARCING_STARTER, scenarioOf, type Variation } from './scenarios.ts';
import { KRAUSE } from './textbookMachines.ts';

/** No limit is known. */
export const NO_LIMITS: LimitsData = {
  instantaneousTrip: null,
  voltageDip: null,
  couplingTorque: null,
  gearboxTorque: null,
  keyTorque: null,
  brakeTorque: null,
  deceleration: null,
  decelerationRadius: null,
  tippingRatio: null,
  slidingFriction: null,
  reverseCreep: null,
  deadTimeMargin: null,
  stopTime: null,
  stopAngle: null,
  contactLife: null,
};

/** A textbook machine of 3 hp that runs and is plugged: friction holds it, a zero-speed switch ends the plugging. */
export const PLUGGED: Variation = {
  starter: { ...ARCING_STARTER, zeroSpeedSwitch: { dropOutSpeed: 8, pickUpSpeed: 14, delay: 0.01 } },
  initial: 'runningForward',
  actions: [{ at: 0.02, do: 'plug' }],
  load: { inertia: 0.03, torques: [{ kind: 'friction', torque: 1, breakaway: 1.5 }] },
  solver: { relativeTolerance: 1e-8 },
};

/** Runs that machine with something different. */
export function pluggedRun(variation: Variation = {}): RunResult {
  return simulate(scenarioOf(KRAUSE.hp3, { ...PLUGGED, ...variation }));
}

/** The same run judged with limits: none of them changes it. */
export function withLimits(result: RunResult, limits: Partial<LimitsData>): RunResult {
  return { ...result, scenario: { ...result.scenario, limits: { ...NO_LIMITS, ...limits } } };
}

/** The same run with other values of metrics. */
export function withMetrics(result: RunResult, values: Partial<Record<MetricKey, number | null>>): RunResult {
  const changed = Object.entries(values).map(([key, value]): [string, Metric] => {
    const { missing: _, ...metric } = result.metrics[key as MetricKey];
    return [key, value === null ? { ...metric, value, missing: 'left out' } : { ...metric, value }];
  });
  return { ...result, metrics: { ...result.metrics, ...Object.fromEntries(changed) } };
}
