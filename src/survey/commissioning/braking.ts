import { type ContactorName, type Direction, opposite } from '../../starter/starter.ts';
import { slackOf } from './requirements.ts';
import { anyWithin, CONTACTORS, closed, energisedFor, largestSpeed, signOf, speedAt } from './run.ts';
import type { Requirement } from './test.ts';

const END = Number.POSITIVE_INFINITY;

/** The contactor against the rotation goes in to brake. */
export function isBraked(rotation: Direction): Requirement {
  const contactor = opposite(rotation);
  return {
    words: `the ${contactor} contactor brakes`,
    isMet: (run) =>
      anyWithin(energisedFor(run, contactor, 'brake'), run.test.mark, END) &&
      anyWithin(closed(run, contactor), run.test.mark, END),
  };
}

/** No contactor brakes. */
export function isNotBraked(rotation: Direction): Requirement {
  const contactor = opposite(rotation);
  return {
    words: `it is not braked: the ${contactor} contactor stays out`,
    isMet: (run) => !anyWithin(closed(run, contactor), run.test.mark, END),
  };
}

/** The zero-speed switch ends the braking. */
export function brakingEndsWithSwitch(): Requirement {
  return {
    words: 'braking ends when the zero-speed switch opens',
    isMet: (run) => {
      const braking = CONTACTORS.flatMap((contactor) => energisedFor(run, contactor, 'brake'));
      const opens = run.trajectory.events.filter(({ kind }) => kind === 'switchOpens').map(({ t }) => t);
      const isEnded = ({ to }: { readonly to: number }) =>
        opens.some((t) => t <= to && to <= t + slackOf(run));
      return braking.length > 0 && braking.every(isEnded);
    },
    danger: 'the braking contactor does not let go when the machine stands',
  };
}

/** It does not turn the other way for good. */
export function doesNotRunUp(direction: Direction): Requirement {
  return {
    words: `does not run up in ${direction === 'forward' ? 'forward direction' : 'reverse'}`,
    isMet: (run) => largestSpeed(run, direction, run.test.mark) < run.turning,
    danger: `the machine runs up ${direction === 'forward' ? 'forward' : 'in reverse'} after a stop`,
  };
}

/** The contactor goes in, but not before the zero-speed switch has opened. */
export function waitsForSwitch(contactor: ContactorName): Requirement {
  return {
    words: `the ${contactor} contactor waits until the zero-speed switch opens`,
    isMet: ({ trajectory, test }) => {
      const opens = trajectory.events.find(({ kind, t }) => kind === 'switchOpens' && t >= test.mark);
      const closes = trajectory.events.find(
        (event) => event.kind === 'coilEnergised' && event.contactor === contactor && event.t >= test.mark,
      );
      return opens !== undefined && closes !== undefined && closes.t >= opens.t;
    },
    danger: 'the machine is plugged, which this scheme must prevent',
  };
}

/** It is braked by the contactor of the other direction while it still turns. */
export function isPlugged(rotation: Direction): Requirement {
  const contactor = opposite(rotation);
  return {
    words: `the ${contactor} contactor closes while the machine turns ${rotation}`,
    isMet: (run) =>
      closed(run, contactor).some(
        ({ from }) => from >= run.test.mark && signOf(rotation) * speedAt(run, from) > run.standing,
      ),
  };
}
