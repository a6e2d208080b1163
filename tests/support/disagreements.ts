import type { Metric } from '../../src/index.ts';
import type { IndependentMetric } from '../independent/independentMetric.ts';

/** Times agree to this, s. */
const TIME = 1e-6;

/** Peaks, heats, charges and other values agree to this fraction. */
const RELATIVE = 1e-5;

/** An extremum is flat: its instant is known less well than its value, s. */
const TIME_OF_EXTREMUM = 1e-5;

/** A ledger's residual measures an error, it is no figure of the run: each side stays below this. */
const LEDGER = 1e-6;

/** Below these a value is nothing beside the machine's own: no relative agreement is asked. */
export type Floors = Readonly<Record<string, number>>;

/** For a machine of about 6 A and 12 N·m rated. */
export const SMALL_MACHINE_FLOORS: Floors = { A: 1e-4, N·m: 1e-4, 'rad/s': 1e-5, rad: 1e-5, A·s: 1e-8 };

/** How far two readings of one metric are apart. */
export interface Difference {
  readonly words: string;
  /** Error in units of what is allowed; above 1 they disagree. */
  readonly excess: number;
}

const FULL_TURN = 2 * Math.PI;

/** The same angle on the branch nearest to another: −π and π are one. */
const onBranchOf = (reference: number, angle: number) =>
  angle - FULL_TURN * Math.round((angle - reference) / FULL_TURN);

/**
 * How far two readings of one metric are apart: value, phase and, where it has one of its own, time.
 *
 * @param timed the metric has a time of its own
 */
export function differences(
  key: string,
  ours: Metric,
  theirs: IndependentMetric,
  timed: boolean,
  floors: Floors = SMALL_MACHINE_FLOORS,
): Difference[] {
  const apart = (error: number, allowed: number, words: string): Difference => ({
    words: `${key}: ${words}, allowed ${allowed}`,
    // An error that is not a number is no agreement.
    excess: error <= allowed ? error / allowed : error > allowed ? error / allowed : Number.POSITIVE_INFINITY,
  });
  const otherwise = (words: string): Difference => ({
    words: `${key}: ${words}`,
    excess: Number.POSITIVE_INFINITY,
  });
  if (ours.value === null || theirs.value === null)
    return ours.value === theirs.value ? [] : [otherwise(`${ours.value} against ${theirs.value}`)];
  if (key === 'ledgerResidual')
    return [apart(Math.max(ours.value, theirs.value), LEDGER, `${ours.value} and ${theirs.value}`)];
  const value = ours.unit === 'rad' ? onBranchOf(theirs.value, ours.value) : ours.value;
  const allowed = ours.unit === 's' ? TIME : RELATIVE * Math.abs(theirs.value) + (floors[ours.unit] ?? 0);
  const error = Math.abs(value - theirs.value);
  const found = error === 0 ? [] : [apart(error, allowed, `${value} against ${theirs.value}`)];
  if (theirs.phase !== undefined && theirs.phase !== ours.phase)
    found.push(otherwise(`phase ${ours.phase} against ${theirs.phase}`));
  // What is nothing, such as the lowest torque of a start that is never braked, has no instant.
  const isNothing = Math.abs(theirs.value) <= (floors[ours.unit] ?? 0);
  if (timed && !isNothing && theirs.time !== undefined && ours.time !== undefined)
    found.push(
      apart(
        Math.abs(ours.time - theirs.time),
        TIME_OF_EXTREMUM,
        `at ${ours.time} s against ${theirs.time} s`,
      ),
    );
  return found;
}
