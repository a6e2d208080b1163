import { measure } from '../../src/measure/measure.ts';
import type { MetricKey } from '../../src/measure/metric.ts';
import type { Integrator, WorkCount } from '../../src/simulate/integrate.ts';
import { type Segment, segmentProblem } from '../../src/simulate/segment.ts';
import type { Step } from '../../src/simulate/step.ts';
import { stateScales } from '../../src/simulate/tolerances.ts';
import type { Trajectory } from '../../src/simulate/trajectory.ts';

/** A run whose segments were integrated between instants that are known. */
export interface SegmentwiseRun {
  /** The known trajectory with other steps. */
  readonly trajectory: Trajectory;
  /** State at the end of each segment. */
  readonly ends: readonly (readonly number[])[];
  readonly stats: WorkCount;
}

/**
 * Integrates the segments of a known trajectory one after the other, each from where the one before has ended, with events neither
 * sought nor met: the instants of the known run are kept, and what its events did to the shaft's states is added.
 *
 * @param tolerance relative; the absolute ones are those of a run
 */
export function bySegments(known: Trajectory, integrator: Integrator, tolerance: number): SegmentwiseRun {
  const { scenario } = known;
  const scales = stateScales(scenario, known.segments[0]!.circuit);
  const shaftScales = [scales.speed, scales.position, scales.speed, scales.twist];
  const stats: WorkCount = { evaluations: 0, steps: 0 };
  const ends: number[][] = [];
  const segments: Segment[] = [];
  let flux: readonly number[] = [];
  let position = known.segments[0]!.position0;
  known.segments.forEach((segment, k) => {
    const { model, shaft, mode, size, t0, t1 } = segment;
    const started = statesAt(segment.steps[0]!, t0, size);
    const before = known.segments[k - 1];
    const y0 =
      before === undefined
        ? started
        : [
            ...model.fromStationary(t0, flux),
            ...ends[k - 1]!.slice(before.model.size).map((value, i) => {
              if (i === 1) return 0;
              const left = before.steps.at(-1)!.value(before.model.size + i, t0);
              return value + (started[model.size + i]! - left);
            }),
          ];
    const steps = [
      ...integrator(segmentProblem(model, shaft, mode), t0, y0, t1, {
        relativeTolerance: tolerance,
        absoluteTolerance: y0.map(
          (_, i) => tolerance * (i < model.size ? scales.flux : shaftScales[i - model.size]!),
        ),
        stats,
        maxSteps: 1_000_000,
        ...(model.size > 0 && { longestStep: 1 / scenario.supply.frequency }),
      }),
    ];
    const end = statesAt(steps.at(-1)!, t1, size);
    steps[steps.length - 1] = steps.at(-1)!.until(t1);
    ends.push(end);
    segments.push({ ...segment, steps, position0: position });
    position += end[model.size + 1]!;
    flux = model.toStationary(t1, end, end[model.size + 1]!);
  });
  return { trajectory: { ...known, segments, stats }, ends, stats };
}

function statesAt(step: Step, t: number, size: number): number[] {
  return Array.from({ length: size }, (_, i) => step.value(i, t));
}

/** Metrics of a segmentwise run; null where the run does not contain one. */
export function metricsOf({ trajectory }: SegmentwiseRun, keys: readonly MetricKey[]): (number | null)[] {
  const { metrics } = measure(trajectory);
  return keys.map((key) => metrics[key].value);
}

/**
 * When the motor's own speed passes zero after the last action, beside the known instant of it, s: by the slope there, which the known run's events did not follow.
 */
export function stopOf(run: SegmentwiseRun): number {
  const { events, segments, scenario } = run.trajectory;
  const commanded = scenario.actions.at(-1)?.at ?? 0;
  const stop = events.find(({ kind, t }) => kind === 'zeroSpeed' && t > commanded);
  const k = segments.findIndex(({ t1 }) => t1 === stop?.t);
  if (k < 0) throw new Error('no segment ends where the speed passes zero');
  const { model, t1, steps } = segments[k]!;
  const omega = run.ends[k]![model.size]!;
  const h = 1e-5;
  return t1 - (omega * h) / (omega - steps.at(-1)!.value(model.size, t1 - h));
}
