import { crossings } from '../../src/measure/crossing.ts';
import { largest } from '../../src/measure/extremum.ts';
import { integral, type Quadrature, quadratureOf } from '../../src/measure/quadrature.ts';
import type { Integrand, Signal } from '../../src/measure/signals.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { runTrajectory } from '../../src/simulate/run.ts';
import type { RunStatusCode } from '../../src/simulate/status.ts';
import type { Trajectory } from '../../src/simulate/trajectory.ts';

/** A finished run with short ways to read it. */
export interface Readings {
  readonly trajectory: Trajectory;
  readonly quadrature: Quadrature;
  /** Most negative or most positive value with its time. */
  extreme(
    signal: Signal,
    way: 'min' | 'max' | 'magnitude',
    from?: number,
    to?: number,
  ): { value: number; time: number };
  /** First time at which a signal passes a level. */
  passes(signal: Signal, level: number): number;
  integral(name: Integrand, from: number, to: number): number;
  /** First instant of zero speed. */
  zeroSpeed(): number;
  /** Largest magnitude of the stator current space vector, from evenly spaced samples and a parabola. */
  largestVector(from: number, to: number, count: number): number;
}

/**
 * Runs a scenario and demands that it ends as asked.
 *
 * @param asked how it may end
 */
export function run(
  scenario: Scenario,
  asked: readonly RunStatusCode[] = ['finished', 'endTimeReached'],
): Readings {
  const trajectory = runTrajectory(scenario);
  const { status, tStart, tEnd } = trajectory;
  if (!asked.includes(status.code)) throw new Error(`the run ended with ${status.code}: ${status.message}`);
  const quadrature = quadratureOf(trajectory);
  const shapes = { min: 'smallest', max: 'largest', magnitude: 'magnitude' } as const;
  return {
    trajectory,
    quadrature,
    extreme(signal, way, from = tStart, to = tEnd) {
      const found = largest(quadrature, signal, shapes[way], from, to);
      if (found === null) throw new Error(`no ${way} of ${signal}`);
      return { value: way === 'min' ? -found.value : found.value, time: found.time };
    },
    passes(signal, level) {
      const [t] = crossings(quadrature, signal, level, 'either', tStart, tEnd);
      if (t === undefined) throw new Error(`${signal} does not pass ${level}`);
      return t;
    },
    integral: (name, from, to) => integral(quadrature, name, from, to),
    zeroSpeed() {
      const event = trajectory.events.find((candidate) => candidate.kind === 'zeroSpeed' && candidate.t > 0);
      if (event === undefined) throw new Error('the run does not reach zero speed');
      return event.t;
    },
    largestVector(from, to, count) {
      const { iA, iB, iC } = trajectory.sample(from, to, count);
      const size = iA.map((a, i) => Math.sqrt((2 / 3) * (a * a + iB[i]! ** 2 + iC[i]! ** 2)));
      const at = size.reduce((best, value, i) => (value > size[best]! ? i : best), 0);
      return parabolaTop(size[at - 1] ?? size[at]!, size[at]!, size[at + 1] ?? size[at]!);
    },
  };
}

/** Top of the parabola through three evenly spaced values, the middle one the largest. */
function parabolaTop(left: number, middle: number, right: number): number {
  const bend = left - 2 * middle + right;
  return bend === 0 ? middle : middle - (left - right) ** 2 / (8 * bend);
}
