import {
  type Bench,
  handsOff,
  hold,
  letGoHeld,
  outage,
  type Preparation,
  plugging,
  running,
} from './bench.ts';
import { coastsToRest, dropsWithSupply, nothingStarts } from './requirements.ts';
import { type CommissioningTest, commissioningTest } from './test.ts';
import { timeToStandstill } from './timings.ts';

/** The supply is away for this long, s; the machine as a rule still turns when it is back. */
const OUTAGE = 0.15;
/** The same where coils hold on to the residual voltage of the motor until they drop, s. */
const OUTAGE_FELT = 0.6;
/** A held button is let go this long after the supply has failed, s. */
const LET_GO = 0.05;

/** The supply fails and returns. */
export function supplyTests(bench: Bench): readonly CommissioningTest[] {
  const states: readonly (readonly [string, string, Preparation | null])[] = [
    ['running', 'while running', running(bench, 'forward')],
    ['plugging', 'while plugging', plugging(bench, 'forward')],
  ];
  return [
    ...states.flatMap(([id, title, state]) => (state === null ? [] : [supplyIn(bench, id, title, state)])),
    heldWhileItReturns(bench),
  ];
}

function outageOf({ control }: Bench): number {
  return control.coilVoltage === null ? OUTAGE : OUTAGE_FELT;
}

function supplyIn(bench: Bench, id: string, title: string, state: Preparation): CommissioningTest {
  const { at } = state;
  const until = handsOff(state, at + outageOf(bench));
  const holding = state.held === null ? '' : ` let ${state.held} go and`;
  return commissioningTest({
    id: `supply.${id}`,
    group: 'supply',
    title: `Supply lost ${title}, and back`,
    hands: `${state.words}, switch the supply off at the main switch;${holding} switch it on again at once, while the machine still turns.`,
    initial: state.initial,
    steadyUntil: state.steadyUntil,
    actions: [...state.actions, ...letGoHeld(state, at + LET_GO)],
    faults: [outage(at, until)],
    mark: at,
    markWords: 'supply lost',
    requirements: [dropsWithSupply(at, until), nothingStarts(until, 'the supply is back'), coastsToRest()],
    timings: [timeToStandstill()],
    moments: [{ words: 'when it is back', t: until }],
  });
}

function heldWhileItReturns(bench: Bench): CommissioningTest {
  const state = running(bench, 'forward');
  const { at } = state;
  const until = at + outageOf(bench);
  // A machine that runs by itself has its button pressed again, and held, before the supply fails.
  const held = state.held === null ? [hold('forward', at - HELD_BEFORE)] : [];
  return commissioningTest({
    id: 'supply.buttonHeld',
    group: 'supply',
    title: 'Start button held while the supply returns',
    hands: `${state.words}, hold forward down, switch the supply off and on again at the main switch; keep holding.`,
    initial: state.initial,
    steadyUntil: state.steadyUntil,
    actions: [...state.actions, ...held],
    faults: [outage(at, until)],
    mark: at,
    markWords: 'supply lost',
    requirements: [
      dropsWithSupply(at, until),
      nothingStarts(until, 'the supply is back and a button is held'),
    ],
    moments: [{ words: 'when it is back', t: until }],
  });
}

const HELD_BEFORE = 0.1;
