/**
 * One full plug stop of the 50 hp textbook machine with three times its own inertia (start at t = 0, contacts part at
 * 1.5 s, to standstill), with all metrics, against the same equations integrated by plain odex in the stationary
 * frame, which is given every switching instant for nothing and measures nothing. Ratios of one run; times are medians.
 *
 *     npm run bench
 */
import os from 'node:os';
import { Solver } from '#odex';
import { measure } from '../../src/measure/measure.ts';
import { quadratureOf } from '../../src/measure/quadrature.ts';
import type { RunResult } from '../../src/measure/result.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { runTrajectory } from '../../src/simulate/run.ts';
import { segmentProblem, stateSize } from '../../src/simulate/segment.ts';
import { type Step, stepOf } from '../../src/simulate/step.ts';
import { stateScales } from '../../src/simulate/tolerances.ts';
import type { Trajectory } from '../../src/simulate/trajectory.ts';

const WARM_UP = 20;
const RUNS = 25;
const TOLERANCES = [1e-5, 1e-6, 1e-7, 1e-8, 1e-9, 1e-10];
/** Tolerance of the reference that errors are measured against. */
const REFERENCE = 1e-12;
/** Errors that both sides must keep for the comparison at equal error. */
const TARGETS = [1e-5, 1e-6, 1e-7];
const OMEGA = 2 * Math.PI * 60;

/** Krause, Analysis of Electric Machinery, 50 hp machine; inertia of rotor and load together three times the rotor's. */
function scenario(relativeTolerance: number, endTime: number, frame: 'auto' | 'stationary'): Scenario {
  return {
    schemaVersion: 1,
    title: 'Benchmark',
    description: '',
    supply: { lineVoltage: 460, frequency: 60, angle: 0, sourceResistance: 0, sourceInductance: 0 },
    machine: {
      connection: 'star',
      polePairs: 2,
      Rs: 0.087,
      Lls: 0.302 / OMEGA,
      Lm: 13.08 / OMEGA,
      cages: [{ Rr: 0.228, Llr: 0.302 / OMEGA }],
      inertia: 1.662,
      rated: { power: 37_285, current: null, torque: null, speed: null },
    },
    load: { inertia: 2 * 1.662, torques: [] },
    starter: {
      closingTime: 0.02,
      openingTime: 0.01,
      closingScatter: [0, 0, 0],
      openingScatter: [0, 0, 0],
      changeoverDelay: 0.02,
      changeoverGivenAs: 'delay',
      poles: 'arcing',
      minimumArcingTime: 0,
      exchangedPhases: 'BC',
      zeroSpeedSwitch: null,
    },
    initial: 'rest',
    actions: [
      { at: 0, do: 'startForward' },
      { at: 1.49, do: 'plug' },
    ],
    solver: { relativeTolerance, endTime, maxSteps: 1_000_000, frame },
  };
}

interface Figures {
  readonly current: number;
  readonly torque: number;
  readonly stop: number;
}

function figuresOf(result: RunResult): Figures {
  const { plugPeakCurrent, plugMinimumTorque, stopTimeFromParting } = result.metrics;
  if (
    plugPeakCurrent.value === null ||
    plugMinimumTorque.value === null ||
    stopTimeFromParting.value === null
  )
    throw new Error('the benchmark run did not reach standstill');
  return {
    current: plugPeakCurrent.value,
    torque: plugMinimumTorque.value,
    stop: stopTimeFromParting.value,
  };
}

function largestError(found: Figures, reference: Figures): number {
  return Math.max(
    Math.abs(found.current / reference.current - 1),
    Math.abs(found.torque / reference.torque - 1),
    Math.abs(found.stop / reference.stop - 1),
  );
}

/** Integrates the segments of a known trajectory one after the other with odex alone, as its documentation shows. */
function plainIntegration(known: Trajectory, rtol: number, denseOutput: boolean) {
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

/** Peaks and stop of a plain integration, read from its interpolants by the same code: not part of its time. */
function plainFigures(known: Trajectory, rtol: number): Figures {
  const { kept } = plainIntegration(known, rtol, true);
  let position = 0;
  const segments = kept.map(({ segment, steps }) => {
    const position0 = position;
    const last = steps.at(-1)!;
    position += last.value(segment.model.size + 1, last.t1);
    return { ...segment, steps, position0 };
  });
  const trajectory: Trajectory = { ...known, segments };
  const figures = figuresOf(measure(trajectory));
  // The stop time is where its own speed passes zero, by linear extrapolation from the known instant.
  const zero = known.segments.findIndex(
    (segment) => segment.t1 === known.events.find((e) => e.kind === 'zeroSpeed')!.t,
  );
  const segment = segments[zero]!;
  const end = segment.steps.at(-1)!;
  const omega = end.value(segment.model.size, segment.t1);
  const slope = (omega - end.value(segment.model.size, segment.t1 - 1e-4)) / 1e-4;
  return { ...figures, stop: figures.stop - omega / slope };
}

/** Median over the runs of each of several jobs, which take turns so that a disturbance hits all alike; ms. */
function medians(jobs: Readonly<Record<string, () => unknown>>): Record<string, number> {
  const times: Record<string, number[]> = Object.fromEntries(Object.keys(jobs).map((name) => [name, []]));
  for (let i = 0; i < WARM_UP + RUNS; i++)
    for (const [name, job] of Object.entries(jobs)) {
      const start = performance.now();
      sink = job();
      if (i >= WARM_UP) times[name]!.push(performance.now() - start);
    }
  return Object.fromEntries(
    Object.entries(times).map(([name, list]) => [
      name,
      list.sort((a, b) => a - b)[Math.floor(list.length / 2)]!,
    ]),
  );
}

/** Keeps results alive, so that nothing is optimised away. */
let sink: unknown;

const rough = runTrajectory(scenario(1e-9, 10, 'auto'));
const endTime = rough.events.find((event) => event.kind === 'zeroSpeed')!.t + 1e-3;
const known = runTrajectory(scenario(REFERENCE, endTime, 'stationary'));
const reference = figuresOf(measure(known));

console.log(
  `Node ${process.version}, ${os.cpus()[0]?.model ?? 'unknown processor'}, ${RUNS} runs after ${WARM_UP} for warm-up`,
);
console.log(
  `Reference: ${reference.current.toFixed(4)} A, ${reference.torque.toFixed(3)} N·m, ${reference.stop.toFixed(6)} s (tolerance ${REFERENCE})\n`,
);
console.log('tolerance  complete job            plain odex, dense output   plain odex, no dense output');
console.log('           error    ms     rhs     error    ms     rhs        ms     rhs    steps (job/plain)');
const rows = TOLERANCES.map((rtol) => {
  const ours = scenario(rtol, endTime, 'auto');
  const result = measure(runTrajectory(ours));
  const plain = plainIntegration(known, rtol, true);
  const bare = plainIntegration(known, rtol, false);
  const ms = medians({
    job: () => measure(runTrajectory(ours)),
    plain: () => plainIntegration(known, rtol, true),
    bare: () => plainIntegration(known, rtol, false),
  });
  const row = {
    rtol,
    error: largestError(figuresOf(result), reference),
    plainError: largestError(plainFigures(known, rtol), reference),
    job: ms.job!,
    plain: ms.plain!,
    bare: ms.bare!,
  };
  console.log(
    `${rtol.toExponential(0).padEnd(9)}  ${row.error.toExponential(1)}  ${row.job.toFixed(1).padStart(5)}  ${String(result.trajectory.stats.evaluations).padStart(6)}  ` +
      `${row.plainError.toExponential(1)}  ${row.plain.toFixed(1).padStart(5)}  ${String(plain.evaluations).padStart(6)}     ` +
      `${row.bare.toFixed(1).padStart(5)}  ${String(bare.evaluations).padStart(6)}  ${result.trajectory.stats.steps}/${plain.steps}`,
  );
  return row;
});

console.log('\nAt equal error of peak current, peak torque and stopping time:');
for (const target of TARGETS) {
  const job = rows.find((row) => row.error <= target);
  const plain = rows.find((row) => row.plainError <= target);
  if (job === undefined || plain === undefined) continue;
  console.log(
    `  ≤ ${target.toExponential(0)}: complete job at ${job.rtol.toExponential(0)} ${job.job.toFixed(1)} ms, plain at ${plain.rtol.toExponential(0)} ` +
      `${plain.plain.toFixed(1)} ms (without dense output ${plain.bare.toFixed(1)} ms): ratio ${(job.job / plain.plain).toFixed(2)} ` +
      `(${(job.job / plain.bare).toFixed(2)})`,
  );
}

const ours = scenario(1e-8, endTime, 'auto');
const trajectory = runTrajectory(ours);
const parts = medians({
  integration: () => runTrajectory(ours),
  quadrature: () => quadratureOf(trajectory),
  'quadrature and metrics': () => measure(trajectory),
});
console.log('\nWhere the time goes at the default tolerance 1e-8, ms:');
for (const [name, ms] of Object.entries(parts)) console.log(`  ${name.padEnd(24)} ${ms.toFixed(2)}`);
if (sink === undefined) console.log('nothing was run');
