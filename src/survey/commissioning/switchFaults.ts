import type { StarterFault } from '../../scenario/scenario.ts';
import { type Bench, hold, letGo, press, running } from './bench.ts';
import { isBraked, isNotBraked, isPlugged } from './braking.ts';
import { runsUp } from './faultRequirements.ts';
import { coastsToRest, dropsOut, runs } from './requirements.ts';
import { type CommissioningTest, commissioningTest, type TestInput } from './test.ts';
import { timeToStandstill } from './timings.ts';
import { runUpTime } from './welding.ts';

type Mode = Extract<StarterFault, { kind: 'zeroSpeedSwitch' }>['mode'];

const TITLES: Readonly<Record<Mode, string>> = {
  stuckClosed: 'Zero-speed switch stuck closed',
  stuckOpen: 'Zero-speed switch stuck open',
  doesNotPickUp: 'Zero-speed switch does not pick up',
};
const STATES: Readonly<Record<Mode, string>> = {
  stuckClosed: 'The zero-speed switch does not let go any more.',
  stuckOpen: 'The make contacts of the zero-speed switch never close (a broken wire).',
  doesNotPickUp: 'The zero-speed switch sees no speed (a slipping belt).',
};
const MODES = Object.keys(TITLES) as readonly Mode[];
/** Shown after a run-up, s. */
const SHOWN = 0.3;

/** The zero-speed switch fails, where the scheme depends on it. */
export function switchFaultTests(bench: Bench): readonly CommissioningTest[] {
  if (!bench.usesSwitch) return [];
  return MODES.map((mode) => (bench.brakes ? braking(bench, mode) : blocking(bench, mode)));
}

/** A stop that should be braked. */
function braking(bench: Bench, mode: Mode): CommissioningTest {
  const from = running(bench, 'forward');
  const base: TestInput = {
    ...named(mode),
    hands: `${STATES[mode]} ${from.words}, ${bench.inches ? 'forward is let go' : 'stop is pressed and let go'}.`,
    initial: from.initial,
    steadyUntil: from.steadyUntil,
    actions: [
      ...from.actions,
      ...(bench.inches ? [letGo('forward', from.at)] : press('stop', from.at, bench.pressTime)),
    ],
    mark: from.at,
    markWords: bench.inches ? 'forward let go' : 'stop pressed',
    timings: [timeToStandstill()],
    requirements: [],
  };
  if (mode === 'stuckClosed')
    return commissioningTest({
      ...base,
      endTime: from.at + bench.times.plug('forward').rest + runUpTime(bench, bench.times.start) + SHOWN,
      requirements: [isBraked('forward'), runsUp('reverse')],
      danger: 'It runs up in reverse after a stop. Stop does not end it; the emergency stop does.',
    });
  return commissioningTest({
    ...base,
    requirements: [dropsOut('forward'), isNotBraked('forward'), coastsToRest()],
    remark: 'It coasts: whoever relies on the short stop is not protected.',
  });
}

/** The opposite button, which should be blocked while the machine turns. */
function blocking(bench: Bench, mode: Mode): CommissioningTest {
  const from = running(bench, 'forward');
  const base: TestInput = {
    ...named(mode),
    hands: `${STATES[mode]} ${from.words}, reverse is pressed and let go.`,
    initial: from.initial,
    steadyUntil: from.steadyUntil,
    actions: [...from.actions, ...press('reverse', from.at, bench.pressTime)],
    mark: from.at,
    markWords: 'reverse pressed',
    timings: [timeToStandstill()],
    requirements: [],
  };
  switch (mode) {
    case 'stuckClosed':
      return commissioningTest({
        ...base,
        hands: `${STATES[mode]} ${from.words}, reverse is pressed and held, also at rest.`,
        actions: [...from.actions, hold('reverse', from.at)],
        requirements: [dropsOut('forward'), isNotBraked('forward'), coastsToRest()],
        remark: 'It fails to the safe side: reverse stays blocked, also at rest.',
      });
    case 'stuckOpen':
      return commissioningTest({
        ...base,
        requirements: [dropsOut('forward'), isNotBraked('forward'), coastsToRest()],
        remark: 'This scheme uses the break contacts alone, which still work.',
      });
    case 'doesNotPickUp':
      return commissioningTest({
        ...base,
        requirements: [dropsOut('forward'), isPlugged('forward'), runs('reverse')],
        danger: 'The machine is plugged, which this scheme is there to prevent.',
      });
  }
}

function named(mode: Mode): Pick<TestInput, 'id' | 'group' | 'title' | 'faults'> {
  return {
    id: `fault.zeroSpeedSwitch.${mode}`,
    group: 'faults',
    title: TITLES[mode],
    faults: [{ kind: 'zeroSpeedSwitch', mode }],
  };
}
