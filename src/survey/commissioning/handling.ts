import type { ButtonAction } from '../../scenario/scenario.ts';
import { atRest, type Bench, hold, letGo, press, readyWords, running } from './bench.ts';
import {
  atMostOneIn,
  comesToRest,
  neverBothIn,
  nothingDrives,
  nothingPicksUp,
  runs,
} from './requirements.ts';
import { type CommissioningTest, commissioningTest } from './test.ts';

/** Both buttons are held together for this long, s. */
const TOGETHER = 0.3;
/** Times that somebody hits a button in a hurry. */
const HITS = 6;
/** From hit to hit beyond the time a button is pressed, s. */
const BETWEEN_HITS = 0.05;
/** A hand that wants to be quick presses this long, s. */
const HIT = 0.12;

/** Hands that do what they should not. */
export function handlingTests(bench: Bench): readonly CommissioningTest[] {
  return [bothButtons(bench), heldOverStop(bench), repeatedHits(bench)];
}

function bothButtons(bench: Bench): CommissioningTest {
  const { actions, at } = atRest(bench);
  const second = bench.reverses ? 'reverse' : 'stop';
  const common = {
    id: 'handling.bothButtons',
    group: 'handling' as const,
    title: bench.reverses ? 'Both start buttons at once' : 'Start and stop at once',
    hands: `${readyWords(bench)}Press forward and ${second} together, hold, let go together.`,
    actions: [...actions, ...press('forward', at, TOGETHER), ...press(second, at, TOGETHER)],
    mark: at,
    markWords: 'both pressed',
  };
  if (bench.control.scheme !== 'throughStop')
    return commissioningTest({
      ...common,
      requirements: [
        nothingPicksUp(
          bench.reverses ? 'neither contactor picks up' : 'stop wins: neither contactor picks up',
        ),
      ],
    });
  return commissioningTest({
    ...common,
    requirements: [atMostOneIn(), neverBothIn()],
    danger: bench.interlocked
      ? null
      : 'Without a mechanical interlock both armatures may arrive together: a short circuit. The simulation lets one of them be the first.',
    remark: 'There is no push-button interlock: one of the two directions wins.',
  });
}

function heldOverStop(bench: Bench): CommissioningTest {
  const from = running(bench, 'forward');
  const pressed = from.at + HELD_BEFORE;
  const released = pressed + Math.max(bench.pressTime, STOP_HELD);
  const held = from.held === null ? [hold('forward', from.at)] : [];
  return commissioningTest({
    id: 'handling.heldOverStop',
    group: 'handling',
    title: 'Start button held down over a stop',
    hands: `${from.words}, hold forward down; press stop, let stop go, keep holding forward.`,
    initial: from.initial,
    steadyUntil: from.steadyUntil,
    actions: [...from.actions, ...held, hold('stop', pressed), letGo('stop', released)],
    mark: pressed,
    markWords: 'stop pressed',
    requirements: [
      nothingDrives(pressed, released, 'while stop is pressed nothing drives the machine'),
      runs('forward'),
    ],
    moments: [{ words: 'when stop is let go', t: released }],
    remark: 'The held button starts the machine again when stop is let go: let the start button go first.',
  });
}

const HELD_BEFORE = 0.1;
const STOP_HELD = 0.4;

function repeatedHits(bench: Bench): CommissioningTest {
  const from = running(bench, 'forward');
  const step = Math.max(HIT, bench.pressTime / 2) + BETWEEN_HITS;
  const [first, second] = bench.reverses ? (['reverse', 'forward'] as const) : (['stop', 'forward'] as const);
  const count = bench.reverses ? HITS : HITS - 1;
  // The last one is pressed for long enough to count.
  const lasts = (k: number) => (k === count - 1 ? bench.pressTime : step - BETWEEN_HITS);
  const hits: ButtonAction[] = Array.from({ length: count }, (_, k) =>
    press(k % 2 === 0 ? first : second, from.at + k * step, lasts(k)),
  ).flat();
  const held = from.held === null ? [] : [letGo(from.held, from.at)];
  const stops = bench.inches || !bench.reverses;
  return commissioningTest({
    id: 'handling.repeatedHits',
    group: 'handling',
    title: bench.reverses ? 'Opposite button hit again and again' : 'Stop and start hit again and again',
    hands: `${from.words}, hit ${first} and ${second} in turn, ${count} times, as fast as the hand goes${stops && !bench.inches ? ', stop last' : ''}.`,
    initial: from.initial,
    steadyUntil: from.steadyUntil,
    actions: [...from.actions, ...held, ...hits],
    mark: from.at,
    markWords: `first hit of ${first}`,
    requirements: [neverBothIn(), stops ? comesToRest() : runs('forward')],
    remark: 'Each hit is one more reversal or braking for the heat of the rotor.',
  });
}
