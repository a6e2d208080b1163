import { CLAMP_WINDOW, type ClampReading, clampReading } from '../../measure/clampReading.ts';
import { type BenchRun, largestSpeed, signOf, speedAt } from './run.ts';

/** A speed that a tachometer shows at a named moment. */
export interface SpeedReading {
  /** "before", "as the switch opens", "at the end". */
  readonly words: string;
  /** rad/s, signed */
  readonly speed: number;
}

/** What the instruments show in a test. */
export interface Readings {
  /** Clamp meter before anything is done; null: nothing flows, or the machine is not running then. */
  readonly before: ClampReading | null;
  /** Clamp meter from the decisive instant to the end; null: run or current ends before one window is over. */
  readonly operation: ClampReading | null;
  /** The current ends for good before one window is over: a reading would be a piece of current spread over the window. */
  readonly cutOff: boolean;
  readonly tachometer: readonly SpeedReading[];
}

/** Clamp-meter reading of a part of a run, s; null where the run ends before one window is over. */
export function readingIn({ quadrature }: BenchRun, from: number, to: number): ClampReading | null {
  return clampReading(quadrature, from, to);
}

/** Everything read in a test. */
export function readingsOf(run: BenchRun): Readings {
  const { steadyUntil, mark } = run.test;
  const cutOff = isCutOff(run);
  return {
    before: steadyUntil === null ? null : readingIn(run, steadyUntil - CLAMP_WINDOW, steadyUntil),
    operation: cutOff ? null : readingIn(run, mark, run.trajectory.tEnd),
    cutOff,
    tachometer: tachometer(run),
  };
}

/** True where current flows at the decisive instant and ends for good within one window of it. */
function isCutOff({ trajectory, test: { mark } }: BenchRun): boolean {
  if (trajectory.shortCircuit !== null) return false;
  const { segments } = trajectory;
  const last = segments.findLastIndex(({ kind }) => kind !== 'none');
  const after = segments[last + 1];
  return last >= 0 && after !== undefined && after.t0 > mark && after.t0 < mark + CLAMP_WINDOW;
}

function tachometer(run: BenchRun): SpeedReading[] {
  const { test, trajectory, standing } = run;
  const { mark, moments, steadyUntil } = test;
  const atMark = speedAt(run, mark);
  const first = speedAt(run, steadyUntil ?? 0);
  const opens = trajectory.events.find(({ kind, t }) => kind === 'switchOpens' && t >= mark);
  const end = trajectory.at(trajectory.tEnd).speed;
  const named = [
    ...(Math.abs(atMark - first) > standing ? [{ t: mark, words: 'at that instant', speed: atMark }] : []),
    ...(opens === undefined ? [] : [{ t: opens.t, words: 'as the switch opens', speed: opens.speed }]),
    ...moments
      .filter(({ t }) => t <= trajectory.tEnd)
      .map(({ words, t }) => ({ t, words, speed: speedAt(run, t) })),
  ].sort((a, b) => a.t - b.t);
  const back = atMark >= 0 ? 'reverse' : 'forward';
  const swing = signOf(back) * largestSpeed(run, back, mark);
  const swings =
    Math.abs(atMark) > standing && Math.abs(swing) > standing && Math.abs(swing - end) > run.turning;
  return [
    { words: 'before', speed: first },
    ...named.map(({ words, speed }) => ({ words, speed })),
    ...(swings ? [{ words: 'fastest the other way', speed: swing }] : []),
    { words: 'at the end', speed: end },
  ];
}
