import { isCommand } from '../scenario/scenario.ts';
import { synchronousSpeed } from '../scenario/synchronousSpeed.ts';
import type { Trajectory } from '../simulate/trajectory.ts';
import { crossings } from './crossing.ts';
import { largest } from './extremum.ts';
import { PHASE_NAMES } from './measurement.ts';
import { integral, type Quadrature } from './quadrature.ts';

/** A shaft slower than this share of synchronous speed has stopped for every purpose of a load. */
export const NEAR_REST = 0.01;

/** Figures of a stop, by whatever means it is brought about. SI. */
export interface StopFigures {
  /** Instant of the stopping command, s. */
  readonly command: number;
  /** From the command to the first zero speed, or where friction leaves it open to 1 % of synchronous speed, s; null: neither. */
  readonly time: number | null;
  /** Whether zero speed was reached. */
  readonly reachesZero: boolean;
  /** Turned meanwhile, rad; null as `time`. */
  readonly angle: number | null;
  /** Largest |phase current| once the running current has been interrupted, A; 0 where none flows. */
  readonly peakCurrent: number;
  /** Largest |air-gap torque| from then on, or the brake's torque where that is larger, N·m. */
  readonly peakTorque: number;
  /** Largest |torque in the elastic coupling| from the command on, N·m; null: the shaft is rigid. */
  readonly couplingTorque: number | null;
  /** Heat in the stator winding from the command to the next one or the end of the run, J. */
  readonly statorHeat: number;
  /** Heat in the cages meanwhile, J. */
  readonly rotorHeat: number;
  /** Heat in line resistors meanwhile, J. */
  readonly lineResistorHeat: number;
}

/** The figures of the stop that a command began; until the next command or the end of the run. */
export function stopFigures(quadrature: Quadrature, command: number): StopFigures {
  const { trajectory } = quadrature;
  const to = trajectory.commands.find(({ at }) => at > command)?.at ?? trajectory.tEnd;
  const stopped = stoppedAt(quadrature, command, to);
  const interrupted = interruption(trajectory, command, to);
  const peak = (signal: 'torque' | 'couplingTorque' | 'iA' | 'iB' | 'iC', from: number) =>
    largest(quadrature, signal, 'magnitude', from, to)?.value ?? 0;
  const braked = trajectory.events.some(({ kind, t }) => kind === 'brakeSets' && t >= command && t <= to);
  const brakeTorque = braked ? (trajectory.scenario.starter.brake?.torque ?? 0) : 0;
  const sum = (name: Parameters<typeof integral>[1]) => integral(quadrature, name, command, to);
  return {
    command,
    time: stopped === null ? null : stopped.t - command,
    reachesZero: stopped?.zero === true,
    angle:
      stopped === null ? null : Math.abs(trajectory.at(stopped.t).position - trajectory.at(command).position),
    peakCurrent: Math.max(...PHASE_NAMES.map((phase) => peak(`i${phase}`, interrupted))),
    peakTorque: Math.max(peak('torque', interrupted), brakeTorque),
    couplingTorque: trajectory.shaft.coupling === null ? null : peak('couplingTorque', command),
    statorHeat: sum('statorLoss'),
    rotorHeat: sum('cage1Loss') + sum('cage2Loss'),
    lineResistorHeat: sum('lineResistorLoss'),
  };
}

/** The command that begins the first stop of a run, s: of the first action that opposes or ends rotation. */
export function stopCommand(trajectory: Trajectory): number | null {
  const { initial, actions } = trajectory.scenario;
  const commands = actions.every(isCommand) ? actions : trajectory.commands;
  let runs = initial !== 'rest';
  for (const { at, do: kind } of commands) {
    if (runs) return at;
    runs = kind === 'startForward' || kind === 'startReverse';
  }
  return null;
}

function stoppedAt(
  quadrature: Quadrature,
  from: number,
  to: number,
): { readonly t: number; readonly zero: boolean } | null {
  const { trajectory } = quadrature;
  const zero = trajectory.events.find(({ kind, t }) => kind === 'zeroSpeed' && t > from && t <= to);
  if (zero !== undefined) return { t: zero.t, zero: true };
  const { supply, machine } = trajectory.scenario;
  const limit = NEAR_REST * synchronousSpeed(supply.frequency, 2 * machine.polePairs);
  const sign = Math.sign(trajectory.at(from, 'left').speed);
  // A run that waits for this very speed ends a rounding above it.
  const [near] = crossings(
    quadrature,
    'speed',
    sign * limit * (1 + 1e-6),
    sign > 0 ? 'down' : 'up',
    from,
    to,
  );
  return near === undefined ? null : { t: near, zero: false };
}

/** When no current flows any more after the command; the command itself where that never happens. */
function interruption(trajectory: Trajectory, from: number, to: number): number {
  const silent = trajectory.segments.find(({ kind, t0 }) => kind === 'none' && t0 >= from && t0 < to);
  return silent?.t0 ?? from;
}
