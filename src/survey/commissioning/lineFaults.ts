import type { StarterFault } from '../../scenario/scenario.ts';
import { overloadConstants, tripTimeCold } from '../../starter/overloadRelay.ts';
import {
  atRest,
  type Bench,
  hold,
  LEAD,
  type Preparation,
  plugged,
  plugging,
  press,
  readyWords,
  running,
} from './bench.ts';
import { brakesWorse, doesNotTrip, standsConnected, turnsOn } from './faultRequirements.ts';
import { readingIn } from './readings.ts';
import { type CommissioningTest, commissioningTest, type Timing } from './test.ts';

/** The control circuit is fed from the other two: it lives on. */
const PHASE = 'C';
/** Shown of a machine that stands and hums, s. */
const HUMS = 0.8;
/** Shown of a machine that runs on with two phases, s. */
const RUNS = 0.6;
/** How much longer than a sound machine takes is watched. */
const LONGER = 1.6;

/** A phase is missing; the overload relay never trips. */
export function lineFaultTests(bench: Bench): readonly CommissioningTest[] {
  const inPlugging = plugging(bench, 'forward');
  return [
    ...(bench.control.overload === null ? [] : [neverTrips(bench)]),
    runningOnTwo(bench),
    ...(inPlugging === null
      ? []
      : [
          pluggingOnTwo(bench, 'before', plugged(bench, 'forward')!),
          pluggingOnTwo(bench, 'during', inPlugging),
        ]),
  ];
}

function lost(from: number): StarterFault {
  return { kind: 'lostPhase', phase: PHASE, from };
}

/** A start with a phase missing is a locked rotor that needs nobody to lock it. */
function neverTrips(bench: Bench): CommissioningTest {
  const { actions, at } = atRest(bench);
  return commissioningTest({
    id: 'fault.overloadNeverTrips',
    group: 'faults',
    title: 'Overload relay never trips, rotor stands',
    hands: `The overload relay does not trip any more, and phase ${PHASE} is missing, so that the rotor stands. ${readyWords(bench)}Forward is ${bench.inches ? 'held' : 'pressed'}.`,
    actions: [...actions, ...(bench.inches ? [hold('forward', at)] : press('forward', at, bench.pressTime))],
    faults: [lost(0), { kind: 'overloadNeverTrips' }],
    endTime: at + bench.pressTime + HUMS,
    mark: at,
    markWords: 'forward pressed',
    requirements: [standsConnected('forward'), doesNotTrip()],
    timings: [soundTrip(bench)],
    danger: 'Winding and rotor burn until somebody presses stop.',
    remark:
      'The time is that of a sound relay at this current, from cold: by then stop must have been pressed.',
  });
}

/** When a sound relay would have tripped at the current of this run. */
function soundTrip({ control }: Bench): Timing {
  return {
    words: 'until a sound relay trips',
    of: (run) => {
      const reading = readingIn(run, run.trajectory.tEnd - LEAD, run.trajectory.tEnd);
      if (control.overload === null || reading === null) return null;
      const { setting, tripClass } = control.overload;
      const time = tripTimeCold(reading.hall.value / setting, overloadConstants(tripClass));
      return Number.isFinite(time) ? time : null;
    },
  };
}

function runningOnTwo(bench: Bench): CommissioningTest {
  const from = running(bench, 'forward');
  return commissioningTest({
    id: 'fault.lostPhase.running',
    group: 'faults',
    title: 'Phase lost while running',
    hands: `${from.words}, phase ${PHASE} is lost.`,
    initial: from.initial,
    steadyUntil: from.steadyUntil,
    actions: from.actions,
    faults: [lost(from.at)],
    endTime: from.at + RUNS,
    mark: from.at,
    markWords: 'phase lost',
    requirements: [turnsOn('forward')],
    danger:
      'It overheats on two phases until the overload relay trips, and does not start again once it stands.',
  });
}

function pluggingOnTwo(bench: Bench, when: 'before' | 'during', state: Preparation): CommissioningTest {
  const command = plugged(bench, 'forward')!.at;
  const { rest } = bench.times.plug('forward');
  const lostAt = when === 'before' ? command - JUST_BEFORE : state.at;
  return commissioningTest({
    id: when === 'before' ? 'fault.lostPhase.beforePlugging' : 'fault.lostPhase.plugging',
    group: 'faults',
    title: when === 'before' ? 'Phase lost just before plugging' : 'Phase lost while plugging',
    hands:
      when === 'before'
        ? `Phase ${PHASE} is lost. ${state.words}.`
        : `${state.words}, phase ${PHASE} is lost.`,
    initial: state.initial,
    steadyUntil: state.steadyUntil,
    actions: state.actions,
    faults: [lost(lostAt)],
    endTime: command + LONGER * rest + bench.pressTime,
    mark: command,
    markWords: 'command to plug',
    requirements: [brakesWorse('forward', command, rest)],
    danger:
      'Two phases brake little, or drive on in the old direction: the zero-speed switch does not open, and the machine does not stop as people expect.',
  });
}

const JUST_BEFORE = 0.02;
