import type { Quadrature } from '../../measure/quadrature.ts';
import type { Channel, ChannelOf } from '../../simulate/channels.ts';
import type { Trajectory } from '../../simulate/trajectory.ts';
import type { ContactorName, Direction } from '../../starter/starter.ts';
import type { CommissioningTest } from './test.ts';

/** A stretch of time, s; it ends at +∞ where it lasts to the end of the run. */
export interface Interval {
  readonly from: number;
  readonly to: number;
}

/** A test with its simulation. */
export interface BenchRun {
  readonly test: CommissioningTest;
  readonly trajectory: Trajectory;
  readonly quadrature: Quadrature;
  /** Steady speeds that circuit and load give, rad/s, signed; null: the machine cannot drive the load. */
  readonly steady: Readonly<Record<Direction, number | null>>;
  /** Synchronous speed, rad/s. */
  readonly synchronous: number;
  /** Below this the shaft counts as standing, rad/s. */
  readonly standing: number;
  /** Above this it counts as turning the other way for good, rad/s. */
  readonly turning: number;
}

/** Both contactors. */
export const CONTACTORS: readonly ContactorName[] = ['forward', 'reverse'];

/** +1 forward, −1 reverse. */
export function signOf(direction: Direction): 1 | -1 {
  return direction === 'forward' ? 1 : -1;
}

/** When a contactor's coil is energised. */
export function energised({ trajectory }: BenchRun, contactor: ContactorName): readonly Interval[] {
  return onIntervals(trajectory, { kind: 'coil', device: `${contactor}Contactor` });
}

/** When a contactor's armature is in. */
export function closed({ trajectory }: BenchRun, contactor: ContactorName): readonly Interval[] {
  return onIntervals(trajectory, { kind: 'device', device: `${contactor}Contactor` });
}

function onIntervals({ channels }: Trajectory, of: ChannelOf): Interval[] {
  const channel = channels.find((one) => sameChannel(one.of, of));
  return (channel?.changes ?? []).flatMap((change, k) => {
    if (change.value !== 'on') return [];
    return [{ from: change.t, to: channel?.changes[k + 1]?.t ?? Number.POSITIVE_INFINITY }];
  });
}

function sameChannel(a: Channel['of'], b: ChannelOf): boolean {
  return a.kind === b.kind && 'device' in a && 'device' in b && a.device === b.device;
}

/** When a contactor's coil is energised for this purpose: to run, or to brake. */
export function energisedFor(
  run: BenchRun,
  contactor: ContactorName,
  purpose: 'command' | 'brake',
): readonly Interval[] {
  const changes = run.trajectory.events.filter(
    (event) =>
      event.contactor === contactor &&
      (event.kind === 'coilEnergised' || event.kind === 'purposeChanges') &&
      event.purpose !== undefined,
  );
  return energised(run, contactor).flatMap(({ from, to }) => {
    // A contactor that is in at t = 0 runs the machine.
    const inside = changes.filter(({ t }) => t >= from && t < to);
    const first = inside[0]?.t === from ? [] : [{ t: from, purpose: 'command' as const }];
    const parts = [...first, ...inside];
    return parts.flatMap((part, k): Interval[] =>
      part.purpose === purpose ? [{ from: part.t, to: parts[k + 1]?.t ?? to }] : [],
    );
  });
}

/** True where any of the intervals has a part inside (from, to). */
export function anyWithin(intervals: readonly Interval[], from: number, to: number): boolean {
  return intervals.some((one) => Math.min(one.to, to) > Math.max(one.from, from));
}

/** True where one of the intervals contains [from, to]. */
export function throughout(intervals: readonly Interval[], from: number, to: number): boolean {
  return intervals.some((one) => one.from <= from && one.to >= to);
}

/** True where two intervals of the two lists overlap. */
export function overlap(a: readonly Interval[], b: readonly Interval[]): boolean {
  return a.some(({ from, to }) => anyWithin(b, from, to));
}

/** Speed of the motor shaft, rad/s. */
export function speedAt({ trajectory }: BenchRun, t: number): number {
  return trajectory.at(t, 'left').speed;
}

/** Largest speed in a direction inside [from, end], rad/s, not below 0. */
export function largestSpeed(
  { quadrature, trajectory }: BenchRun,
  direction: Direction,
  from: number,
): number {
  const sign = signOf(direction);
  let best = Math.max(0, sign * trajectory.at(from).speed, sign * trajectory.at(trajectory.tEnd).speed);
  const { nodeTime, samples } = quadrature;
  for (let k = 0; k < nodeTime.length; k++)
    if (nodeTime[k]! >= from) best = Math.max(best, sign * samples.speed[k]!);
  return best;
}

/**
 * How a run ended, as somebody beside the machine would put it. In all of them `t` is the instant, s, `speed` that of the
 * motor shaft, rad/s, `current` the prospective one, A r.m.s.
 */
export type FinalState =
  | { readonly kind: 'rest' }
  /** Nothing is connected; it turns on by itself. */
  | { readonly kind: 'coasts'; readonly speed: number }
  /** Current flows through this contactor. */
  | { readonly kind: 'connected'; readonly contactor: ContactorName; readonly speed: number }
  /** Prospective current, A r.m.s.; null where nothing given limits it. */
  | { readonly kind: 'shortCircuit'; readonly t: number; readonly current: number | null };

/** How the run ended. */
export function finalState(run: BenchRun): FinalState {
  const { trajectory, standing } = run;
  const { shortCircuit } = trajectory;
  if (shortCircuit !== null)
    return { kind: 'shortCircuit', t: shortCircuit.t, current: shortCircuit.prospectiveCurrent };
  const { speed } = trajectory.at(trajectory.tEnd);
  const conducts = trajectory.segments.at(-1)?.kind !== 'none';
  const contactor = CONTACTORS.find((one) => closed(run, one).at(-1)?.to === Number.POSITIVE_INFINITY);
  if (conducts && contactor !== undefined) return { kind: 'connected', contactor, speed };
  return Math.abs(speed) <= standing ? { kind: 'rest' } : { kind: 'coasts', speed };
}
