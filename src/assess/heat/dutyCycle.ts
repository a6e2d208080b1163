import type { CycleName, DutyData } from '../../scenario/scenario.ts';
import { brakingHeat, type HeatPulse, NO_HEAT, type OperationHeat, reversalHeat } from './heat.ts';
import type { Cooling } from './thermalNetwork.ts';

/** A stretch of a cycle with constant losses. */
export interface CyclePhase {
  readonly name: 'start' | 'running' | 'stop' | 'reversal' | 'rest';
  /** Heat of the whole stretch, J, and its duration, s. */
  readonly pulse: HeatPulse;
  readonly cooling: Cooling;
}

/** What repeats: its phases in order. */
export type DutyCycle = readonly CyclePhase[];

/** How long the motor runs under load in each cycle: a time, s, or a share of the cycle (start and electric stop included). */
export type Running =
  | { readonly kind: 'time'; readonly time: number }
  | { readonly kind: 'factor'; readonly factor: number };

const SECONDS_PER_HOUR = 3600;

/**
 * What a duty says about running; else what is missing. The stated running time counts before the factor. A motor that is only
 * reversed never rests: it runs for what the reversals leave of the cycle.
 */
export function runningOf(duty: DutyData | undefined, kind: CycleName): Running | string {
  if (kind === 'fullReversal') return { kind: 'factor', factor: 1 };
  if (duty?.runningTime != null) return { kind: 'time', time: duty.runningTime };
  if (duty?.cyclicDurationFactor != null) {
    const factor = duty.cyclicDurationFactor;
    return kind === 'startCoast' && factor >= 1
      ? 'a cyclic duration factor of 1 leaves no time to coast'
      : { kind: 'factor', factor };
  }
  return 'the running time (or the cyclic duration factor) of the duty is missing';
}

/** The parts of an operation of one kind that take their time whatever the rhythm. */
function pulsesOf(heat: OperationHeat, kind: CycleName): readonly Pick<CyclePhase, 'name' | 'pulse'>[] {
  if (kind === 'fullReversal') return [{ name: 'reversal', pulse: reversalHeat(heat) }];
  const start = { name: 'start', pulse: heat.start } as const;
  if (kind === 'startPlugStop') return [start, { name: 'stop', pulse: brakingHeat(heat) }];
  // Coasting leaves no heat in winding and cage. Where the run does not show it, it is part of the rest: see `leastRest`.
  return heat.stopKind === 'coast' ? [start, { name: 'stop', pulse: heat.stop }] : [start];
}

/** Shortest rest, s: what a run does not show of the time in which the load coasts to rest. */
function leastRest({ coastTime = 0, stopKind, stop }: OperationHeat, kind: CycleName): number {
  if (kind !== 'startCoast') return 0;
  return Math.max(0, coastTime - (stopKind === 'coast' ? stop.duration : 0));
}

/** Time that counts as on: coasting does not (IEC 60034-1, duty type S4; from memory). */
function timeOn(heat: OperationHeat, kind: CycleName): number {
  const counted = pulsesOf(heat, kind).filter(({ name }) => kind !== 'startCoast' || name === 'start');
  return counted.reduce((sum, { pulse }) => sum + pulse.duration, 0);
}

/** Most operations per hour that there is time for, 1/h: start, running, and a stop that ends at rest. */
export function mostPerHour(heat: OperationHeat, kind: CycleName, running: Running): number {
  const pulses = pulsesOf(heat, kind).reduce((sum, { pulse }) => sum + pulse.duration, 0);
  const busy = pulses + leastRest(heat, kind);
  if (running.kind === 'time') return SECONDS_PER_HOUR / (busy + running.time);
  const on = timeOn(heat, kind);
  const coasting = busy - on;
  // What is off has its share of the cycle too, and coasting must fit into it.
  const off = coasting > 0 ? coasting / (1 - running.factor) : 0;
  return SECONDS_PER_HOUR / Math.max(on / running.factor, off);
}

/**
 * The cycle of an operation that repeats evenly: start, running, stop, rest, or reversal and running. While the motor speeds up
 * or slows down its own fan does not count: cooling is that of standstill.
 *
 * @param perHour operations per hour, at most `mostPerHour`
 */
export function dutyCycle(
  heat: OperationHeat,
  kind: CycleName,
  running: Running,
  perHour: number,
): DutyCycle {
  const period = SECONDS_PER_HOUR / perHour;
  const pulses = pulsesOf(heat, kind);
  const on = running.kind === 'time' ? running.time : running.factor * period - timeOn(heat, kind);
  const runningTime = Math.max(0, on);
  const busy = pulses.reduce((sum, { pulse }) => sum + pulse.duration, runningTime);
  const [first, ...last] = pulses.map((part): CyclePhase => ({ ...part, cooling: 'standstill' }));
  const rest = Math.max(leastRest(heat, kind), period - busy);
  return [
    ...(first === undefined ? [] : [first]),
    { name: 'running', pulse: runningFor(heat, runningTime), cooling: 'running' },
    ...last,
    ...(rest === 0 ? [] : [restFor(rest)]),
  ];
}

/** Losses of running under load for a while. */
export function runningFor({ running }: OperationHeat, time: number): HeatPulse {
  return {
    winding: running.winding * time,
    cage: running.cage * time,
    outerCage: running.outerCage * time,
    frame: running.frame * time,
    duration: time,
  };
}

/** Rest without losses. */
export function restFor(duration: number): CyclePhase {
  return { name: 'rest', pulse: { ...NO_HEAT, duration }, cooling: 'standstill' };
}

/** s */
export function cycleDuration(cycle: DutyCycle): number {
  return cycle.reduce((sum, { pulse }) => sum + pulse.duration, 0);
}

/** Share of a cycle in which the motor is on: started, running, electrically braked or reversed. */
export function cyclicDurationFactor(cycle: DutyCycle, kind: CycleName): number {
  const off = cycle.filter(({ name }) => name === 'rest' || (kind === 'startCoast' && name === 'stop'));
  return 1 - cycleDuration(off) / cycleDuration(cycle);
}
