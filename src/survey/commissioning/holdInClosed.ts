import type { Direction } from '../../starter/starter.ts';
import { atRest, type Bench, directionsOf, press } from './bench.ts';
import { nothingDrives, slackOf } from './requirements.ts';
import { energisedFor, finalState } from './run.ts';
import { type CommissioningTest, commissioningTest, type Requirement } from './test.ts';

/** A hold-in contact that does not open is a start button that is always pressed: one row for each direction. */
export function holdInClosedTests(bench: Bench): readonly CommissioningTest[] {
  return directionsOf(bench).map((direction) => holdInClosed(bench, direction));
}

function holdInClosed(bench: Bench, direction: Direction): CommissioningTest {
  const { control } = bench;
  const { actions } = atRest(bench);
  const allowed = actions[0]?.at ?? 0;
  const stop = allowed + Math.max(2 * bench.pressTime, bench.times.start(direction).full);
  const release = stop + bench.pressTime;
  const when = control.readyRelay ? 'reset is pressed' : 'the control is switched on';
  return commissioningTest({
    id: `fault.holdInClosed.${direction}`,
    group: 'faults',
    title: `Hold-in contact of ${direction} stuck closed`,
    hands: `The hold-in contact of ${direction} does not open. ${control.readyRelay ? 'Reset is pressed' : 'The control is switched on'}, and no start button. When the machine runs, stop is pressed and let go.`,
    actions: [...actions, ...press('stop', stop, bench.pressTime)],
    faults: [{ kind: 'auxiliaryContact', contactor: direction, contact: 'holdIn', stuck: 'closed' }],
    mark: allowed,
    markWords: control.readyRelay ? 'reset pressed' : 'control switched on',
    requirements: [
      startsUnasked(direction, allowed + control.changeoverTimer, when),
      nothingDrives(stop, release, 'while stop is held nothing drives the machine'),
      startsOnceMore(direction, release),
    ],
    moments: [{ words: 'when stop is let go', t: release }],
    danger: `It starts by itself when ${when}, with nobody at a start button, and again after every stop: stop acts only while it is held.`,
  });
}

/** The contactor is energised to run, though nobody has pressed a start button. */
function startsUnasked(direction: Direction, from: number, when: string): Requirement {
  return {
    words: `the ${direction} contactor goes in by itself when ${when}`,
    isMet: (run) => energisedFor(run, direction, 'command').some((one) => one.from <= from + slackOf(run)),
  };
}

/** It is energised to run once more after stop, at once or when braking is over, and stays so. */
function startsOnceMore(direction: Direction, release: number): Requirement {
  return {
    words: `it starts ${direction} again by itself after stop is let go`,
    isMet: (run) => {
      const end = finalState(run);
      const again = energisedFor(run, direction, 'command').some(({ from }) => from >= release);
      return again && end.kind === 'connected' && end.contactor === direction;
    },
  };
}
