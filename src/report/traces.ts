import type { Trajectory } from '../simulate/trajectory.ts';
import { displayUnit, type UnitSystem } from './formatQuantity.ts';

/** Columns of a stretch of the run in displayed units, all of one length. */
export interface Traces {
  /** s */
  readonly t: Float64Array;
  /** A */
  readonly iA: Float64Array;
  readonly iB: Float64Array;
  readonly iC: Float64Array;
  /** N·m or lbf·ft */
  readonly torque: Float64Array;
  readonly loadTorque: Float64Array;
  readonly couplingTorque: Float64Array;
  /** r/min */
  readonly speed: Float64Array;
  /** Terminal voltage as line-to-line r.m.s. of the space vector, V. */
  readonly voltage: Float64Array;
}

/** Samples per supply cycle of a drawing: a curve of torque over speed looks round even where speed falls steeply. */
const SAMPLES_PER_CYCLE = 80;
/** Enough for a smooth line however short the window. */
const FEWEST_SAMPLES = 400;
/** Bounds memory (some twenty columns of 8 bytes each) of very long runs; 20 samples a cycle remain up to 200 s at 50 Hz. */
const MOST_SAMPLES = 200_000;
/** Line-to-line r.m.s. of a space vector of unit length: √3/√2. */
const LINE_RMS_PER_CREST = Math.sqrt(1.5);

/** Reads [t0, t1] s densely enough that reducing it to columns of pixels loses no visible crest. */
export function readTraces(trajectory: Trajectory, t0: number, t1: number, units: UnitSystem): Traces {
  const sampled = sampleDensely(trajectory, t0, t1);
  const torquePerSi = displayUnit('N·m', { system: units }).perSi;
  const speedPerSi = displayUnit('rad/s', { system: units }).perSi;
  return {
    t: sampled.t,
    iA: sampled.iA,
    iB: sampled.iB,
    iC: sampled.iC,
    torque: sampled.torque.map((value) => value * torquePerSi),
    loadTorque: sampled.loadTorque.map((value) => value * torquePerSi),
    couplingTorque: sampled.couplingTorque.map((value) => value * torquePerSi),
    speed: sampled.speed.map((value) => value * speedPerSi),
    voltage: sampled.uAlpha.map((alpha, i) => lineRms(alpha, sampled.uBeta[i]!)),
  };
}

/** Columns of samples, SI. */
export type SampledColumns = ReturnType<Trajectory['sample']>;

/** Several figures read the same stretch; a trajectory never changes, so its samples are kept as long as it is. */
const samples = new WeakMap<Trajectory, Map<string, SampledColumns>>();

/** Evenly spaced samples of [t0, t1] s, SI, as dense as those of `readTraces` and shared with it: not to be written to. */
export function sampleDensely(trajectory: Trajectory, t0: number, t1: number): SampledColumns {
  const cycles = (t1 - t0) * trajectory.scenario.supply.frequency;
  const wanted = Math.ceil(cycles * SAMPLES_PER_CYCLE) + 1;
  const count = Math.min(MOST_SAMPLES, Math.max(FEWEST_SAMPLES, wanted));
  const known = samples.get(trajectory) ?? new Map<string, SampledColumns>();
  samples.set(trajectory, known);
  const key = `${t0} ${t1} ${count}`;
  const columns = known.get(key) ?? trajectory.sample(t0, t1, count);
  known.set(key, columns);
  return columns;
}

/** Line-to-line r.m.s. value of a balanced system with this space vector, V from V crest. */
export function lineRms(uAlpha: number, uBeta: number): number {
  return LINE_RMS_PER_CREST * Math.hypot(uAlpha, uBeta);
}
