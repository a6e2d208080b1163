import type { ContactorName, Direction } from '../../starter/starter.ts';
import {
  anyWithin,
  type BenchRun,
  CONTACTORS,
  closed,
  energised,
  energisedFor,
  finalState,
  overlap,
  signOf,
  speedAt,
  throughout,
} from './run.ts';
import type { Requirement } from './test.ts';

/** Part of synchronous speed by which a machine may miss its steady speed and still runs. */
const STEADY_BAND = 0.02;
/** Part of synchronous speed above which a machine that is connected runs. */
const ON_SPEED = 0.5;
/** What happens at once happens within this, s. */
const AT_ONCE = 1e-6;
/** Armatures follow their coils; slack beyond the operating time, s. */
const TRAVEL_SLACK = 1e-3;

const END = Number.POSITIVE_INFINITY;

/** It runs up and ends at the speed that circuit and load give. */
export function runs(direction: Direction): Requirement {
  return { words: `runs ${direction} at its steady speed`, isMet: (run) => isRunning(run, direction) };
}

/** It stays connected and goes on turning, whatever was done. */
export function runsOn(direction: Direction): Requirement {
  return {
    words: `runs on ${direction}`,
    isMet: (run) => {
      const end = finalState(run);
      return (
        end.kind === 'connected' &&
        end.contactor === direction &&
        signOf(direction) * end.speed > ON_SPEED * run.synchronous
      );
    },
  };
}

function isRunning(run: BenchRun, direction: Direction): boolean {
  const end = finalState(run);
  const steady = run.steady[direction];
  return (
    end.kind === 'connected' &&
    end.contactor === direction &&
    steady !== null &&
    Math.abs(end.speed - steady) <= STEADY_BAND * run.synchronous
  );
}

/** The contactor stays in after its button is let go. */
export function holdsIn(contactor: ContactorName, release: number): Requirement {
  return {
    words: `the ${contactor} contactor stays in when the button is let go`,
    isMet: (run) => throughout(energised(run, contactor), release, run.trajectory.tEnd),
  };
}

/** The contactor is in only while its button is pressed. */
export function inOnlyWhilePressed(contactor: ContactorName, release: number): Requirement {
  return {
    words: `the ${contactor} contactor drops out when the button is let go`,
    isMet: (run) =>
      anyWithin(energised(run, contactor), 0, release) &&
      !anyWithin(energisedFor(run, contactor, 'command'), release + slackOf(run), END),
  };
}

/** The contactor never goes in. */
export function staysOut(contactor: ContactorName): Requirement {
  return {
    words: `the ${contactor} contactor stays out`,
    isMet: (run) => closed(run, contactor).length === 0,
  };
}

/** Neither coil is ever energised. */
export function nothingPicksUp(words = 'neither contactor picks up'): Requirement {
  return {
    words,
    isMet: (run) => CONTACTORS.every((contactor) => energised(run, contactor).length === 0),
    danger: 'a contactor closes that must stay out',
  };
}

/** What is done at the mark changes nothing: the coils stay as they are. */
export function changesNothing(words: string): Requirement {
  return {
    words,
    isMet: ({ trajectory, test }) =>
      !trajectory.events.some(
        ({ t, kind }) => t >= test.mark && (kind === 'coilEnergised' || kind === 'coilReleased'),
      ),
  };
}

/**
 * Both coils are dead from an instant on, without help from any program, and the armatures follow.
 *
 * @param until what holds them dead is released, s
 */
export function dropsBothAtOnce(at: number, until: number, cause: string): Requirement {
  return {
    words: 'both coils drop at once and both contactors go out',
    isMet: (run) => {
      const { openingTime } = run.trajectory.scenario.starter;
      return CONTACTORS.every(
        (contactor) =>
          !anyWithin(energised(run, contactor), at + AT_ONCE, until) &&
          !anyWithin(closed(run, contactor), at + openingTime + TRAVEL_SLACK, until),
      );
    },
    danger: `a contactor is energised, or stays in, in spite of the ${cause}`,
  };
}

/** Nothing closes by itself from an instant on. */
export function nothingStarts(from: number, when: string): Requirement {
  return {
    words: `nothing closes by itself when ${when}`,
    isMet: (run) =>
      !run.trajectory.events.some(({ kind, t }) => kind === 'coilEnergised' && t >= from) &&
      CONTACTORS.every((contactor) => !anyWithin(closed(run, contactor), from + TRAVEL_SLACK, END)),
    danger: `a contactor closes by itself when ${when}`,
  };
}

/** Both contactors go out when the supply fails. */
export function dropsWithSupply(from: number, until: number): Requirement {
  return {
    words: 'both contactors drop out when the supply fails',
    isMet: (run) =>
      CONTACTORS.every(
        (contactor) =>
          !closed(run, contactor).some((one) => one.from < from && one.to >= until) &&
          !energised(run, contactor).some((one) => one.from < from && one.to >= until),
      ),
  };
}

/** While something holds, no contactor is there to run the machine; one may brake it. */
export function nothingDrives(from: number, to: number, words: string): Requirement {
  return {
    words,
    isMet: (run) =>
      CONTACTORS.every(
        (contactor) => !anyWithin(energisedFor(run, contactor, 'command'), from + slackOf(run), to),
      ),
    danger: 'a contactor drives the machine that should be stopped',
  };
}

/** Relays and a program pass a command on in their own time. */
export function slackOf({ trajectory }: BenchRun): number {
  const control = trajectory.scenario.starter.control;
  return TRAVEL_SLACK + 3 * (control?.relayTime ?? 0) + 3 * (control?.scanTime ?? 0);
}

/** The contactor goes out. */
export function dropsOut(contactor: ContactorName): Requirement {
  return {
    words: `the ${contactor} contactor drops out`,
    isMet: (run) => closed(run, contactor).some(({ to }) => to >= run.test.mark && to < END),
  };
}

/** Both coils are dead from an instant on. */
export function deadFrom(at: number, words: string): Requirement {
  return {
    words,
    isMet: (run) =>
      CONTACTORS.every((contactor) => !anyWithin(energised(run, contactor), at + slackOf(run), END)),
    danger: 'a contactor is energised that must be dead',
  };
}

/** It stands, or creeps below the zero-speed switch's drop-out speed, and nothing is connected. */
export function comesToRest(): Requirement {
  return {
    words: 'comes to rest, both contactors out',
    isMet: (run) => {
      const end = finalState(run);
      const creep = run.trajectory.scenario.starter.zeroSpeedSwitch?.dropOutSpeed ?? 0;
      return (
        end.kind === 'rest' || (end.kind === 'coasts' && Math.abs(end.speed) <= Math.max(run.standing, creep))
      );
    },
    danger: 'the machine does not come to rest',
  };
}

/** Nothing is connected, and it slows down by itself. */
export function coastsToRest(): Requirement {
  return {
    words: 'coasts until its load stops it, both contactors out',
    isMet: (run) => {
      const end = finalState(run);
      const before = Math.abs(speedAt(run, run.test.mark));
      return end.kind === 'rest' || (end.kind === 'coasts' && Math.abs(end.speed) < before);
    },
    danger: 'the load drives the machine on with nothing connected',
  };
}

/** The contactors are never in together. */
export function neverBothIn(): Requirement {
  return {
    words: 'the two contactors are never in together',
    isMet: (run) =>
      run.trajectory.shortCircuit === null && !overlap(closed(run, 'forward'), closed(run, 'reverse')),
    danger: 'both contactors are in together: two phases are short-circuited',
  };
}

/** Both coils are energised together, which only something mechanical makes harmless. */
export function bothEnergised(): Requirement {
  return {
    words: 'both coils are energised together',
    isMet: (run) => overlap(energised(run, 'forward'), energised(run, 'reverse')),
  };
}

/** One direction wins, and the other stays out. */
export function atMostOneIn(): Requirement {
  return {
    words: 'at most one of the two contactors goes in',
    isMet: (run) => CONTACTORS.filter((contactor) => closed(run, contactor).length > 0).length <= 1,
    danger: 'both contactors have been in',
  };
}
