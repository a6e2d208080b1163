/**
 * One full plug stop of the 50 hp textbook machine with three times its own inertia (start at t = 0, contacts part at
 * 1.5 s, to standstill): work against precision of this project's integration and of plain odex on the same equations, which is given
 * every switching instant for nothing, looks for no event and measures nothing. Ratios of one run; times are medians.
 *
 *     npm run bench
 */
import os from 'node:os';
import { figures } from '../../src/measure/figures.ts';
import { measure } from '../../src/measure/measure.ts';
import { quadratureOf } from '../../src/measure/quadrature.ts';
import type { RunResult } from '../../src/measure/result.ts';
import { runTrajectory } from '../../src/simulate/run.ts';
import type { Trajectory } from '../../src/simulate/trajectory.ts';
import { DEFAULT_METRICS } from '../../src/survey/spec/taskOf.ts';
import { benchScenario } from './benchScenario.ts';
import { medians, sink } from './medians.ts';
import { plainIntegration } from './plainOdex.ts';

const WARM_UP = 40;
const RUNS = 40;
const TOLERANCES = [1e-4, 1e-5, 1e-6, 1e-7, 1e-8, 1e-9, 1e-10];
/** Tolerance of the reference that errors are measured against. */
const REFERENCE = 1e-12;
/** Errors that all must keep for the comparison at equal error. */
const TARGETS = [1e-4, 1e-5, 1e-6, 1e-7];

interface KeyFigures {
  readonly current: number;
  readonly torque: number;
  readonly stop: number;
}

function figuresOf(result: RunResult): KeyFigures {
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

function largestError(found: KeyFigures, reference: KeyFigures): number {
  return Math.max(
    Math.abs(found.current / reference.current - 1),
    Math.abs(found.torque / reference.torque - 1),
    Math.abs(found.stop / reference.stop - 1),
  );
}

/** Peaks and stop of a plain integration, read from its interpolants by the same code: not part of its time. */
function plainFigures(known: Trajectory, rtol: number): KeyFigures {
  const { kept } = plainIntegration(known, rtol, true);
  let position = 0;
  const segments = kept.map(({ segment, steps }) => {
    const position0 = position;
    const last = steps.at(-1)!;
    position += last.value(segment.model.size + 1, last.t1);
    return { ...segment, steps, position0 };
  });
  const found = figuresOf(measure({ ...known, segments }));
  // The stop time is where its own speed passes zero, by linear extrapolation from the known instant.
  const zero = known.segments.findIndex(
    (segment) => segment.t1 === known.events.find((e) => e.kind === 'zeroSpeed')!.t,
  );
  const segment = segments[zero]!;
  const end = segment.steps.at(-1)!;
  const omega = end.value(segment.model.size, segment.t1);
  const slope = (omega - end.value(segment.model.size, segment.t1 - 1e-4)) / 1e-4;
  return { ...found, stop: found.stop - omega / slope };
}

const rough = runTrajectory(benchScenario(1e-9, 10, 'auto'));
const endTime = rough.events.find((event) => event.kind === 'zeroSpeed')!.t + 1e-3;
const stationary = runTrajectory(benchScenario(REFERENCE, endTime, 'stationary'));
const synchronous = runTrajectory(benchScenario(REFERENCE, endTime, 'auto'));
const reference = figuresOf(measure(stationary));

console.log(
  `Node ${process.version}, ${os.cpus()[0]?.model ?? 'unknown processor'}, ${RUNS} runs after ${WARM_UP} for warm-up`,
);
console.log(
  `Reference: ${reference.current.toFixed(4)} A, ${reference.torque.toFixed(3)} N·m, ${reference.stop.toFixed(6)} s (tolerance ${REFERENCE})\n`,
);
console.log(
  '           this project                                odex, stationary frame                  odex, synchronous',
);
console.log(
  'tolerance  error    rhs   steps  alone  figures  all    error    rhs    no dense  dense ms      error    rhs    no dense',
);
const width = (text: string | number, wide: number) => String(text).padStart(wide);
const rows = TOLERANCES.map((rtol) => {
  const ours = benchScenario(rtol, endTime, 'auto');
  const result = measure(runTrajectory(ours));
  const inPlace = plainIntegration(stationary, rtol, true);
  const turning = plainIntegration(synchronous, rtol, true);
  const ms = medians(
    {
      alone: () => runTrajectory(ours),
      survey: () => figures(runTrajectory(ours), DEFAULT_METRICS),
      job: () => measure(runTrajectory(ours)),
      dense: () => plainIntegration(stationary, rtol, true),
      bare: () => plainIntegration(stationary, rtol, false),
      turning: () => plainIntegration(synchronous, rtol, false),
    },
    WARM_UP,
    RUNS,
  );
  const row = {
    rtol,
    error: largestError(figuresOf(result), reference),
    inPlaceError: largestError(plainFigures(stationary, rtol), reference),
    turningError: largestError(plainFigures(synchronous, rtol), reference),
    ms,
  };
  const { evaluations, steps } = result.trajectory.stats;
  console.log(
    `${rtol.toExponential(0).padEnd(9)}  ${row.error.toExponential(1)} ${width(evaluations, 6)} ${width(steps, 6)} ${width(ms.alone!.toFixed(2), 6)} ${width(ms.survey!.toFixed(2), 8)} ${width(ms.job!.toFixed(2), 6)}  ` +
      `${row.inPlaceError.toExponential(1)} ${width(inPlace.evaluations, 6)} ${width(ms.bare!.toFixed(2), 9)} ${width(ms.dense!.toFixed(2), 9)}      ` +
      `${row.turningError.toExponential(1)} ${width(turning.evaluations, 6)} ${width(ms.turning!.toFixed(2), 9)}`,
  );
  return row;
});

console.log('\nAt equal error of peak current, peak torque and stopping time, ms:');
for (const target of TARGETS) {
  const ours = rows.find((row) => row.error <= target);
  const inPlace = rows.find((row) => row.inPlaceError <= target);
  const turning = rows.find((row) => row.turningError <= target);
  if (ours === undefined || inPlace === undefined || turning === undefined) continue;
  const ratio = (ms: number) => `${ms.toFixed(2)} (${(ms / inPlace.ms.bare!).toFixed(2)} of plain)`;
  console.log(
    `  ≤ ${target.toExponential(0)}: plain odex, stationary, no dense output ${inPlace.ms.bare!.toFixed(2)}; synchronous ${ratio(turning.ms.turning!)}; ` +
      `ours alone ${ratio(ours.ms.alone!)}, with five figures ${ratio(ours.ms.survey!)}, with all ${ratio(ours.ms.job!)}`,
  );
}

const ours = benchScenario(1e-6, endTime, 'auto');
const trajectory = runTrajectory(ours);
const parts = medians(
  {
    integration: () => runTrajectory(ours),
    quadrature: () => quadratureOf({ ...trajectory }),
    'quadrature and all metrics': () => measure({ ...trajectory }),
  },
  WARM_UP,
  RUNS,
);
console.log('\nWhere the time goes at tolerance 1e-6, ms:');
for (const [name, ms] of Object.entries(parts)) console.log(`  ${name.padEnd(28)} ${ms.toFixed(2)}`);
if (sink.last === undefined) console.log('nothing was run');
