/**
 * What a failed device does to each scheme, written from the descriptions of schemes and faults. Common practice, no source;
 * that a welded contact defeats the electrical interlock, so that a mechanical one is needed as well: an open textbook on
 * motor control.
 */
import { describe, expect, it } from 'vitest';
import { controlCircuit } from '../../../../src/starter/control/schemes.ts';
import { stuckContacts } from '../../../../src/starter/control/stuckContacts.ts';
import { controlBench } from '../../../support/controlBench.ts';
import { checkTables, PLAIN_CONTROL, type TruthRow } from '../../../support/truthTable.ts';

const contact = (contact: 'holdIn' | 'interlock', stuck: 'open' | 'closed') =>
  stuckContacts([{ kind: 'auxiliaryContact', contactor: 'forward', contact, stuck }]);
const holdIn = (stuck: 'open' | 'closed') => contact('holdIn', stuck);
const interlock = (stuck: 'open' | 'closed') => contact('interlock', stuck);
const run: readonly TruthRow[] = [
  ['press forward', 'forward', 'start'],
  ['release forward', 'forward', 'held'],
  ['turns forward', 'forward', 'running'],
];

describe('a hold-in contact', () => {
  checkTables([
    ...(['throughStop', 'direct', 'antiPlugging', 'plugStop', 'plugStopBoth'] as const).map((scheme) => ({
      law: 'that does not close drops the contactor with the button, and leaves the other direction as it was',
      control: { scheme },
      setUp: { stuck: holdIn('open') },
      rows: [
        ['press forward', 'forward', 'the button itself feeds the coil'],
        ['release forward', 'none', 'nothing holds'],
        ['stands', 'none', 'no command'],
      ] as const,
    })),
    {
      law: 'that does not close makes letting go at speed a stop that brakes',
      control: { scheme: 'plugStop', memoryRelay: true },
      setUp: { stuck: holdIn('open') },
      rows: [
        ['press forward', 'forward', 'the button itself feeds the coil'],
        ['turns forward', 'forward', 'running'],
        ['release forward', 'reverse', 'the contactor drops, the other brakes'],
        ['stands', 'none', 'the switch ends it'],
      ],
    },
    {
      law: 'that does not open makes the reset button a start button',
      control: { scheme: 'throughStop', readyRelay: true },
      setUp: { stuck: holdIn('closed') },
      rows: [
        ['press forward', 'none', 'not ready'],
        ['release forward', 'none', 'not ready'],
        ['press reset', 'forward', 'ready, and the contact is a command already'],
      ],
    },
    {
      law: 'that does not open is a start button that is always pressed',
      control: { scheme: 'throughStop' },
      setUp: { stuck: holdIn('closed') },
      rows: [
        ['press stop', 'none', 'stop is stronger'],
        ['release stop', 'forward', 'starts by itself'],
        ['press emergencyStop', 'none', 'the emergency stop is stronger'],
        ['release emergencyStop', 'forward', 'starts by itself'],
      ],
    },
  ]);
});

describe('an interlock contact', () => {
  checkTables([
    {
      law: 'that does not close leaves the other direction dead',
      control: { scheme: 'throughStop' },
      setUp: { stuck: interlock('open') },
      rows: [
        ['press reverse', 'none', 'barred for good'],
        ['release reverse', 'none', 'barred for good'],
        ['press forward', 'forward', 'the other coil has its own interlock'],
      ],
    },
    {
      law: 'that does not close leaves the machine without braking',
      control: { scheme: 'plugStop', memoryRelay: true },
      setUp: { stuck: interlock('open') },
      rows: [...run, ['press stop', 'none', 'the braking contactor is barred: it coasts']],
    },
    {
      law: 'that does not open feeds both coils; the mechanical interlock keeps the second contactor out',
      control: { scheme: 'throughStop' },
      setUp: { stuck: interlock('closed') },
      rows: [
        ['press forward', 'forward', 'start'],
        ['release forward', 'forward', 'held'],
        ['press reverse', { coils: 'both', armatures: 'forward' }, 'only the mechanical interlock is left'],
        ['release reverse', 'forward', 'the second was never in'],
      ],
    },
    ...(['plugStop', 'plugStopBoth'] as const).map((scheme) => ({
      law: 'that does not open feeds the braking coil while the machine runs: only it keeps that coil dead',
      control: { scheme, memoryRelay: true },
      setUp: { stuck: interlock('closed') },
      rows: [
        ['press forward', 'forward', 'start'],
        ['release forward', 'forward', 'held'],
        ['turns forward', { coils: 'both', armatures: 'forward' }, 'only the mechanical interlock is left'],
        ['press stop', 'reverse', 'braking'],
        ['stands', 'none', 'the switch ends it'],
      ] as const,
    })),
  ]);

  it('that does not open lets the quicker contactor in on the slower one: no mechanical interlock, a short circuit', () => {
    for (const scheme of ['throughStop', 'direct'] as const)
      for (const mechanicalInterlock of [true, false]) {
        const bench = controlBench(controlCircuit({ ...PLAIN_CONTROL, scheme }, false), {
          stuck: interlock('closed'),
          mechanicalInterlock,
          first: 'lastInCircuit',
        });
        bench.act('press forward');
        bench.act('release forward');
        bench.act('press reverse');
        expect(bench.bothWereIn(), `${scheme}, mechanical interlock ${mechanicalInterlock}`).toBe(
          !mechanicalInterlock,
        );
      }
  });
});

describe('a welded contactor', () => {
  const forwardIn = (coils: 'none' | 'forward') => ({ coils, armatures: 'forward' }) as const;
  checkTables([
    ...(['throughStop', 'direct', 'antiPlugging'] as const).map((scheme) => ({
      law: 'bars the other direction by its interlock, and its hold-in contact feeds its coil again after stop',
      control: { scheme },
      setUp: { welded: ['forward'] } as const,
      rows: [
        ['press forward', 'forward', 'start'],
        ['release forward', 'forward', 'held'],
        ['press stop', forwardIn('none'), 'the armature stays'],
        ['press reverse', forwardIn('none'), 'stop is pressed'],
        ['release reverse', forwardIn('none'), 'stop is pressed'],
        ['release stop', forwardIn('forward'), 'the hold-in contact of the welded contactor is closed'],
        ['press emergencyStop', forwardIn('none'), 'the coil is dead, the contacts are not'],
      ] as const,
    })),
    {
      law: 'is not reversed by the opposite button',
      control: { scheme: 'direct' },
      setUp: { welded: ['forward'] },
      rows: [
        ['press forward', 'forward', 'start'],
        ['release forward', 'forward', 'held'],
        ['press reverse', forwardIn('none'), 'its coil is dropped, but it bars the reverse coil'],
        ['release reverse', forwardIn('forward'), 'its hold-in contact is closed'],
      ],
    },
    {
      law: 'is not braked: the interlock bars the braking contactor',
      control: { scheme: 'plugStop', memoryRelay: true },
      setUp: { welded: ['forward'] },
      rows: [
        ...run,
        ['press stop', forwardIn('none'), 'the armature stays, and with it the bar'],
        ['press emergencyStop', forwardIn('none'), 'the motor runs on'],
      ],
    },
    {
      law: 'that was to brake stays in: the machine runs up in reverse, and no start is possible',
      control: { scheme: 'plugStop', memoryRelay: true },
      setUp: { welded: ['reverse'] },
      rows: [
        ...run,
        ['press stop', 'reverse', 'braking'],
        ['release stop', 'reverse', 'braking'],
        ['stands', { coils: 'none', armatures: 'reverse' }, 'the coil drops, the armature does not'],
        ['turns reverse', { coils: 'none', armatures: 'reverse' }, 'it runs up the other way'],
        ['press forward', { coils: 'none', armatures: 'reverse' }, 'barred by the interlock'],
      ],
    },
  ]);

  it.each([true, false])(
    'with its interlock failed too lets the other in unless one is barred mechanically: %s',
    (mechanicalInterlock) => {
      const bench = controlBench(controlCircuit({ ...PLAIN_CONTROL, scheme: 'direct' }, false), {
        stuck: interlock('closed'),
        welded: ['forward'],
        mechanicalInterlock,
      });
      bench.act('press forward');
      bench.act('release forward');
      bench.act('press reverse');
      expect(bench.armatures()).toBe(mechanicalInterlock ? 'forward' : 'both');
    },
  );
});

describe('a zero-speed switch', () => {
  const brokenWire = stuckContacts([{ kind: 'zeroSpeedSwitch', mode: 'stuckOpen' }]);
  checkTables([
    ...(['plugStop', 'plugStopBoth'] as const).map((scheme) => ({
      law: 'whose make contacts never close leaves the stop without braking',
      control: { scheme },
      setUp: { stuck: brokenWire },
      rows: [...run, ['press stop', 'none', 'it coasts'], ['release stop', 'none', 'it coasts']] as const,
    })),
    {
      law: 'whose make contacts never close still blocks the opposite direction with its break contacts',
      control: { scheme: 'antiPlugging' },
      setUp: { stuck: brokenWire },
      rows: [...run, ['press reverse', 'none', 'the break contact is open']],
    },
    {
      law: 'that never lets go keeps the braking contactor in: the machine runs up in reverse',
      control: { scheme: 'plugStop', memoryRelay: true },
      setUp: { stuck: [{ device: 'switchForward', kind: 'make', stuck: 'closed' }] },
      rows: [
        ...run,
        ['press stop', 'reverse', 'braking'],
        ['release stop', 'reverse', 'braking'],
        ['stands', 'reverse', 'the contact does not open'],
        ['turns reverse', 'reverse', 'it runs up the other way'],
        ['press stop', 'reverse', 'stop does not end the braking'],
        ['press emergencyStop', 'none', 'the emergency stop does'],
      ],
    },
    {
      law: 'that never lets go is ended by the limit of an emergency stop of category 1',
      control: { scheme: 'plugStop', memoryRelay: true, emergencyStop: { category: 1, limit: 2 } },
      setUp: { stuck: [{ device: 'switchForward', kind: 'make', stuck: 'closed' }] },
      rows: [
        ...run,
        ['press emergencyStop', 'reverse', 'braking'],
        ['stands', 'reverse', 'the contact does not open'],
        ['limit passes', 'none', 'the limit ends it'],
      ],
    },
  ]);
});
