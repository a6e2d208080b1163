import { supplyVector } from '../machine/supplyVector.ts';
import { hypotenuse } from '../numeric/hypotenuse.ts';
import { cosine, sine } from '../numeric/sineCosine.ts';
import type { PhaseName } from '../scenario/scenario.ts';
import type { RunEvent, Trajectory } from '../simulate/trajectory.ts';
import { supplyPhases } from '../starter/conduction.ts';
import type { ContactorName } from '../starter/starter.ts';
import { absoluteCharge } from './absoluteCharge.ts';
import { largest } from './extremum.ts';
import type { BreakingDuty, MakingDuty, PoleDuty } from './poleDuty.ts';
import { integral, type Quadrature, type Stretch } from './quadrature.ts';

/** How long each contactor's contacts bounce when they touch, s; null: not known. */
export type BounceTimes = Readonly<Record<ContactorName, number | null>>;

/**
 * Every making and breaking of every pole of both contactors in a run, in order of time.
 *
 * A making whose first period is cut short, because the pole parts or the run ends, is read over what there is of it. A
 * breaking whose arc still burns when the run ends is none yet and is left out. A pole that touches again while it arcs has
 * interrupted nothing: its arc counts up to the touch, against no recovery voltage.
 */
export function poleDuties(quadrature: Quadrature, bounceTimes: BounceTimes): readonly PoleDuty[] {
  const duties: PoleDuty[] = [];
  for (const contactor of ['forward', 'reverse'] as const)
    for (const phase of ['A', 'B', 'C'] as const) {
      const moves = quadrature.trajectory.events.filter(
        (event) => isPoleMove(event) && event.contactor === contactor && event.phase === phase,
      );
      for (const [k, event] of moves.entries()) {
        const next = moves[k + 1];
        if (event.kind === 'poleTouches')
          duties.push(makingDuty(quadrature, contactor, phase, event.t, next?.t, bounceTimes[contactor]));
        else if (event.kind === 'poleParts' && next !== undefined)
          duties.push(breakingDuty(quadrature, contactor, phase, event.t, next));
      }
    }
  return duties.sort((a, b) => a.t - b.t);
}

/** The stretches of a run that its duties are read from: so much of it must be fine in a quadrature that is only made for them. */
export function dutyStretches({ events, scenario }: Trajectory): readonly Stretch[] {
  const period = 1 / scenario.supply.frequency;
  return events.filter(isPoleMove).map(({ t }): Stretch => [t, t + LONGEST_DUTY * period]);
}

/** A making is read over one period; an arc lasts less than one, unless the shortest arcing time makes it longer. */
const LONGEST_DUTY = 2;

function isPoleMove({ kind }: RunEvent): boolean {
  return kind === 'poleTouches' || kind === 'poleParts' || kind === 'poleClears';
}

function makingDuty(
  quadrature: Quadrature,
  contactor: ContactorName,
  phase: PhaseName,
  t: number,
  parts: number | undefined,
  bounceTime: number | null,
): MakingDuty {
  const { trajectory } = quadrature;
  const last = Math.min(parts ?? Number.POSITIVE_INFINITY, trajectory.tEnd);
  const to = Math.min(last, t + 1 / trajectory.scenario.supply.frequency);
  const span = to - t;
  return {
    kind: 'making',
    contactor,
    phase,
    t,
    crest: largest(quadrature, `i${phase}`, 'magnitude', t, to)?.value ?? 0,
    rms: span > 0 ? Math.sqrt(integral(quadrature, `i${phase}2`, t, to) / span) : 0,
    bounceCharge:
      bounceTime === null ? null : absoluteCharge(quadrature, phase, t, Math.min(last, t + bounceTime)),
  };
}

function breakingDuty(
  quadrature: Quadrature,
  contactor: ContactorName,
  phase: PhaseName,
  t: number,
  end: RunEvent,
): BreakingDuty {
  const clears = end.kind === 'poleClears';
  return {
    kind: 'breaking',
    contactor,
    phase,
    t,
    clears: end.t,
    current: Math.abs(quadrature.trajectory.at(t, 'left')[`i${phase}`]),
    arcCharge: absoluteCharge(quadrature, phase, t, end.t),
    recoveryVoltage: clears ? recoveryVoltage(quadrature, contactor, end.t) : 0,
  };
}

/**
 * Power-frequency voltage across an opened contactor: the r.m.s. line-to-line value of the balanced system whose space vector
 * is that of the source, in that contactor's order of phases, less that of the motor terminals, right after the last pole of
 * that opening has cleared. Where the other contactor feeds the motor by then, each exchanged pole stands between two lines:
 * the source's line voltage. A lost supply phase counts as if it were there, which is on the safe side.
 */
function recoveryVoltage(quadrature: Quadrature, contactor: ContactorName, clearing: number): number {
  const { trajectory } = quadrature;
  const { supply, starter } = trajectory.scenario;
  const t = lastClearing(trajectory.events, contactor, clearing);
  const segment = trajectory.segments.findLast(({ t0 }) => t0 <= t);
  if (segment === undefined || segment.kind !== 'none') return supply.lineVoltage;
  const { omega, positive, negative } = supplyVector(supply, supplyPhases(starter, contactor));
  const c = cosine(omega * t);
  const s = sine(omega * t);
  const alpha = (positive[0] + negative[0]) * c - (positive[1] - negative[1]) * s;
  const beta = (positive[1] + negative[1]) * c + (positive[0] - negative[0]) * s;
  const { uAlpha, uBeta } = trajectory.at(t);
  return Math.sqrt(1.5) * hypotenuse(alpha - uAlpha, beta - uBeta);
}

/** The last clearing of a contactor's poles from `clearing` on, before any of them touches again, s. */
function lastClearing(events: readonly RunEvent[], contactor: ContactorName, clearing: number): number {
  let last = clearing;
  for (const event of events) {
    if (event.t < clearing || event.contactor !== contactor) continue;
    if (event.kind === 'poleTouches') break;
    if (event.kind === 'poleClears') last = event.t;
  }
  return last;
}
