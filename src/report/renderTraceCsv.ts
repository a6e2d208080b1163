import type { RunResult } from '../measure/result.ts';
import type { Point } from '../simulate/trajectory.ts';

/** How finely the trace is sampled. */
export interface TraceOptions {
  /** s; a fraction 1/`SAMPLES_PER_PERIOD` of the supply period where not given. */
  readonly step?: number;
}

/** Samples per supply period in trace.csv: 0.5 ms apart at 50 Hz. */
const SAMPLES_PER_PERIOD = 40;

/** More rows than this make the step longer: the file stays below some 25 MB. */
export const MOST_TRACE_ROWS = 100_000;

const SQRT3 = Math.sqrt(3);
const RPM_PER_RADPS = 30 / Math.PI;
const TURN = 2 * Math.PI;

/** Columns in order: name with unit, and how it follows from a point. All in SI except speed_rpm and position_rev. */
const COLUMNS: readonly (readonly [name: string, value: (point: Point) => number])[] = [
  ['time_s', (p) => p.t],
  ['current_a_A', (p) => p.iA],
  ['current_b_A', (p) => p.iB],
  ['current_c_A', (p) => p.iC],
  ['electromagnetic_torque_Nm', (p) => p.torque],
  ['load_torque_Nm', (p) => p.loadTorque],
  ['speed_radps', (p) => p.speed],
  ['speed_rpm', (p) => p.speed * RPM_PER_RADPS],
  ['position_rev', (p) => p.position / TURN],
  // Phase values are projections of the space vector: u_ab = u_a − u_b = (3/2)·uα − (√3/2)·uβ, and so on round.
  ['terminal_voltage_ab_V', (p) => 1.5 * p.uAlpha - (SQRT3 / 2) * p.uBeta],
  ['terminal_voltage_bc_V', (p) => SQRT3 * p.uBeta],
  ['terminal_voltage_ca_V', (p) => -1.5 * p.uAlpha - (SQRT3 / 2) * p.uBeta],
  ['stator_flux_alpha_Wb', (p) => p.psiAlpha],
  ['stator_flux_beta_Wb', (p) => p.psiBeta],
  ['rotor_flux_alpha_Wb', (p) => p.psiRAlpha],
  ['rotor_flux_beta_Wb', (p) => p.psiRBeta],
];

/** Columns of a run with an elastic coupling, seen at the motor shaft; they stand before the last column. */
const COUPLING_COLUMNS: typeof COLUMNS = [
  ['coupling_torque_Nm', (p) => p.couplingTorque],
  ['load_speed_radps', (p) => p.loadSpeed],
];

const CONDUCTING = { three: 3, two: 2, none: 0 } as const;

/**
 * The trace as RFC 4180 text: evenly spaced samples by index, and both sides of every switching instant (the time
 * stands twice, the values before it first). Numbers are the shortest that read back as the same.
 * The last column counts the motor terminals that carry current: 3, 2 or 0.
 */
export function renderTraceCsv(result: RunResult, options: TraceOptions = {}): string {
  const { trajectory } = result;
  const columns = result.scenario.load.coupling === undefined ? COLUMNS : [...COLUMNS, ...COUPLING_COLUMNS];
  const lines = [[...columns.map(([name]) => name), 'terminals_conducting'].join(',')];
  const row = (point: Point, conducting: number) => {
    lines.push([...columns.map(([, value]) => numberText(value(point))), String(conducting)].join(','));
  };
  const step = traceStep(result, options);
  let next = 0;
  trajectory.segments.forEach((segment, index) => {
    const conducting = CONDUCTING[segment.kind];
    const isLast = index === trajectory.segments.length - 1;
    row(trajectory.at(segment.t0, 'right'), conducting);
    while (trajectory.tStart + next * step <= segment.t0) next += 1;
    for (; trajectory.tStart + next * step < segment.t1; next += 1) {
      row(trajectory.at(trajectory.tStart + next * step), conducting);
    }
    if (segment.t1 > segment.t0 || isLast)
      row({ ...trajectory.at(segment.t1, 'left'), t: segment.t1 }, conducting);
  });
  return `${lines.join('\r\n')}\r\n`;
}

/** The step that is used, s: the one asked for, or longer where the run would have too many rows. */
export function traceStep(result: RunResult, options: TraceOptions = {}): number {
  const { tStart, tEnd } = result.trajectory;
  return Math.max(
    options.step ?? 1 / (SAMPLES_PER_PERIOD * result.scenario.supply.frequency),
    (tEnd - tStart) / MOST_TRACE_ROWS,
  );
}

/** Empty where there is no number: NaN is not a value a reader of the file should have to know. */
function numberText(value: number): string {
  return Number.isFinite(value) ? String(value === 0 ? 0 : value) : '';
}
