import type { Direction } from '../../starter/starter.ts';
import { type Bench, letGo, type Preparation, press, running } from './bench.ts';
import { isBraked, isNotBraked } from './braking.ts';
import { armatureStaysIn, offWhilePressed, runsUp, startsAgain } from './faultRequirements.ts';
import { coastsToRest, runsOn } from './requirements.ts';
import { type CommissioningTest, commissioningTest, type TestInput } from './test.ts';

/** Shown after stop in a run that nothing ends by itself, s. */
const SHOWN = 0.6;

/** Contactors and poles that do not let go. */
export function weldingTests(bench: Bench): readonly CommissioningTest[] {
  return [
    weldedContactor(bench),
    ...(bench.brakes ? [weldedBrakingContactor(bench)] : []),
    weldedPole(bench),
  ];
}

function stopping(
  bench: Bench,
): { readonly from: Preparation } & Pick<
  TestInput,
  'group' | 'initial' | 'steadyUntil' | 'actions' | 'mark' | 'markWords'
> & { readonly words: string } {
  const from = running(bench, 'forward');
  const stops = bench.inches ? [letGo('forward', from.at)] : press('stop', from.at, bench.pressTime);
  return {
    from,
    group: 'faults',
    initial: from.initial,
    steadyUntil: from.steadyUntil,
    actions: [...from.actions, ...stops],
    mark: from.at,
    markWords: bench.inches ? 'forward let go' : 'stop pressed',
    words: bench.inches ? `${from.words}, forward is let go.` : `${from.words}, stop is pressed and let go.`,
  };
}

function weldedContactor(bench: Bench): CommissioningTest {
  const { from, words, ...common } = stopping(bench);
  return commissioningTest({
    ...common,
    id: 'fault.weldedContactor',
    title: 'Forward contactor welded',
    hands: `The forward contactor is welded in. ${words}`,
    faults: [{ kind: 'weldedContactor', contactor: 'forward' }],
    endTime: from.at + bench.pressTime + SHOWN,
    requirements: [armatureStaysIn('forward'), isNotBraked('forward'), runsOn('forward')],
    danger: 'Neither stop nor emergency stop ends it: only switching the supply off does.',
  });
}

function weldedBrakingContactor(bench: Bench): CommissioningTest {
  const { from, words, ...common } = stopping(bench);
  const { plug, start } = bench.times;
  return commissioningTest({
    ...common,
    id: 'fault.weldedBrakingContactor',
    title: 'Reverse contactor welds while braking',
    hands: `The reverse contactor welds when it closes. ${words}`,
    faults: [{ kind: 'weldedContactor', contactor: 'reverse' }],
    endTime: from.at + plug('forward').rest + runUpTime(bench, start) + SHOWN,
    requirements: [isBraked('forward'), armatureStaysIn('reverse'), runsUp('reverse')],
    danger:
      'It runs up in reverse after a stop, and neither stop nor emergency stop ends it: only switching the supply off does.',
  });
}

/** Long enough for a run-up in reverse: that of the start in the direction that is known. */
export function runUpTime({ reverses }: Pick<Bench, 'reverses'>, start: Bench['times']['start']): number {
  const direction: Direction = reverses ? 'reverse' : 'forward';
  return 1.5 * start(direction).full;
}

function weldedPole(bench: Bench): CommissioningTest {
  const { from, words, ...common } = stopping(bench);
  const pole = 'B';
  const base = {
    ...common,
    id: 'fault.weldedPole',
    title: 'One pole of the forward contactor welded',
    hands: `Pole ${pole} of the forward contactor is welded; its armature stays in. ${words}`,
    faults: [{ kind: 'weldedPole', contactor: 'forward', pole } as const],
  };
  const live = `Terminal ${pole} of the motor stays live.`;
  const holdsItself = !bench.inches && bench.control.scheme !== 'plugStopBoth';
  if (!holdsItself)
    return commissioningTest({
      ...base,
      requirements: [
        isNotBraked('forward'),
        { ...coastsToRest(), words: 'coasts: one pole alone carries no current' },
      ],
      danger: `${live} It is not braked.`,
    });
  const release = from.at + bench.pressTime;
  return commissioningTest({
    ...base,
    endTime: release + SHOWN,
    requirements: [
      offWhilePressed(from.at, release),
      isNotBraked('forward'),
      startsAgain('forward', release),
    ],
    danger: `${live} Its hold-in contact, closed with the armature, starts the machine again when stop is let go.`,
  });
}
