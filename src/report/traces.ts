import { evenInstants, type Trajectory } from '../simulate/trajectory.ts';
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

/**
 * Reads [t0, t1] s densely enough that reducing it to columns of pixels loses no visible crest. Columns are shared between figures of one
 * run: not to be written to.
 */
export function readTraces(
  trajectory: Trajectory,
  t0: number,
  t1: number,
  units: UnitSystem,
  density: SampleDensity = PRINTED,
): Traces {
  const sampled = sampleDensely(trajectory, t0, t1, density);
  const ofSamples = traces.get(sampled) ?? new Map<UnitSystem, Traces>();
  traces.set(sampled, ofSamples);
  const found = ofSamples.get(units) ?? tracesOf(sampled, units);
  ofSamples.set(units, found);
  return found;
}

function tracesOf(sampled: SampledColumns, units: UnitSystem): Traces {
  const torquePerSi = displayUnit('N·m', { system: units }).perSi;
  const speedPerSi = displayUnit('rad/s', { system: units }).perSi;
  return {
    t: sampled.t,
    iA: sampled.iA,
    iB: sampled.iB,
    iC: sampled.iC,
    torque: scaled(sampled.torque, torquePerSi),
    loadTorque: scaled(sampled.loadTorque, torquePerSi),
    couplingTorque: scaled(sampled.couplingTorque, torquePerSi),
    speed: scaled(sampled.speed, speedPerSi),
    voltage: sampled.uAlpha.map((alpha, i) => lineRms(alpha, sampled.uBeta[i]!)),
  };
}

/** A column in displayed units; itself where they are SI. */
export function scaled(column: Float64Array, perSi: number): Float64Array {
  return perSi === 1 ? column : column.map((value) => value * perSi);
}

/** Columns of samples, SI. */
export type SampledColumns = ReturnType<Trajectory['sample']>;

/** Several figures read the same stretch; a trajectory never changes, so its samples are kept as long as it is. */
const samples = new WeakMap<Trajectory, Map<string, SampledColumns>>();
/** What was made of samples, in each unit system. */
const traces = new WeakMap<SampledColumns, Map<UnitSystem, Traces>>();

/** How densely a run is read. */
export interface SampleDensity {
  /** Number of samples per supply cycle. */
  readonly perCycle: number;
  /**
   * Beginning and end, in this order, s, of a stretch that is read as densely as a printed figure whatever the rest is;
   * null: none.
   */
  readonly closeUp: readonly [number, number] | null;
}

/** Of everything that is printed. */
const PRINTED: SampleDensity = { perCycle: SAMPLES_PER_CYCLE, closeUp: null };

/** Samples of [t0, t1] s, SI, as those of `readTraces` and shared with it: not to be written to. */
export function sampleDensely(
  trajectory: Trajectory,
  t0: number,
  t1: number,
  density: SampleDensity = PRINTED,
): SampledColumns {
  const known = samples.get(trajectory) ?? new Map<string, SampledColumns>();
  samples.set(trajectory, known);
  const key = [t0, t1, density.perCycle, ...(density.closeUp ?? [])].join(' ');
  const columns = known.get(key) ?? trajectory.sampleAt(instantsOf(trajectory, t0, t1, density));
  known.set(key, columns);
  return columns;
}

/** Evenly spaced instants, more densely in the close-up. */
function instantsOf(trajectory: Trajectory, t0: number, t1: number, density: SampleDensity): Float64Array {
  const { frequency } = trajectory.scenario.supply;
  const even = (from: number, to: number, perCycle: number) => {
    const wanted = Math.ceil((to - from) * frequency * perCycle) + 1;
    return evenInstants(from, to, Math.min(MOST_SAMPLES, Math.max(FEWEST_SAMPLES, wanted)));
  };
  const whole = even(t0, t1, density.perCycle);
  const { closeUp } = density;
  if (closeUp === null) return whole;
  const from = Math.max(t0, closeUp[0]);
  const to = Math.min(t1, closeUp[1]);
  if (!(to > from)) return whole;
  return Float64Array.from([
    ...whole.filter((t) => t < from),
    ...even(from, to, SAMPLES_PER_CYCLE),
    ...whole.filter((t) => t > to),
  ]);
}

/** Line-to-line r.m.s. value of a balanced system with this space vector, V from V crest. */
export function lineRms(uAlpha: number, uBeta: number): number {
  return LINE_RMS_PER_CREST * Math.hypot(uAlpha, uBeta);
}
