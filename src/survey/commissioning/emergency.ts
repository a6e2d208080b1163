import type { ButtonAction } from '../../scenario/scenario.ts';
import {
  atRest,
  type Bench,
  directionsOf,
  handsOff,
  hold,
  letGo,
  letGoHeld,
  type Preparation,
  plugging,
  press,
  readyWords,
  running,
  starting,
} from './bench.ts';
import { brakingEndsWithSwitch } from './braking.ts';
import {
  coastsToRest,
  comesToRest,
  deadFrom,
  dropsBothAtOnce,
  nothingDrives,
  nothingPicksUp,
  nothingStarts,
} from './requirements.ts';
import { type CommissioningTest, commissioningTest, type Requirement, type TestInput } from './test.ts';
import { timeToOut, timeToStandstill } from './timings.ts';

/** From the emergency stop or the trip to its release, at least, s: the machine as a rule still turns then. */
const TO_RELEASE = 0.3;
/** A held button is let go this long after the emergency stop, s. */
const LET_GO = 0.05;
/** After standstill, or where braking has ended, everything is left alone for this long, s. */
const REST = 0.3;

/** Emergency stop in each state, and its release. */
export function emergencyTests(bench: Bench): readonly CommissioningTest[] {
  const states: readonly (readonly [string, string, Preparation | null])[] = [
    ['starting', 'while starting', starting(bench, 'forward')],
    ...directionsOf(bench).map(
      (direction) => [direction, `running ${direction}`, running(bench, direction)] as const,
    ),
    ['plugging', 'while plugging', plugging(bench, 'forward')],
  ];
  return [
    emergencyAtRest(bench),
    ...states.flatMap(([id, title, state]) => (state === null ? [] : [emergencyIn(bench, id, title, state)])),
  ];
}

function emergencyAtRest(bench: Bench): CommissioningTest {
  const { actions, at } = atRest(bench);
  const release = at + 2 * bench.pressTime + TO_RELEASE;
  return commissioningTest({
    id: 'emergencyStop.atRest',
    group: 'emergencyStop',
    title: 'Emergency stop at rest',
    hands: `${readyWords(bench)}Press the emergency stop, then forward. Let forward go, then release the emergency stop.`,
    actions: [
      ...actions,
      hold('emergencyStop', at),
      ...press('forward', at + bench.pressTime, bench.pressTime),
      letGo('emergencyStop', release),
    ],
    mark: at,
    markWords: 'emergency stop pressed',
    requirements: [
      nothingPicksUp('neither contactor picks up while it is pressed'),
      nothingStarts(release, 'the emergency stop is released'),
    ],
  });
}

function emergencyIn(bench: Bench, id: string, title: string, state: Preparation): CommissioningTest {
  const { at } = state;
  const holding = state.held === null ? '' : ` Let ${state.held} go.`;
  const pressed: TestInput = {
    id: `emergencyStop.${id}`,
    group: 'emergencyStop',
    title: `Emergency stop ${title}`,
    hands: `${state.words}, press the emergency stop.${holding}`,
    initial: state.initial,
    steadyUntil: state.steadyUntil,
    actions: [...state.actions, hold('emergencyStop', at), ...letGoHeld(state, at + LET_GO)],
    mark: at,
    markWords: 'emergency stop pressed',
    requirements: [],
  };
  const { release, when, requirements, remark } = courseOf(bench, state, pressed);
  return commissioningTest({
    ...pressed,
    hands: `${pressed.hands} ${when}`,
    actions: [...pressed.actions, letGo('emergencyStop', release)],
    requirements: [...requirements, nothingStarts(release, 'the emergency stop is released')],
    timings: [timeToOut(), timeToStandstill()],
    moments: [{ words: 'at its release', t: release }],
    remark,
  });
}

/** How an emergency stop goes on, and when it is released. */
interface Course {
  readonly release: number;
  readonly when: string;
  readonly requirements: readonly Requirement[];
  readonly remark: string | null;
}

/** Category 0: both coils drop at once. Category 1: nothing drives, braking ends with the switch or with the limit. */
function courseOf(bench: Bench, state: Preparation, pressed: TestInput): Course {
  const { at } = state;
  const stop = bench.control.emergencyStop;
  if (stop.category === 0) {
    const release = handsOff(state, at + TO_RELEASE);
    return {
      release,
      when: 'Release it while the machine still turns.',
      requirements: [dropsBothAtOnce(at, release, 'emergency stop'), coastsToRest()],
      remark: null,
    };
  }
  // A first run, in which it stays pressed, shows how long this machine takes from this state.
  const left = bench.times.left(commissioningTest({ ...pressed, id: `${pressed.id}.left` }));
  const limit = at + stop.limit;
  const bySwitch = left.switchOpens !== null && left.switchOpens < limit;
  return {
    // Past the limit in every row: what it must do shows only then.
    release: handsOff(state, Math.max(left.stands ?? 0, limit) + REST),
    when:
      left.stands === null
        ? 'Release it when the time limit has run out; the machine still turns.'
        : 'Release it when the machine stands and the time limit has run out.',
    requirements: [
      nothingDrives(at, Number.POSITIVE_INFINITY, 'nothing drives the machine any more'),
      bySwitch
        ? switchEndsBefore(limit)
        : deadFrom(limit, 'both coils are dead when the time limit has run out'),
      comesToRest(),
    ],
    remark: bySwitch
      ? 'Category 1: braked by the opposite contactor until the zero-speed switch opens, before the time limit runs out.'
      : 'Category 1: the time limit runs out before the zero-speed switch opens; from then on the machine coasts.',
  };
}

/** The switch is there to end the braking; the limit is for the case that it does not. */
function switchEndsBefore(limit: number): Requirement {
  const bySwitch = brakingEndsWithSwitch();
  const dead = deadFrom(limit, '');
  return {
    ...bySwitch,
    words: 'the zero-speed switch ends the braking before the time limit',
    isMet: (run) => bySwitch.isMet(run) && dead.isMet(run),
  };
}

/** The overload relay trips, by its test button, and is reset. */
export function overloadTests(bench: Bench): readonly CommissioningTest[] {
  if (bench.control.overload === null) return [];
  const states: readonly (readonly [string, string, Preparation | null])[] = [
    ['running', 'while running', running(bench, 'forward')],
    ['plugging', 'while plugging', plugging(bench, 'forward')],
  ];
  return states.flatMap(([id, title, state]) => (state === null ? [] : [overloadIn(id, title, state)]));
}

function overloadIn(id: string, title: string, state: Preparation): CommissioningTest {
  const { at } = state;
  const reset = handsOff(state, at + TO_RELEASE);
  const trip: ButtonAction = { at, do: 'press', button: 'overloadTest' };
  const holding = state.held === null ? '' : ` Let ${state.held} go.`;
  return commissioningTest({
    id: `overload.${id}`,
    group: 'overload',
    title: `Overload trip ${title}`,
    hands: `${state.words}, press the test button of the overload relay.${holding} Reset the relay while the machine still turns.`,
    initial: state.initial,
    steadyUntil: state.steadyUntil,
    actions: [
      ...state.actions,
      trip,
      ...letGoHeld(state, at + LET_GO),
      { at: reset, do: 'press', button: 'overloadReset' },
    ],
    mark: at,
    markWords: 'overload relay tripped',
    requirements: [
      dropsBothAtOnce(at, reset, 'trip of the overload relay'),
      coastsToRest(),
      nothingStarts(reset, 'the overload relay is reset'),
    ],
    timings: [timeToOut(), timeToStandstill()],
    moments: [{ words: 'at its reset', t: reset }],
  });
}
