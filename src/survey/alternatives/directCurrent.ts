import { openCircuitTime } from '../../machine/openCircuitTime.ts';
import { quadratureOf } from '../../measure/quadrature.ts';
import { stopFigures } from '../../measure/stopFigures.ts';
import type { InjectionData, Scenario } from '../../scenario/scenario.ts';
import { runTrajectory } from '../../simulate/run.ts';
import { isSuccessful } from '../../simulate/status.ts';
import { type CommandedRun, stoppedBy } from './commandedRun.ts';

/**
 * Open-circuit time constants after which the direct current may come: the residual voltage has then fallen to 22 %. Practice of
 * transferring motors between supplies (NEMA MG 1-20.33, slow transfer; from memory).
 */
export const FLUX_DECAY = 1.5;
/** Resistance of transformer and rectifier over that of the two windings in series. Assumed; common practice, no source. */
const RECTIFIER_SHARE = 0.1;
/** Direct currents that are tried, multiples of rated current. Beyond the upper one windings and rectifiers are not built for it: common practice, no source. */
const CURRENT_RANGE = { least: 0.5, most: 4 } as const;
/** Halvings of that range in its logarithm: the current is then known to 1 %. */
const HALVINGS = 8;
/** Loosest tolerance of the runs that only choose the current. */
const CHOICE_TOLERANCE = 1e-6;

/** A direct current to stop with, and where it comes from. */
export interface ChosenInjection {
  readonly injection: InjectionData;
  /** A */
  readonly current: number;
  /** Words: given, or how it was chosen. */
  readonly origin: string;
}

/**
 * The direct current to compare with: the stated one, or the smallest that stops the load within `wanted` seconds of the command,
 * or the largest that is built where none does.
 *
 * @param ratedCurrent A r.m.s.
 * @param wanted s
 */
export function chooseInjection(run: CommandedRun, ratedCurrent: number, wanted: number): ChosenInjection {
  const { alternatives } = run.scenario;
  const stated = alternatives?.injectionCurrent ?? null;
  const make = (current: number) => injectionOf(run.scenario, current);
  if (stated !== null) return { injection: make(stated), current: stated, origin: 'given' };
  const stopsInTime = (current: number) => {
    const scenario = stoppedBy(run, 'injectDc', { injection: make(current) });
    const relativeTolerance = Math.max(CHOICE_TOLERANCE, scenario.solver.relativeTolerance);
    const trajectory = runTrajectory({ ...scenario, solver: { ...scenario.solver, relativeTolerance } });
    if (!isSuccessful(trajectory.status)) return false;
    const { time } = stopFigures(quadratureOf(trajectory), run.command);
    return time !== null && time <= wanted;
  };
  let low = CURRENT_RANGE.least * ratedCurrent;
  let high = CURRENT_RANGE.most * ratedCurrent;
  const seconds = `${Number(wanted.toPrecision(3))} s`;
  if (!stopsInTime(high))
    return {
      injection: make(high),
      current: high,
      origin: `chosen: ${CURRENT_RANGE.most} times rated current, with which it still takes longer than ${seconds}`,
    };
  if (stopsInTime(low))
    return {
      injection: make(low),
      current: low,
      origin: `chosen: ${CURRENT_RANGE.least} of rated current, the smallest that is tried, stops the load within ${seconds}`,
    };
  for (let i = 0; i < HALVINGS && high > low; i++) {
    const middle = Math.sqrt(low * high);
    if (stopsInTime(middle)) high = middle;
    else low = middle;
  }
  return {
    injection: make(high),
    current: high,
    origin: `chosen: the smallest that stops the load within ${seconds}`,
  };
}

/** A rectifier that drives the current through two windings in series once nothing else changes. */
function injectionOf({ machine, starter, alternatives }: Scenario, current: number): InjectionData {
  const windings = 2 * machine.Rs;
  const resistance = RECTIFIER_SHARE * windings;
  return {
    voltage: current * (windings + resistance),
    resistance,
    // The delay counts from the command; the contacts part one opening time later.
    delay: (alternatives?.injectionDelay ?? FLUX_DECAY * openCircuitTime(machine)) + starter.openingTime,
    closingTime: starter.closingTime,
    duration: null,
  };
}
