import { hypotenuse } from '../numeric/hypotenuse.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { type ContactorName, hasFault, opposite, PHASES, type StarterState } from '../starter/starter.ts';
import type { RunEvent, ShortCircuit } from './trajectory.ts';

/** A contactor whose poles do not touch any more from a time on (s), to find out when the other one's arcs would end. */
export interface Blocked {
  readonly contactor: ContactorName;
  /** From here on its poles do not touch any more, s. */
  readonly since: number;
}

/** Supply periods after which the outgoing contactor's arcs have ended for certain (two zeros a period, scatter apart). */
const PERIODS_TO_EXTINCTION = 2;

/**
 * What is known about a line-to-line short circuit at a touch.
 *
 * @param terminal motor terminal on which both contactors' poles conduct
 * @param events of the run so far
 * @param bothClosed poles of both contactors are closed there
 * @param rerun events of the same scenario with a contactor blocked
 */
export function describeShortCircuit(
  scenario: Scenario,
  t: number,
  terminal: number,
  events: readonly RunEvent[],
  bothClosed: boolean,
  rerun: (scenario: Scenario, blocked: Blocked) => readonly RunEvent[],
): ShortCircuit {
  const { supply, starter, solver } = scenario;
  const inductance = supply.sourceInductance + (supply.cable?.inductance ?? 0);
  const resistance = supply.sourceResistance + (supply.cable?.resistance ?? 0);
  const impedance = hypotenuse(resistance, 2 * Math.PI * supply.frequency * inductance);
  const contactor = events.findLast((event) => event.kind === 'poleTouches')?.contactor ?? 'reverse';
  const longest = PERIODS_TO_EXTINCTION / supply.frequency + starter.minimumArcingTime;
  const endTime = t + longest + Math.max(...starter.openingScatter);
  const after = rerun({ ...scenario, solver: { ...solver, endTime } }, { contactor, since: t });
  const last = after.findLast(
    (event) => event.kind === 'poleClears' && event.contactor === opposite(contactor) && event.t >= t,
  );
  return {
    t,
    phase: PHASES[terminal as 0 | 1 | 2],
    prospectiveCurrent: impedance > 0 ? supply.lineVoltage / (2 * impedance) : null,
    lastExtinction: last?.t ?? t,
    bothClosed,
    welded: hasFault(starter, 'weldedPole', opposite(contactor), terminal),
  };
}

/** Poles of both contactors are closed, not arcing, on a motor terminal. */
export function closedByBoth({ poles }: StarterState, terminal: number): boolean {
  return poles.forward[terminal] === 'closed' && poles.reverse[terminal] === 'closed';
}
