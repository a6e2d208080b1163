import type { RunEvent, RunEventKind, Trajectory } from '../simulate/trajectory.ts';
import { type Closing, findClosings } from './closings.ts';

/** A stretch of milliseconds within a run of seconds, s. */
export interface SequenceWindow {
  /** From the first instant of the sequence to its last. */
  readonly from: number;
  readonly to: number;
  /** What is drawn: the sequence with a margin on both sides. */
  readonly t0: number;
  readonly t1: number;
}

/** The change-over of a reversal or plugging, or the opening that a trip or an emergency stop causes. */
export interface ChangeoverWindow extends SequenceWindow {
  /** The event from outside; null where a command or a button drops the coil. */
  readonly trigger: RunEvent | null;
  /** The release of the coil with which it begins. */
  readonly release: RunEvent;
  /** The closing onto the turning machine with which it ends; null where the contactors just open. */
  readonly closing: Closing | null;
}

/** The end of a braking that the zero-speed switch ends. */
export interface BrakingEndWindow extends SequenceWindow {
  /** The release of the braking coil. */
  readonly release: RunEvent;
  /** When the shaft reaches zero speed soon after, s; null where it does not. */
  readonly zero: number | null;
}

/** Margins, shares of the sequence, and their least lengths, s. */
const BEFORE = { share: 0.12, least: 0.005 };
const AFTER = { share: 0.3, least: 0.02 };
/** A window longer than this share of the run enlarges nothing. */
const LARGEST_SHARE = 0.6;
/** Coils dropped by a trip or an emergency stop drop within this time: a program's scan and relays lie between, s. */
const AT_ONCE = 0.25;
/** Poles of one contactor touch within this time of each other: what closes later is another closing, s. */
const SCATTER = 0.1;
const STOPPING: ReadonlySet<RunEventKind> = new Set(['overloadTrips', 'emergencyStopPressed']);

/**
 * The first change-over of a run: from the release of the outgoing coil to the touch of the last incoming pole; where an emergency
 * stop or a trip comes first and nothing closes on it, to the extinction of the last arc. Null where there is none, or where
 * the whole run is hardly longer.
 */
export function changeoverWindow(run: Trajectory): ChangeoverWindow | null {
  // An emergency stop that brakes is both, from one release: the closing then belongs to the picture and comes first.
  const [first] = [plugged(run), stopped(run)]
    .filter((window) => window !== null)
    .sort((a, b) => a.release.t - b.release.t);
  if (first === undefined) return null;
  const trigger = first.trigger ?? triggerOf(run, first.release);
  const from = Math.min(first.from, trigger?.t ?? first.from, begun(first.release));
  return enlarged(run, { ...first, trigger, from });
}

/**
 * The end of the first braking by the zero-speed switch: from its opening to rest or to the last extinction. Null where the
 * braking contactor is not released by the switch.
 */
export function brakingEndWindow(run: Trajectory): BrakingEndWindow | null {
  for (const opening of run.events) {
    if (opening.kind !== 'switchOpens') continue;
    const release = run.events.find((event) => followsSwitch(event) && isSoonAfter(event, opening));
    if (release === undefined) continue;
    const cleared = lastClearing(run, release);
    const rest = run.events.find(
      (event) => event.kind === 'zeroSpeed' && event.t >= opening.t && event.t < cleared + AT_ONCE,
    );
    const zero = rest?.t ?? null;
    return enlarged(run, { from: opening.t, to: Math.max(cleared, zero ?? cleared), release, zero });
  }
  return null;
}

function followsSwitch(event: RunEvent): boolean {
  return event.kind === 'coilReleased' && /zero-speed switch/u.test(event.text);
}

function isSoonAfter(event: RunEvent, cause: RunEvent): boolean {
  return event.t >= cause.t && event.t < cause.t + AT_ONCE;
}

/** When a hand or a device set off a release: relays and a program's scan may lie between; s. */
function begun({ t, rootTime = t }: RunEvent): number {
  return rootTime > t - AT_ONCE ? rootTime : t;
}

type Found = Pick<ChangeoverWindow, 'from' | 'to' | 'trigger' | 'release' | 'closing'>;

function plugged(run: Trajectory): Found | null {
  const closing = findClosings(run).find(({ kind }) => kind === 'plug');
  if (closing === undefined) return null;
  const release = run.events.findLast(
    (event) =>
      event.kind === 'coilReleased' &&
      event.contactor !== closing.contactor &&
      event.t <= (closing.parting ?? closing.touch),
  );
  if (release === undefined) return null;
  const touches = run.events.filter(
    (event) =>
      event.kind === 'poleTouches' &&
      event.contactor === closing.contactor &&
      Math.abs(event.t - closing.touch) < SCATTER,
  );
  return { from: release.t, to: touches.at(-1)?.t ?? closing.touch, trigger: null, release, closing };
}

function stopped(run: Trajectory): Found | null {
  for (const trigger of run.events) {
    if (!STOPPING.has(trigger.kind)) continue;
    const release = run.events.find((event) => event.kind === 'coilReleased' && isSoonAfter(event, trigger));
    if (release !== undefined)
      return { from: trigger.t, to: lastClearing(run, release), trigger, release, closing: null };
  }
  return null;
}

/** The emergency stop or trip just before a release. */
function triggerOf(run: Trajectory, release: RunEvent): RunEvent | null {
  return run.events.findLast((event) => STOPPING.has(event.kind) && isSoonAfter(release, event)) ?? null;
}

/** When the last pole that opens after a release of coils is without current, s. */
function lastClearing(run: Trajectory, release: RunEvent): number {
  const next = run.events.find((event) => event.kind === 'poleTouches' && event.t > release.t);
  const cleared = run.events.findLast(
    (event) => event.kind === 'poleClears' && event.t >= release.t && event.t <= (next?.t ?? run.tEnd),
  );
  return cleared?.t ?? release.t;
}

function enlarged<T extends { from: number; to: number }>(
  run: Trajectory,
  window: T,
): (T & SequenceWindow) | null {
  const span = window.to - window.from;
  const t0 = Math.max(run.tStart, window.from - Math.max(BEFORE.least, BEFORE.share * span));
  const t1 = Math.min(run.tEnd, window.to + Math.max(AFTER.least, AFTER.share * span));
  if (t1 - t0 > LARGEST_SHARE * (run.tEnd - run.tStart)) return null;
  return { ...window, t0, t1 };
}
