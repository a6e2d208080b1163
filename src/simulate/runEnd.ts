import type { Scenario } from '../scenario/scenario.ts';
import { longestTimeToRest, slowsDown } from '../shaft/coasting.ts';
import type { Shaft } from '../shaft/shaft.ts';
import { isHeld, loadMass } from '../shaft/shaftMode.ts';
import { steadySpeed } from '../shaft/steadySpeed.ts';
import { isIdle } from '../starter/conduction.ts';
import { hasFault, type StarterState, switchSticks } from '../starter/starter.ts';
import { insertedKey, insertedNow } from './circuitSource.ts';
import type { RunState } from './runState.ts';

/** With an automatic end time: the longest a run goes on after its last action, s. Longer starts destroy motors. */
export const LONGEST_AFTER_LAST_ACTION = 120;
/** Shown after the shaft is held at rest, s, so that the trace ends with a level line. */
const TAIL_AT_REST = 0.1;
/** Shown after all poles are open where nothing will hold the shaft, s. */
const TAIL_COASTING = 1;
/** A coasting shaft that dry friction brings to rest within this time is waited for, s. */
const LONGEST_WAIT_FOR_REST = 60;
/** Shown after the speed has settled, s. */
const TAIL_SETTLED = 0.2;
/** "Settled": this fraction of synchronous speed from the steady speed. */
const SETTLED_BAND = 2e-3;
/** "Slow": a coasting machine below this fraction of synchronous speed. */
const SLOW_FRACTION = 1e-2;

/** How a run with an automatic end time finds its end from here on. */
export type EndPlan =
  | { readonly kind: 'at'; readonly t: number }
  /** A little after |speed − target| has fallen below the band, rad/s. */
  | { readonly kind: 'whenNear'; readonly target: number; readonly band: number }
  | { readonly kind: 'open' };

/**
 * The plan for the end, made anew whenever something discrete has happened. Actions still to come: open. Poles open
 * and the shaft held: a little later. A contactor in with nothing to release it: when the speed has settled.
 */
export function endPlanner(scenario: Scenario): (now: RunState, shaft: Shaft) => EndPlan {
  const synchronous = (2 * Math.PI * scenario.supply.frequency) / scenario.machine.polePairs;
  const settledSpeed = new Map<string, number | null>();
  const steady = (direction: 1 | -1, starter: StarterState) => {
    const inserted = insertedNow(scenario, starter);
    const key = `${direction} ${insertedKey(inserted)}`;
    if (!settledSpeed.has(key)) settledSpeed.set(key, steadySpeed(scenario, direction, inserted));
    return settledSpeed.get(key) ?? null;
  };
  // After a plug stop only the switch's drop-out speed is left; without friction nothing brings it to rest soon.
  const coasts = (starter: StarterState) =>
    starter.control === null ? scenario.actions.at(-1)?.do === 'coast' : starter.opposing === null;

  return ({ t, starter, shaft: turning, mode }, shaft) => {
    const omegaM = turning[0]!;
    if (starter.agenda.some((entry) => entry.kind !== 'contact')) return { kind: 'open' };
    if (isIdle(starter)) {
      // Without bearing friction a motor on an elastic coupling swings on long after its load has come to rest.
      const atRest = shaft.motor.friction === 0 ? mode.masses[loadMass(shaft)]!.held : isHeld(mode);
      if (atRest) return { kind: 'at', t: t + TAIL_AT_REST };
      if (longestTimeToRest(shaft, omegaM) <= LONGEST_WAIT_FOR_REST) return { kind: 'open' };
      const limit = SLOW_FRACTION * synchronous;
      if (coasts(starter) && slowsDown(shaft) && Math.abs(omegaM) > limit)
        return { kind: 'whenNear', target: 0, band: limit };
      return { kind: 'at', t: t + TAIL_COASTING };
    }
    const released =
      starter.plugging !== null &&
      scenario.starter.zeroSpeedSwitch !== null &&
      !switchSticks(scenario.starter);
    const direction = drivenBy(starter);
    if (released || direction === null) return { kind: 'open' };
    const target = steady(direction, starter);
    if (target === null) return { kind: 'open' };
    const band = SETTLED_BAND * synchronous;
    if (Math.abs(omegaM - target) <= band) return { kind: 'at', t: t + TAIL_SETTLED };
    return { kind: 'whenNear', target, band };
  };
}

/** Direction that the energised contactor drives in, or one that is welded in; null where none does. */
function drivenBy(starter: StarterState): 1 | -1 | null {
  if (starter.coil.forward) return 1;
  if (starter.coil.reverse) return -1;
  const isIn = (contactor: 'forward' | 'reverse') =>
    starter.poles[contactor].every((pole) => pole === 'closed');
  const welded = (contactor: 'forward' | 'reverse') => hasFault(starter.data, 'weldedPole', contactor, 0);
  if (isIn('forward') && welded('forward')) return 1;
  return isIn('reverse') && welded('reverse') ? -1 : null;
}
