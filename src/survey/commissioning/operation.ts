import { type Direction, opposite } from '../../starter/starter.ts';
import {
  atRest,
  type Bench,
  directionsOf,
  hold,
  letGo,
  plugged,
  press,
  readyWords,
  running,
} from './bench.ts';
import {
  brakingEndsWithSwitch,
  doesNotRunUp,
  isBraked,
  isNotBraked,
  isPlugged,
  waitsForSwitch,
} from './braking.ts';
import {
  changesNothing,
  coastsToRest,
  comesToRest,
  dropsOut,
  holdsIn,
  neverBothIn,
  nothingPicksUp,
  runs,
  staysOut,
} from './requirements.ts';
import { type CommissioningTest, commissioningTest, type Requirement } from './test.ts';
import { timeToSpeed, timeToStandstill } from './timings.ts';

/** Starts, reversals and stops as the machine is meant to be used. */
export function operationTests(bench: Bench): readonly CommissioningTest[] {
  const directions = directionsOf(bench);
  return [
    ...directions.map((direction) => startTest(bench, direction)),
    ...(bench.control.readyRelay ? [startWithoutReset(bench)] : []),
    ...(bench.reverses ? directions.map((direction) => oppositeTest(bench, direction)) : []),
    ...(bench.control.scheme === 'antiPlugging' ? [oppositeHeld(bench)] : []),
    ...(bench.control.scheme === 'throughStop' ? [stopThenOpposite(bench, 'forward')] : []),
    ...directions.map((direction) => stopTest(bench, direction)),
    stopAtRest(bench),
  ];
}

/** A normal start; inching: for as long as the button is held. */
export function startTest(bench: Bench, direction: Direction): CommissioningTest {
  const { actions, at } = atRest(bench);
  const common = {
    id: `start.${direction}`,
    group: 'running' as const,
    mark: at,
    markWords: `${direction} pressed`,
    timings: [timeToSpeed(direction)],
  };
  const other = staysOut(opposite(direction));
  if (bench.inches)
    return commissioningTest({
      ...common,
      title: `Run ${direction} while the button is held`,
      hands: `${readyWords(bench)}Hold ${direction} until the speed is steady.`,
      actions: [...actions, hold(direction, at)],
      requirements: [runs(direction), other],
    });
  return commissioningTest({
    ...common,
    title: `Start ${direction}`,
    hands: `${readyWords(bench)}Press ${direction} and let go.`,
    actions: [...actions, ...press(direction, at, bench.pressTime)],
    requirements: [runs(direction), holdsIn(direction, at + bench.pressTime), other],
  });
}

function startWithoutReset(bench: Bench): CommissioningTest {
  const { at } = atRest(bench);
  return commissioningTest({
    id: 'start.withoutReset',
    group: 'running',
    title: 'Start button without reset',
    hands: 'Switch the control on. Without pressing reset, press forward and let go.',
    actions: press('forward', at, bench.pressTime),
    mark: at,
    markWords: 'forward pressed',
    requirements: [nothingPicksUp('neither contactor picks up before reset has been pressed')],
  });
}

/** The opposite button while the machine runs: what tells the schemes apart. */
function oppositeTest(bench: Bench, direction: Direction): CommissioningTest {
  const other = opposite(direction);
  const from = running(bench, direction);
  const common = {
    id: `reverse.${direction}`,
    group: 'reversing' as const,
    initial: from.initial,
    steadyUntil: from.steadyUntil,
    mark: from.at,
    markWords: `${other} pressed`,
  };
  const reversal: readonly Requirement[] = [dropsOut(direction), runs(other), neverBothIn()];
  const reversalTimings = [timeToStandstill(), timeToSpeed(other)];
  if (bench.inches)
    return commissioningTest({
      ...common,
      title: `Reverse directly from ${direction}`,
      hands: `${from.words}, let it go and hold ${other} in one movement until the speed is steady.`,
      actions: [...from.actions, letGo(direction, from.at), hold(other, from.at)],
      requirements: reversal,
      timings: reversalTimings,
    });
  const actions = [...from.actions, ...press(other, from.at, bench.pressTime)];
  const hands = `${from.words}, press ${other} and let go.`;
  switch (bench.control.scheme) {
    case 'throughStop':
      return commissioningTest({
        ...common,
        title: `Opposite button while running ${direction}`,
        hands,
        actions,
        requirements: [
          changesNothing('nothing happens until stop is pressed'),
          runs(direction),
          staysOut(other),
        ],
      });
    case 'antiPlugging':
      return commissioningTest({
        ...common,
        title: `Plugging is blocked, running ${direction}`,
        hands,
        actions,
        requirements: [dropsOut(direction), isNotBraked(direction), coastsToRest()],
        timings: [timeToStandstill()],
      });
    default:
      return commissioningTest({
        ...common,
        title: `Reverse directly from ${direction}`,
        hands,
        actions,
        requirements: reversal,
        timings: reversalTimings,
      });
  }
}

/** With anti-plugging: the button held until the machine may be reversed. */
function oppositeHeld(bench: Bench): CommissioningTest {
  const from = running(bench, 'forward');
  return commissioningTest({
    id: 'reverse.held',
    group: 'reversing',
    title: 'Opposite button held until the machine is slow',
    hands: `${from.words}, press reverse and hold it until the machine runs in reverse.`,
    initial: from.initial,
    steadyUntil: from.steadyUntil,
    actions: [...from.actions, hold('reverse', from.at)],
    mark: from.at,
    markWords: 'reverse pressed',
    requirements: [dropsOut('forward'), waitsForSwitch('reverse'), runs('reverse')],
    timings: [timeToSpeed('reverse')],
  });
}

/** Nothing in this scheme keeps a coasting machine from being plugged. */
function stopThenOpposite(bench: Bench, direction: Direction): CommissioningTest {
  const from = plugged(bench, direction)!;
  const other = opposite(direction);
  return commissioningTest({
    id: direction === 'forward' ? 'reverse.afterStop' : 'reverse.afterStop.reverse',
    group: 'reversing',
    title: `Stop, then ${other} while it still turns`,
    hands: `${from.words}; let go.`,
    initial: from.initial,
    steadyUntil: from.steadyUntil,
    actions: from.actions,
    mark: from.at,
    markWords: `${other} pressed`,
    requirements: [isPlugged(direction), runs(other), neverBothIn()],
    timings: [timeToStandstill(), timeToSpeed(other)],
    remark: 'This scheme does not keep a coasting machine from being plugged.',
  });
}

/** A normal stop: braked where the scheme brakes, otherwise coasting. */
export function stopTest(bench: Bench, direction: Direction): CommissioningTest {
  const from = running(bench, direction);
  const other = opposite(direction);
  const what = bench.inches ? `${direction} let go` : 'stop pressed';
  const common = {
    id: `stop.${direction}`,
    group: 'stopping' as const,
    initial: from.initial,
    steadyUntil: from.steadyUntil,
    hands: bench.inches ? `${from.words}, let ${direction} go.` : `${from.words}, press stop and let go.`,
    actions: bench.inches
      ? [...from.actions, letGo(direction, from.at)]
      : [...from.actions, ...press('stop', from.at, bench.pressTime)],
    mark: from.at,
    markWords: what,
    timings: [timeToStandstill()],
  };
  if (!bench.brakes)
    return commissioningTest({
      ...common,
      title: `Stop from ${direction}`,
      requirements: [dropsOut(direction), isNotBraked(direction), coastsToRest()],
    });
  return commissioningTest({
    ...common,
    title: bench.inches ? `Inch ${direction} and let go` : `Plug stop from ${direction}`,
    requirements: [
      dropsOut(direction),
      isBraked(direction),
      brakingEndsWithSwitch(),
      comesToRest(),
      doesNotRunUp(other),
      neverBothIn(),
    ],
  });
}

function stopAtRest(bench: Bench): CommissioningTest {
  const { actions, at } = atRest(bench);
  return commissioningTest({
    id: 'stop.atRest',
    group: 'stopping',
    title: 'Stop at rest',
    hands: `${readyWords(bench)}At rest, press stop and let go.`,
    actions: [...actions, ...press('stop', at, bench.pressTime)],
    mark: at,
    markWords: 'stop pressed',
    requirements: [nothingPicksUp()],
  });
}

/** The test in which a running machine is plugged; null where the scheme prevents that. */
export function pluggingTest(bench: Bench, direction: Direction): CommissioningTest | null {
  switch (bench.control.scheme) {
    case 'antiPlugging':
      return null;
    case 'throughStop':
      return stopThenOpposite(bench, direction);
    case 'direct':
      return oppositeTest(bench, direction);
    default:
      return stopTest(bench, direction);
  }
}
