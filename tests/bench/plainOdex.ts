import { Solver } from '#odex';
import { segmentProblem, stateSize } from '../../src/simulate/segment.ts';
import { type Step, stepOf } from '../../src/simulate/step.ts';
import { stateScales } from '../../src/simulate/tolerances.ts';
import type { Trajectory } from '../../src/simulate/trajectory.ts';

/** Integrates the segments of a known trajectory one after the other with odex alone, as its documentation shows. */
export function plainIntegration(known: Trajectory, rtol: number, denseOutput: boolean) {
  let flux = known.segments[0]!.model.toStationary(0, new Array<number>(8).fill(0), 0);
  let omegaM = 0;
  let evaluations = 0;
  let steps = 0;
  const scales = stateScales(known.scenario, known.segments[0]!.circuit);
  const kept: {
    segment: (typeof known.segments)[number];
    steps: Step[];
  }[] = [];
  for (const segment of known.segments) {
    const { model } = segment;
    const n = stateSize(model, known.shaft);
    const problem = segmentProblem(model, known.shaft, segment.mode);
    const absoluteTolerance = Array.from(
      { length: n },
      (_, i) => rtol * (i < model.size ? scales.flux : i === model.size ? scales.speed : scales.position),
    );
    const solver = new Solver(
      (t, y, dydt) => {
        evaluations++;
        problem.derivatives(t, y, dydt);
        return undefined;
      },
      n,
      { rawFunction: true, relativeTolerance: rtol, absoluteTolerance, denseOutput, maxSteps: 1_000_000 },
    );
    let y = [...model.fromStationary(segment.t0, flux), omegaM, 0];
    const own: (typeof kept)[number] = { segment, steps: [] };
    for (const step of solver.solutionSegments(segment.t0, y, segment.t1)) {
      y = step.y;
      steps++;
      own.steps.push(stepOf(step.x0, step.x1, step.f));
    }
    kept.push(own);
    flux = model.toStationary(segment.t1, y, y[n - 1]!);
    omegaM = y[n - 2]!;
  }
  return { kept, evaluations, steps };
}
