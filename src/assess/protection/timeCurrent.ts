import { stiff } from '../../machine/breakdown.ts';
import { steadyState } from '../../machine/steadyState.ts';
import { integral, type Quadrature, quadratureOf } from '../../measure/quadrature.ts';
import type { RunResult } from '../../measure/result.ts';
import { raised, squared } from '../../numeric/raised.ts';
import type { PhaseName, ProtectionCurve, TripClass } from '../../scenario/scenario.ts';
import { overloadConstants, tripTimeCold, tripTimeHot } from '../../starter/overloadRelay.ts';
import { limitOf } from '../againstLimit.ts';

/** A point of a time–current plot: s, A r.m.s. */
export interface TimeCurrentPoint {
  readonly time: number;
  readonly current: number;
}

/** The current of an operation as protection sees it, in the phase with the largest I²t; times count from the touch. */
export interface OperationCurrent {
  readonly phase: PhaseName;
  /** Until zero speed (plug), until the machine is up to speed (start, reversal), or until the next action, s. */
  readonly duration: number;
  /** R.m.s. value over the supply period that ends at each time. */
  readonly perPeriod: readonly TimeCurrentPoint[];
  /** The constant current with the same I²t up to each time, √(I²t/t). */
  readonly equivalent: readonly TimeCurrentPoint[];
}

/** Everything for a plot of the run's currents against what protects and what withstands. */
export interface TimeCurrentData {
  /** Null: the run contains none that completes a circuit. */
  readonly start: OperationCurrent | null;
  readonly plug: OperationCurrent | null;
  /**
   * Times to trip from `cold`, and from long running at the setting (`warm`); `setting`: A r.m.s.; null: no overload relay
   * is given.
   */
  readonly overload: {
    readonly setting: number;
    readonly tripClass: TripClass;
    readonly cold: readonly TimeCurrentPoint[];
    readonly warm: readonly TimeCurrentPoint[];
  } | null;
  /**
   * What the locked rotor withstands: `current` of the circuit at rest and full voltage, A r.m.s., and lines of constant
   * I²t through it, from the `cold` and the `hot` motor. A line is null where its time is not given.
   */
  readonly lockedRotor: {
    readonly current: number;
    readonly cold: readonly TimeCurrentPoint[] | null;
    readonly hot: readonly TimeCurrentPoint[] | null;
  };
  /** As the user gives them. */
  readonly curves: readonly ProtectionCurve[];
  /** Setting of the instantaneous trip, A r.m.s.; null: not given, or none. */
  readonly instantaneousTrip: number | null;
}

/** Points of a row this much apart in time, as a ratio, are enough for a logarithmic plot. */
const TIME_RATIO = 1.02;
/** Largest current of the relay's curves, multiples of the setting, and points of a curve. */
const LARGEST_MULTIPLE = 15;
const CURVE_POINTS = 60;
/** The curves begin this much above the least current that trips. */
const ABOVE_LEAST = 1.02;
/** Range of the lines of the locked rotor, shares of its current: adiabatic heating, no cooling. */
const WITHSTAND_RANGE = [0.5, 2] as const;

/** Collects a time–current plot of a run. */
export function timeCurrentData(result: RunResult): TimeCurrentData {
  const quadrature = quadratureOf(result.trajectory);
  const trip = limitOf(result.scenario, 'instantaneousTrip');
  return {
    start: startCurrent(result, quadrature),
    plug: plugCurrent(result, quadrature),
    overload: overloadCurves(result),
    lockedRotor: lockedRotorLines(result),
    curves: result.scenario.protection?.curves ?? [],
    instantaneousTrip: typeof trip === 'number' ? trip : null,
  };
}

function startCurrent({ operations, metrics }: RunResult, quadrature: Quadrature): OperationCurrent | null {
  const { start } = operations;
  if (start === null || start.touch === null) return null;
  const { value } = metrics.startTime;
  return operationCurrent(quadrature, start.touch, value === null ? start.to : start.touch + value);
}

function plugCurrent({ operations, metrics }: RunResult, quadrature: Quadrature): OperationCurrent | null {
  const { reversal } = operations;
  if (reversal === null || reversal.touch === null) return null;
  const reached = metrics.reversalTime.value;
  const end = reached === null ? (reversal.zero ?? reversal.to) : reversal.touch + reached;
  return operationCurrent(quadrature, reversal.touch, Math.max(end, reversal.touch));
}

function operationCurrent(quadrature: Quadrature, from: number, to: number): OperationCurrent | null {
  const period = 1 / quadrature.trajectory.scenario.supply.frequency;
  const squares = (phase: PhaseName, ta: number, tb: number) => integral(quadrature, `i${phase}2`, ta, tb);
  const phase = (['A', 'B', 'C'] as const).reduce((most, next) =>
    squares(next, from, to) > squares(most, from, to) ? next : most,
  );
  const perPeriod: TimeCurrentPoint[] = [];
  const equivalent: TimeCurrentPoint[] = [];
  let kept = 0;
  for (let n = 1; n * period <= to - from; n++) {
    const time = n * period;
    if (time < TIME_RATIO * kept) continue;
    kept = time;
    const t = from + time;
    perPeriod.push({ time, current: Math.sqrt(squares(phase, t - period, t) / period) });
    equivalent.push({ time, current: Math.sqrt(squares(phase, from, t) / time) });
  }
  return perPeriod.length === 0 ? null : { phase, duration: to - from, perPeriod, equivalent };
}

function overloadCurves({ scenario }: RunResult): TimeCurrentData['overload'] {
  const relay = scenario.protection?.overload ?? scenario.starter.control?.overload ?? null;
  if (relay === null) return null;
  const { setting, tripClass } = relay;
  const constants = overloadConstants(tripClass);
  const least = ABOVE_LEAST * constants.k;
  const multiples = Array.from(
    { length: CURVE_POINTS },
    (_, i) => least * raised(LARGEST_MULTIPLE / least, i / (CURVE_POINTS - 1)),
  );
  const curve = (time: (multiple: number) => number) =>
    multiples.map((multiple) => ({ time: time(multiple), current: multiple * setting }));
  return {
    setting,
    tripClass,
    cold: curve((multiple) => tripTimeCold(multiple, constants)),
    warm: curve((multiple) => tripTimeHot(multiple, 1, constants)),
  };
}

/** The times are the maker's at rated voltage: the impedance of the supply does not lower the current here. */
function lockedRotorLines({ scenario }: RunResult): TimeCurrentData['lockedRotor'] {
  const { current } = steadyState(scenario.machine, stiff(scenario.supply), 1);
  const line = (time: number | null | undefined): readonly TimeCurrentPoint[] | null =>
    time == null
      ? null
      : WITHSTAND_RANGE.map((share) => ({ time: time / squared(share), current: share * current }));
  return {
    current,
    cold: line(scenario.thermal?.lockedRotorTimeCold),
    hot: line(scenario.thermal?.lockedRotorTimeHot),
  };
}
