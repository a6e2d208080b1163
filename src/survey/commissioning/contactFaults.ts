import type { StarterFault } from '../../scenario/scenario.ts';
import { atRest, type Bench, hold, plugged, press, readyWords, running } from './bench.ts';
import { brakingEndsWithSwitch, isNotBraked } from './braking.ts';
import {
  armaturesApart,
  blockedMechanically,
  noShortCircuit,
  runsUp,
  shortCircuits,
  touchesAfter,
} from './faultRequirements.ts';
import { holdInClosedTests } from './holdInClosed.ts';
import {
  bothEnergised,
  comesToRest,
  dropsOut,
  inOnlyWhilePressed,
  neverBothIn,
  runs,
} from './requirements.ts';
import { type CommissioningTest, commissioningTest, type Requirement, type TestInput } from './test.ts';
import { arcMargin } from './timings.ts';

const INTERLOCK: StarterFault = {
  kind: 'auxiliaryContact',
  contactor: 'forward',
  contact: 'interlock',
  stuck: 'closed',
};
const MISSING: StarterFault = { kind: 'mechanicalInterlockMissing' };

/** Auxiliary contacts and the mechanical interlock fail. */
export function contactFaultTests(bench: Bench): readonly CommissioningTest[] {
  return [
    ...(bench.inches ? [] : [holdInOpen(bench), ...holdInClosedTests(bench)]),
    ...(bench.interlocked ? [interlockClosed(bench), mechanicalMissing(bench)] : []),
    bothMissing(bench),
  ];
}

function holdInOpen(bench: Bench): CommissioningTest {
  const { actions, at } = atRest(bench);
  const release = at + Math.max(bench.pressTime, bench.times.start('forward').full);
  return commissioningTest({
    id: 'fault.holdInOpen',
    group: 'faults',
    title: 'Hold-in contact of forward stuck open',
    hands: `The hold-in contact of forward never closes. ${readyWords(bench)}Forward is pressed until the machine runs, then let go.`,
    actions: [...actions, ...press('forward', at, release - at)],
    faults: [{ kind: 'auxiliaryContact', contactor: 'forward', contact: 'holdIn', stuck: 'open' }],
    mark: release,
    markWords: 'forward let go',
    requirements: [
      inOnlyWhilePressed('forward', release),
      ...(bench.brakes ? [brakingEndsWithSwitch(), comesToRest()] : [comesToRestOrCoasts()]),
    ],
    remark: 'It runs only while the button is pressed.',
  });
}

function comesToRestOrCoasts(): Requirement {
  return { ...isNotBraked('forward'), words: 'it coasts: the reverse contactor stays out' };
}

/** What the opposite coil does when the contact that bars it does not open. */
function interlockClosed(bench: Bench): CommissioningTest {
  const base: TestInput = {
    ...opposed(bench),
    id: 'fault.interlockClosed',
    title: 'Interlock contact stuck closed, mechanical interlock there',
    faults: [INTERLOCK],
  };
  const hands = `The break contact of the forward contactor that bars the reverse coil does not open. ${base.hands}`;
  if (bench.control.changeoverTimer > 0)
    return commissioningTest({ ...base, hands, ...barredByTimer(bench) });
  switch (bench.control.scheme) {
    case 'throughStop':
      return commissioningTest({
        ...base,
        hands,
        requirements: [blockedMechanically('reverse'), runs('forward'), neverBothIn()],
        danger: 'Nothing but the mechanical interlock prevents a short circuit; the blocked coil overheats.',
      });
    case 'direct':
      return commissioningTest({
        ...base,
        hands,
        requirements: [armaturesApart(), runsUp('reverse')],
        danger: 'Nothing but the mechanical interlock keeps the contactors apart.',
      });
    case 'antiPlugging':
      return commissioningTest({
        ...base,
        hands,
        requirements: [dropsOut('forward'), isNotBraked('forward'), neverBothIn()],
        remark: 'The zero-speed switch still keeps the reverse coil dead while the machine turns.',
      });
    default:
      return commissioningTest({
        ...base,
        hands,
        requirements: [blockedMechanically('reverse'), brakingEndsWithSwitch(), comesToRest(), neverBothIn()],
        danger:
          'The braking coil is energised while the machine runs: nothing but the mechanical interlock prevents a short circuit; the blocked coil overheats.',
      });
  }
}

/** The change-over timer's own contacts do what the stuck one should. */
function barredByTimer(bench: Bench): Pick<TestInput, 'requirements' | 'remark'> {
  const { scheme } = bench.control;
  const ends =
    scheme === 'throughStop'
      ? [runs('forward')]
      : scheme === 'antiPlugging'
        ? [isNotBraked('forward')]
        : scheme === 'direct'
          ? [runsUp('reverse')]
          : [comesToRest()];
  return {
    requirements: [neverBothIn(), ...ends],
    remark: 'The contacts of the change-over timer still keep the two coils apart.',
  };
}

/** The same with nothing mechanical: the dead time that is left decides. */
function bothMissing(bench: Bench): CommissioningTest {
  const faults = bench.interlocked ? [INTERLOCK, MISSING] : [INTERLOCK];
  const base: TestInput = {
    ...opposed(bench),
    id: 'fault.interlockClosed.noMechanical',
    title: 'Interlock contact stuck closed, no mechanical interlock: dead time too short',
    faults,
  };
  const state =
    'The break contact of the forward contactor that bars the reverse coil does not open, and nothing mechanical holds the armatures apart.';
  const hands = `${state} ${base.hands}`;
  const danger = 'Line-to-line short circuit through both contactors.';
  if (bench.control.changeoverTimer > 0)
    return commissioningTest({
      ...base,
      hands,
      title: 'Interlock contact stuck closed, no mechanical interlock',
      ...barredByTimer(bench),
    });
  switch (bench.control.scheme) {
    case 'throughStop':
      return commissioningTest({
        ...base,
        hands,
        requirements: [
          bothEnergised(),
          shortCircuits('both contactors are in: two phases are short-circuited'),
        ],
        danger,
      });
    case 'direct':
      return commissioningTest({ ...base, hands, timings: [arcMargin()], ...deadTimeDecides(bench) });
    case 'antiPlugging':
      return commissioningTest({
        ...base,
        hands,
        title: 'Interlock contact stuck closed, no mechanical interlock',
        requirements: [dropsOut('forward'), isNotBraked('forward'), neverBothIn()],
        remark: 'The zero-speed switch still keeps the reverse coil dead while the machine turns.',
      });
    default: {
      // The braking branch closes as soon as the switch picks up: on the run-up already.
      const { actions, at } = atRest(bench);
      return commissioningTest({
        ...base,
        hands: `${state} ${readyWords(bench)}Forward is ${bench.inches ? 'held' : 'pressed'} at rest.`,
        initial: 'rest',
        steadyUntil: null,
        actions: [
          ...actions,
          ...(bench.inches ? [hold('forward', at)] : press('forward', at, bench.pressTime)),
        ],
        mark: at,
        markWords: 'forward pressed',
        requirements: [
          shortCircuits(
            'the braking contactor closes beside the running one when the zero-speed switch picks up: two phases are short-circuited',
          ),
        ],
        danger,
      });
    }
  }
}

/** Longest an arc burns, of supply periods: to the first current zero of the last pole, with a margin. Common practice, no source. */
const LONGEST_ARC = 0.5;

/** What follows from the operating times alone: poles part after the one, touch after the other. */
function deadTimeDecides(bench: Bench): Pick<TestInput, 'requirements' | 'danger' | 'remark'> {
  const { starter, supply } = bench.scenario;
  const { openingTime, closingTime, openingScatter, closingScatter, minimumArcingTime } = starter;
  const shortest = closingTime + Math.min(...closingScatter) - openingTime - Math.max(...openingScatter);
  const longest = closingTime + Math.max(...closingScatter) - openingTime - Math.min(...openingScatter);
  const arc = starter.poles === 'ideal' ? 0 : minimumArcingTime + LONGEST_ARC / supply.frequency;
  const common =
    'The contactors change over at the same instant: closing less opening time is all that parts them.';
  if (longest <= 0)
    return {
      requirements: [
        shortCircuits('the poles touch before the others have parted: two phases are short-circuited'),
      ],
      danger: 'Line-to-line short circuit through both contactors.',
      remark: common,
    };
  if (shortest >= arc)
    return {
      requirements: [noShortCircuit(), runsUp('reverse')],
      danger: 'Nothing keeps the contactors apart but their operating times.',
      remark: common,
    };
  return {
    requirements: [dropsOut('forward'), touchesAfter(shortest, longest)],
    danger:
      'Arcs may burn as long as the contacts are apart: at some instants of switching two phases are short-circuited.',
    remark: common,
  };
}

/** Sound contacts, nothing mechanical. */
function mechanicalMissing(bench: Bench): CommissioningTest {
  const from = plugged(bench, 'forward') ?? running(bench, 'forward');
  const blocked = bench.control.scheme === 'antiPlugging';
  return commissioningTest({
    id: 'fault.mechanicalInterlockMissing',
    group: 'faults',
    title: 'Mechanical interlock missing, contacts sound',
    hands: `The mechanical interlock is not there. ${from.words}${blocked ? ', press reverse' : ''}.`,
    initial: from.initial,
    steadyUntil: from.steadyUntil,
    actions: blocked ? [...from.actions, ...press('reverse', from.at, bench.pressTime)] : from.actions,
    faults: [MISSING],
    mark: from.at,
    markWords: 'command',
    timings: blocked ? [] : [arcMargin()],
    requirements: [
      neverBothIn(),
      noShortCircuit(),
      ...(bench.brakes ? [comesToRest()] : blocked ? [isNotBraked('forward')] : [runsUp('reverse')]),
    ],
    danger:
      'The contact interlock alone keeps the contactors apart: one welded contact more and two phases are short-circuited.',
  });
}

/** The opposite command while the machine runs forward; braking schemes give it themselves when they stop. */
function opposed(bench: Bench): TestInput {
  const from = running(bench, 'forward');
  const common = {
    id: '',
    title: '',
    group: 'faults' as const,
    initial: from.initial,
    steadyUntil: from.steadyUntil,
    mark: from.at,
    requirements: [],
  };
  if (!bench.brakes)
    return {
      ...common,
      hands: `${from.words}, reverse is pressed.`,
      actions: [...from.actions, ...press('reverse', from.at, bench.pressTime)],
      markWords: 'reverse pressed',
    };
  const stop = plugged(bench, 'forward')!;
  return {
    ...common,
    hands: `${stop.words}.`,
    actions: stop.actions,
    markWords: bench.inches ? 'forward let go' : 'stop pressed',
  };
}
