import type { MetricKey, Metrics } from '../../measure/metric.ts';
import { simulate } from '../../measure/simulate.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { atAngle, type Bench, plugStopOf, reversalOf, startOf } from './bench.ts';
import type { Quantities } from './quantities.ts';

/** Figures of the three runs of a set; null: not made, or its figures must not be used. */
export interface RunFigures {
  readonly start: Metrics | null;
  /** Ended by the zero-speed switch; without one, the reversal up to zero speed. */
  readonly plug: Metrics | null;
  readonly reversal: Metrics | null;
}

/** Supply angle of each run, rad; null: the run is not made. */
export type RunAngles = Readonly<Record<keyof RunFigures, number | null>>;

/** Runs a set. */
export function runFigures(
  scenario: Scenario,
  { direction, plugs }: Pick<Bench, 'direction' | 'plugs'>,
  angles: RunAngles,
): RunFigures {
  const figures = (run: Scenario, angle: number | null): Metrics | null => {
    if (angle === null) return null;
    const { usable, metrics } = simulate(atAngle(run, angle));
    return usable ? metrics : null;
  };
  const plugRun = scenario.starter.zeroSpeedSwitch === null ? reversalOf : plugStopOf;
  return {
    start: figures(startOf(scenario, direction), angles.start),
    plug: plugs ? figures(plugRun(scenario, direction), angles.plug) : null,
    reversal: plugs ? figures(reversalOf(scenario, direction), angles.reversal) : null,
  };
}

/**
 * What is read in these runs, and the ratios that are worked out of them.
 *
 * @param energy kinetic energy at the running speed, J, that heat is counted in
 */
export function movingQuantities({ start, plug, reversal }: RunFigures, energy: number): Quantities {
  const startTime = read(start, 'startTime');
  const startHeat = read(start, 'startRotorHeat');
  const stopTime = read(plug, 'stopTimeFromTouch');
  const plugHeat = read(plug, 'plugRotorHeat');
  const reversalTime = read(reversal, 'reversalTime');
  const reversalHeat = read(reversal, 'reversalRotorHeat');
  const revolutions = read(plug, 'stopRevolutions');
  const creep = read(plug, 'creepRevolutions');
  return {
    ...known('startTime', startTime),
    ...known('startWorstCycleCurrent', read(start, 'startWorstCycleCurrent')),
    ...known('startPeakCurrent', read(start, 'startPeakCurrent')),
    ...known('plugPeakCurrent', read(plug, 'plugPeakCurrent')),
    ...known('partingToTouch', read(plug, 'partingToTouch')),
    ...known('stopTimeFromTouch', stopTime),
    ...known('stopRevolutions', revolutions === null ? null : Math.abs(revolutions)),
    ...known('creepAngle', creep === null ? null : 2 * Math.PI * Math.abs(creep)),
    ...known('reversalTime', reversalTime),
    ...known('stopToStartTime', ratio(stopTime, startTime)),
    ...known('reversalToStartTime', ratio(reversalTime, startTime)),
    // A start that never came up to speed has no whole heat.
    ...known('startHeatMultiple', startTime === null ? null : ratio(startHeat, energy)),
    ...known('plugHeatMultiple', stopTime === null ? null : ratio(plugHeat, energy)),
    ...known('reversalHeatMultiple', ratio(reversalHeat, energy)),
  };
}

function read(metrics: Metrics | null, key: MetricKey): number | null {
  return metrics?.[key].value ?? null;
}

function ratio(a: number | null, b: number | null): number | null {
  return a === null || b === null || b <= 0 ? null : a / b;
}

function known(key: keyof Quantities, value: number | null): Quantities {
  return value === null ? {} : { [key]: value };
}
