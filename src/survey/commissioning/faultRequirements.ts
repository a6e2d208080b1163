import { type ContactorName, type Direction, opposite } from '../../starter/starter.ts';
import {
  anyWithin,
  closed,
  energised,
  finalState,
  largestSpeed,
  overlap,
  signOf,
  speedAt,
  throughout,
} from './run.ts';
import type { Requirement } from './test.ts';
import { timeOf } from './timings.ts';

const END = Number.POSITIVE_INFINITY;
/** From a passage through zero on, a machine that is driven the other way gets at least this far, of synchronous speed. */
const RUN_UP = 0.5;

/** The armature stays in whatever its coil does. */
export function armatureStaysIn(contactor: ContactorName): Requirement {
  return {
    words: `the ${contactor} contactor stays in though its coil is released`,
    isMet: (run) => {
      const { test, trajectory } = run;
      const released = trajectory.events.some(
        (event) => event.kind === 'coilReleased' && event.contactor === contactor && event.t >= test.mark,
      );
      const inAtEnd = closed(run, contactor).at(-1)?.to === END;
      return released && inAtEnd && trajectory.events.some(({ kind }) => kind === 'contactorSticks');
    },
  };
}

/** The machine is driven up in a direction nobody asked for. */
export function runsUp(direction: Direction): Requirement {
  return {
    words: `runs up ${direction === 'forward' ? 'forward' : 'in reverse'}, driven by the ${direction} contactor`,
    isMet: (run) =>
      largestSpeed(run, direction, run.test.mark) > RUN_UP * run.synchronous &&
      anyWithin(closed(run, direction), run.test.mark, END),
  };
}

/** The motor carries no current while stop is pressed. */
export function offWhilePressed(from: number, to: number): Requirement {
  return {
    words: 'the motor is off while stop is pressed: one pole alone carries no current',
    isMet: ({ trajectory }) =>
      trajectory.segments.some(({ kind, t0 }) => kind === 'none' && t0 > from && t0 < to),
  };
}

/** The contactor's own coil is energised again when stop is let go. */
export function startsAgain(direction: Direction, release: number): Requirement {
  return {
    words: `it starts ${direction} again by itself when stop is let go`,
    isMet: (run) => {
      const end = finalState(run);
      const again = energised(run, direction).some(({ from }) => Math.abs(from - release) < AGAIN);
      return again && end.kind === 'connected' && end.contactor === direction;
    },
  };
}

/** The hold-in contact closes the coil within the time of a scan, s. */
const AGAIN = 0.1;

/** Two phases are short-circuited through both contactors. */
export function shortCircuits(words: string): Requirement {
  return { words, isMet: ({ trajectory }) => trajectory.shortCircuit !== null };
}

/** They are not. */
export function noShortCircuit(words = 'no short circuit: the arcs end before the poles touch'): Requirement {
  return {
    words,
    isMet: ({ trajectory }) => trajectory.shortCircuit === null,
    danger: 'two phases are short-circuited through both contactors',
  };
}

/** Both coils are energised, and one armature is kept out by something mechanical. */
export function blockedMechanically(contactor: ContactorName): Requirement {
  return {
    words: `the ${contactor} coil is energised beside the ${opposite(contactor)} one; only the mechanical interlock keeps its contactor out`,
    isMet: (run) =>
      overlap(energised(run, 'forward'), energised(run, 'reverse')) &&
      !overlap(closed(run, 'forward'), closed(run, 'reverse')) &&
      run.trajectory.events.some(
        (event) => event.kind === 'interlockBlocks' && event.contactor === contactor,
      ),
  };
}

/** The coils change over without a pause, the armatures one after the other. */
export function armaturesApart(): Requirement {
  return {
    words:
      'the two contactors are still not in together: the mechanical interlock makes one wait for the other',
    isMet: (run) =>
      run.trajectory.shortCircuit === null &&
      !overlap(closed(run, 'forward'), closed(run, 'reverse')) &&
      run.trajectory.events.some(({ kind }) => kind === 'interlockBlocks'),
    danger: 'both contactors are in together: two phases are short-circuited',
  };
}

/** With a phase missing it does not start, and the overload relay leaves it connected. */
export function standsConnected(direction: Direction): Requirement {
  return {
    words: `it hums and does not run up; the ${direction} contactor stays in`,
    isMet: (run) => {
      const along = signOf(direction) * run.trajectory.at(run.trajectory.tEnd).speed;
      return (
        anyWithin(closed(run, direction), run.test.mark, END) &&
        closed(run, direction).at(-1)?.to === END &&
        along < run.turning
      );
    },
  };
}

/** The overload relay does not trip. */
export function doesNotTrip(): Requirement {
  return {
    words: 'the overload relay does not trip',
    isMet: ({ trajectory }) => !trajectory.events.some(({ kind }) => kind === 'overloadTrips'),
  };
}

/** It goes on turning although a phase is missing. */
export function turnsOn(direction: Direction): Requirement {
  return {
    words: `runs on ${direction} with two phases`,
    isMet: (run) =>
      run.trajectory.segments.at(-1)?.kind === 'two' &&
      throughout(closed(run, direction), run.test.mark, run.trajectory.tEnd) &&
      signOf(direction) * run.trajectory.at(run.trajectory.tEnd).speed > RUN_UP * run.synchronous,
  };
}

/** Braking does less than with three phases: the machine turns when it would long have stood. */
export function brakesWorse(rotation: Direction, command: number, sound: number): Requirement {
  return {
    words: 'it is braked less, or not at all: it still turns when a sound machine would stand',
    isMet: (run) => {
      const own = timeOf(run, command, 'zeroSpeed');
      const stands = own !== null && own <= sound;
      return !stands && signOf(rotation) * speedAt(run, command + sound) > 0;
    },
  };
}

/** Between the first parting and the first touch lies the time that the operating times leave, s. */
export function touchesAfter(shortest: number, longest: number): Requirement {
  return {
    words: 'the reverse poles touch as soon as their closing time allows, whether the arcs have ended or not',
    isMet: ({ trajectory, test }) => {
      const first = (kind: 'poleParts' | 'poleTouches') =>
        trajectory.events.find((event) => event.kind === kind && event.t >= test.mark)?.t;
      const [parts, touches] = [first('poleParts'), first('poleTouches')];
      if (parts === undefined || touches === undefined) return false;
      const dead = touches - parts;
      return dead >= shortest - ROUNDING && dead <= longest + ROUNDING;
    },
  };
}

const ROUNDING = 1e-6;
