import { steadySpeed } from '../shaft/steadySpeed.ts';
import { crossings } from './crossing.ts';
import { found, type Measurement, type MetricGroup, missing } from './measurement.ts';
import { METRIC_KEYS, type Metric } from './metric.ts';
import type { StartOperation } from './operations.ts';
import { stressMetrics } from './plantMetrics.ts';
import { currentMetrics, heatMetrics, kineticEnergy, rotorHeat, torqueMetrics } from './windowMetrics.ts';

/** "Up to speed": this fraction of the steady speed. */
export const UP_TO_SPEED = 0.95;

/** Figures of the start. */
export function startMetrics(m: Measurement): MetricGroup {
  const { start } = m.operations;
  if (start === null) {
    const why =
      m.quadrature.trajectory.scenario.initial === 'rest'
        ? 'the run has no start'
        : 'the run begins with the machine running';
    return Object.fromEntries(
      METRIC_KEYS.filter((key) => key.startsWith('start')).map((key) => [key, missing(key, why)]),
    );
  }
  const { from, to } = start;
  const time = startTime(m, start);
  // Heat belongs to the start only until the machine is up to speed; what follows is running.
  const upToSpeed = time.time ?? to;
  return {
    ...currentMetrics(m, 'start', from, to),
    ...torqueMetrics(m, 'start', from, to),
    ...stressMetrics(m, 'start', from, to),
    startTime: time,
    ...heatMetrics(m, 'start', from, upToSpeed),
    startRotorHeatMultiple:
      time.time === undefined
        ? missing('startRotorHeatMultiple', time.missing ?? 'the start did not come up to speed')
        : found('startRotorHeatMultiple', rotorHeat(m, from, upToSpeed) / kineticEnergy(m, upToSpeed)),
  };
}

/** Rotor heat of a start that came up to speed, J; otherwise why there is none to compare with. */
export function completeStartHeat(m: Measurement): number | string {
  const { start } = m.operations;
  if (start === null) return 'the run has no start to compare with';
  const upToSpeed = startTime(m, start).time;
  if (upToSpeed === undefined)
    return 'the start did not come up to speed, so there is no whole start to compare with';
  return rotorHeat(m, start.from, upToSpeed);
}

function startTime(m: Measurement, start: StartOperation): Metric {
  const { trajectory } = m.quadrature;
  if (start.touch === null) return missing('startTime', 'no contactor closed');
  const target = steadySpeed(trajectory.scenario, start.direction);
  if (target === null) return missing('startTime', 'the machine cannot drive this load at any steady speed');
  const way = target > 0 ? 'up' : 'down';
  const [reached] = crossings(m.quadrature, 'speed', UP_TO_SPEED * target, way, start.touch, start.to);
  if (reached === undefined)
    return missing('startTime', `95 % of the steady speed was not reached by ${start.to} s`);
  return found('startTime', reached - start.touch, { time: reached });
}
