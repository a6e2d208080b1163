/**
 * Emergency stop of category 1 by plugging: the driving contactor drops, the opposite one brakes until the switch opens or the
 * limit has passed, then both are dead. Written from the description. Source of the categories: IEC 60204-1 (from memory,
 * high confidence).
 */
import { describe } from 'vitest';
import { checkTables, type TruthRow } from '../../../support/truthTable.ts';

const category1 = { emergencyStop: { category: 1, limit: 2 } } as const;

describe.each([false, true])('with a memory relay: %s', (memoryRelay) => {
  const plugStop = { scheme: 'plugStop', memoryRelay, ...category1 } as const;
  const both = { scheme: 'plugStopBoth', memoryRelay, ...category1 } as const;
  const jog = { scheme: 'jog', memoryRelay, ...category1 } as const;
  const run: readonly TruthRow[] = [
    ['press forward', 'forward', 'start'],
    ['release forward', 'forward', 'held'],
    ['turns forward', 'forward', 'running'],
  ];

  checkTables(
    [plugStop, both].flatMap((control) => [
      {
        law: 'a run is braked until the switch opens, and releasing the emergency stop starts nothing',
        control,
        rows: [
          ...run,
          ['press emergencyStop', 'reverse', 'the driving contactor has dropped, the other brakes'],
          ['stands', 'none', 'the switch ends the braking'],
          ['press forward', 'none', 'the emergency stop is latched'],
          ['release forward', 'none', 'the emergency stop is latched'],
          ['limit passes', 'none', 'dead in any case'],
          ['press forward', 'none', 'the emergency stop is latched'],
          ['release forward', 'none', 'the emergency stop is latched'],
          ['release emergencyStop', 'none', 'no command'],
          ['press forward', 'forward', 'a new command'],
        ],
      },
      {
        law: 'the limit ends the braking although the machine still turns',
        control,
        rows: [
          ...run,
          ['press emergencyStop', 'reverse', 'the other contactor brakes'],
          ['limit passes', 'none', 'the switch does not open: the limit ends it'],
          ['press forward', 'none', 'the emergency stop is latched'],
          ['release forward', 'none', 'the emergency stop is latched'],
          ['stands', 'none', 'it has coasted out'],
          ['release emergencyStop', 'none', 'no command'],
        ],
      },
      {
        law: 'a stop that brakes already goes on braking, and the limit ends it',
        control,
        rows: [
          ...run,
          ['press stop', 'reverse', 'braking'],
          ['release stop', 'reverse', 'braking'],
          ['press emergencyStop', 'reverse', 'braking'],
          ['limit passes', 'none', 'the limit ends it'],
        ],
      },
      {
        law: 'below the pick-up speed both drop',
        control,
        rows: [
          ['press forward', 'forward', 'start'],
          ['release forward', 'forward', 'held'],
          ['press emergencyStop', 'none', 'too slow for the switch'],
          ['release emergencyStop', 'none', 'the hold-in was lost'],
        ],
      },
      {
        law: 'a start is not possible while it brakes',
        control,
        rows: [
          ...run,
          ['press emergencyStop', 'reverse', 'braking'],
          ['press forward', 'reverse', 'the emergency stop is latched'],
          ['stands', 'none', 'the switch ends the braking; the button has no effect'],
          ['limit passes', 'none', 'dead in any case'],
        ],
      },
      {
        law: 'the overload relay drops both, whatever the category',
        control,
        rows: [
          ...run,
          ['press emergencyStop', 'reverse', 'braking'],
          ['overload trips', 'none', 'nothing closes a coil past it'],
          ['stands', 'none', 'coasted out'],
          ['overload is reset', 'none', 'the emergency stop is latched, and there is nothing to brake'],
          ['release emergencyStop', 'none', 'no command'],
        ],
      },
      {
        law: 'the overload relay drops a running contactor without braking',
        control,
        rows: [
          ...run,
          ['overload trips', 'none', 'no braking past the overload relay'],
          ['press emergencyStop', 'none', 'nor with the emergency stop'],
        ],
      },
    ]),
  );

  checkTables([
    {
      law: 'a reverse run is braked by the forward contactor',
      control: both,
      rows: [
        ['press reverse', 'reverse', 'start'],
        ['release reverse', 'reverse', 'held'],
        ['turns reverse', 'reverse', 'running'],
        ['press emergencyStop', 'forward', 'the other contactor brakes'],
        ['stands', 'none', 'the switch ends the braking'],
        ['release emergencyStop', 'none', 'no command'],
      ],
    },
    {
      law: 'a reversal becomes a stop of the direction in which the machine still turns',
      control: both,
      rows: [
        ...run,
        ['press reverse', 'reverse', 'a reversal'],
        ['release reverse', 'reverse', 'held'],
        ['press emergencyStop', 'reverse', 'the machine still turns forward'],
        ['stands', 'none', 'the switch ends it: no run in reverse'],
        ['release emergencyStop', 'none', 'no command'],
      ],
    },
    {
      law: 'a jog with the button held is braked, and the held button does nothing',
      control: jog,
      rows: [
        ['press forward', 'forward', 'in while the button is held'],
        ['turns forward', 'forward', 'running'],
        ['press emergencyStop', 'reverse', 'the other contactor brakes'],
        ['stands', 'none', 'the button has no effect'],
        ['release forward', 'none', 'no command'],
        ['release emergencyStop', 'none', 'no command'],
      ],
    },
    {
      law: 'the limit ends the braking of a jog in reverse, and the held button does nothing',
      control: jog,
      rows: [
        ['press reverse', 'reverse', 'in while the button is held'],
        ['turns reverse', 'reverse', 'running'],
        ['press emergencyStop', 'forward', 'the other contactor brakes'],
        ['limit passes', 'none', 'the switch does not open: the limit ends it'],
        ['release reverse', 'none', 'dead'],
      ],
    },
    {
      law: 'at rest it keeps every button without effect',
      control: jog,
      rows: [
        ['press emergencyStop', 'none', 'nothing runs'],
        ['press forward', 'none', 'latched'],
        ['release forward', 'none', 'latched'],
        ['limit passes', 'none', 'latched'],
        ['press reverse', 'none', 'latched'],
        ['release reverse', 'none', 'latched'],
        ['release emergencyStop', 'none', 'no command'],
      ],
    },
  ]);
});

describe('with a memory relay', () => {
  checkTables(
    (['plugStop', 'plugStopBoth'] as const).flatMap((scheme) => [
      {
        law: 'releasing the emergency stop after the limit starts nothing although the machine still turns',
        control: { scheme, memoryRelay: true, ...category1 },
        rows: [
          ['press forward', 'forward', 'start'],
          ['release forward', 'forward', 'held'],
          ['turns forward', 'forward', 'running'],
          ['press emergencyStop', 'reverse', 'braking'],
          ['limit passes', 'none', 'both are dead'],
          ['release emergencyStop', 'none', 'a reset brings nothing in'],
        ],
      },
      {
        law: 'a shaft turned by hand while the emergency stop is pressed brings nothing in',
        control: { scheme, memoryRelay: true, ...category1 },
        rows: [
          ['press emergencyStop', 'none', 'at rest'],
          ['turns forward', 'none', 'no contactor has driven the machine'],
          ['limit passes', 'none', 'dead'],
          ['release emergencyStop', 'none', 'no command'],
        ],
      },
    ]),
  );
});

describe('schemes that do not brake', () => {
  checkTables(
    (['throughStop', 'direct', 'antiPlugging'] as const).flatMap((scheme) =>
      (['forward', 'reverse'] as const).map((direction) => ({
        law: `a ${direction} run just drops, and releasing the emergency stop starts nothing`,
        control: { scheme, ...category1 },
        rows: [
          [`press ${direction}`, direction, 'start'],
          [`release ${direction}`, direction, 'held'],
          [`turns ${direction}`, direction, 'running'],
          ['press emergencyStop', 'none', 'nothing of this scheme brakes'],
          [`press ${direction}`, 'none', 'latched'],
          [`release ${direction}`, 'none', 'latched'],
          ['limit passes', 'none', 'dead in any case'],
          ['release emergencyStop', 'none', 'the hold-in was lost'],
        ] as const,
      })),
    ),
  );
});

describe('with a ready relay', () => {
  checkTables(
    (['plugStop', 'plugStopBoth', 'jog'] as const).map((scheme) => ({
      law: 'a run is braked all the same, and a start afterwards asks for reset',
      control: { scheme, memoryRelay: true, readyRelay: true, ...category1 },
      rows: [
        ['press reset', 'none', 'ready'],
        ['release reset', 'none', 'ready'],
        ['press forward', 'forward', 'start'],
        ['turns forward', 'forward', 'running'],
        ['press emergencyStop', 'reverse', 'the driving contactor has dropped, the other brakes'],
        ['stands', 'none', 'the switch ends the braking; the held button does nothing'],
        ['press reset', 'none', 'not made ready while the emergency stop is pressed'],
        ['release emergencyStop', 'none', 'a start button is still held down'],
        ['release reset', 'none', 'not ready'],
        ['release forward', 'none', 'not ready'],
        ['press forward', 'none', 'not ready'],
        ['release forward', 'none', 'not ready'],
        ['press reset', 'none', 'ready'],
        ['press forward', 'forward', 'a new command'],
      ] as const,
    })),
  );
});

describe('without a memory: the known exception', () => {
  checkTables([
    {
      law: 'a shaft turned by hand while the emergency stop is pressed brings the braking contactor in up to the limit',
      control: { scheme: 'plugStop', ...category1 },
      rows: [
        ['press emergencyStop', 'none', 'at rest'],
        ['turns forward', 'reverse', 'nothing tells a hand from a motor, and braking stays possible'],
        ['limit passes', 'none', 'dead'],
      ],
    },
    {
      law: 'releasing the emergency stop after the limit while the machine still turns brakes again',
      control: { scheme: 'plugStop', ...category1 },
      rows: [
        ['press forward', 'forward', 'start'],
        ['release forward', 'forward', 'held'],
        ['turns forward', 'forward', 'running'],
        ['press emergencyStop', 'reverse', 'braking'],
        ['limit passes', 'none', 'both are dead'],
        ['release emergencyStop', 'reverse', 'the switch shows rotation and nothing else is asked'],
        ['stands', 'none', 'the switch opens'],
      ],
    },
  ]);
});
