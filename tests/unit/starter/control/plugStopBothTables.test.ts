/**
 * What plug to stop in both directions does, hand by hand, written from the description of the scheme and not from its table.
 * Common practice, no source. `turns forward` and `stands`: what the zero-speed switch sees.
 */
import { describe } from 'vitest';
import { checkTables } from '../../../support/truthTable.ts';

describe('plug to stop, both directions', () => {
  const plain = { scheme: 'plugStopBoth' } as const;
  const memory = { scheme: 'plugStopBoth', memoryRelay: true } as const;
  for (const control of [plain, memory])
    checkTables([
      {
        law: 'stop brakes a forward run until the switch opens, and nothing holds in',
        control,
        rows: [
          ['press forward', 'forward', 'start'],
          ['release forward', 'forward', 'held'],
          ['turns forward', 'forward', 'running'],
          ['press stop', 'reverse', 'the opposite contactor brakes'],
          ['release stop', 'reverse', 'braking does not depend on the button'],
          ['stands', 'none', 'no run relay holds the braking contactor'],
        ],
      },
      {
        law: 'stop brakes a reverse run until the switch opens, and nothing holds in',
        control,
        rows: [
          ['press reverse', 'reverse', 'start'],
          ['release reverse', 'reverse', 'held'],
          ['turns reverse', 'reverse', 'running'],
          ['press stop', 'forward', 'the opposite contactor brakes'],
          ['release stop', 'forward', 'braking does not depend on the button'],
          ['stands', 'none', 'no run relay holds the braking contactor'],
        ],
      },
      {
        law: 'it reverses directly, runs on, and stop brakes the new direction',
        control,
        rows: [
          ['press forward', 'forward', 'start'],
          ['release forward', 'forward', 'held'],
          ['turns forward', 'forward', 'running'],
          ['press reverse', 'reverse', 'a reversal'],
          ['release reverse', 'reverse', 'held by its run relay'],
          ['stands', 'reverse', 'a run, not a stop: the switch does not end it'],
          ['turns reverse', 'reverse', 'running'],
          ['press stop', 'forward', 'the opposite contactor brakes'],
          ['release stop', 'forward', 'braking'],
          ['stands', 'none', 'the switch ends it'],
        ],
      },
      {
        law: 'stop during a reversal ends it as a stop of the direction in which the machine turns',
        control,
        rows: [
          ['press forward', 'forward', 'start'],
          ['release forward', 'forward', 'held'],
          ['turns forward', 'forward', 'running'],
          ['press reverse', 'reverse', 'a reversal'],
          ['release reverse', 'reverse', 'held'],
          ['press stop', 'reverse', 'it still turns forward: the reverse contactor brakes'],
          ['release stop', 'reverse', 'braking'],
          ['stands', 'none', 'the run relay has dropped: at rest'],
        ],
      },
      {
        law: 'a start while it brakes is a start',
        control,
        rows: [
          ['press forward', 'forward', 'start'],
          ['release forward', 'forward', 'held'],
          ['turns forward', 'forward', 'running'],
          ['press stop', 'reverse', 'braking'],
          ['release stop', 'reverse', 'braking'],
          ['press reverse', 'reverse', 'the contactor that brakes is to run'],
          ['release reverse', 'reverse', 'held'],
          ['stands', 'reverse', 'a run'],
        ],
      },
      {
        law: 'a start of the direction that is being braked waits until the braking has ended',
        control,
        rows: [
          ['press forward', 'forward', 'start'],
          ['release forward', 'forward', 'held'],
          ['turns forward', 'forward', 'running'],
          ['press stop', 'reverse', 'braking'],
          ['release stop', 'reverse', 'braking'],
          ['press forward', 'reverse', 'the run relay is set; the braking contactor bars the forward coil'],
          ['release forward', 'reverse', 'the run relay holds itself'],
          ['stands', 'forward', 'the switch ends the braking: the run begins'],
        ],
      },
      {
        law: 'taking a reversal back brakes to a stop before it runs on in the old direction',
        control,
        rows: [
          ['press reverse', 'reverse', 'start'],
          ['release reverse', 'reverse', 'held'],
          ['turns reverse', 'reverse', 'running'],
          ['press forward', 'forward', 'a reversal'],
          ['release forward', 'forward', 'held'],
          ['press reverse', 'forward', 'the machine still turns in reverse: braking goes on'],
          ['release reverse', 'forward', 'the run relay holds itself'],
          ['stands', 'reverse', 'the switch ends the braking: the run begins'],
        ],
      },
      {
        law: 'both buttons at once at speed are no command: it brakes',
        control,
        rows: [
          ['press forward', 'forward', 'start'],
          ['turns forward', 'forward', 'running'],
          ['press reverse', 'reverse', 'both run relays are out: braking'],
          ['stands', 'none', 'the switch ends it; both are still pressed'],
          ['release reverse', 'forward', 'one button is left'],
        ],
      },
      {
        law: 'below the pick-up speed stop only coasts',
        control,
        rows: [
          ['press reverse', 'reverse', 'start'],
          ['release reverse', 'reverse', 'held'],
          ['press stop', 'none', 'the switch does not show rotation'],
          ['release stop', 'none', 'coasting'],
        ],
      },
      {
        law: 'both buttons at once start nothing from rest',
        control,
        rows: [
          [['press forward', 'press reverse'], 'none', 'each button opens the other circuit'],
          [['release forward', 'release reverse'], 'none', 'nothing was started'],
        ],
      },
      {
        law: 'a button held down while stop is pressed and let go starts again',
        control,
        rows: [
          ['press forward', 'forward', 'start'],
          ['press stop', 'none', 'stop is stronger than start; too slow to brake'],
          ['release stop', 'forward', 'nothing asks whether the button had been let go'],
        ],
      },
    ]);
  checkTables([
    {
      law: 'without a memory a shaft turned by hand brings the opposite contactor in',
      control: plain,
      rows: [
        ['turns forward', 'reverse', 'nothing tells a hand from a motor'],
        ['stands', 'none', 'the switch opens'],
        ['turns reverse', 'forward', 'nothing tells a hand from a motor'],
        ['stands', 'none', 'the switch opens'],
      ],
    },
    {
      law: 'with memory relays a shaft turned by hand starts nothing, before a run and after it',
      control: memory,
      rows: [
        ['turns forward', 'none', 'no contactor has driven the machine'],
        ['turns reverse', 'none', 'no contactor has driven the machine'],
        ['stands', 'none', 'no command'],
        ['press forward', 'forward', 'start'],
        ['release forward', 'forward', 'held'],
        ['turns forward', 'forward', 'running'],
        ['press stop', 'reverse', 'braking'],
        ['release stop', 'reverse', 'braking'],
        ['stands', 'none', 'at rest'],
        ['turns forward', 'none', 'the memory has dropped'],
        ['turns reverse', 'none', 'braking is no run: nothing is to be braked'],
      ],
    },
    {
      law: 'with a lockout a shaft turned by hand starts nothing',
      control: plain,
      lockout: true,
      rows: [
        ['turns forward', 'none', 'the solenoid keeps the switch from being actuated'],
        ['turns reverse', 'none', 'the solenoid keeps the switch from being actuated'],
        ['stands', 'none', 'no command'],
        ['press reverse', 'reverse', 'start'],
        ['release reverse', 'reverse', 'held'],
        ['turns reverse', 'reverse', 'running'],
        ['press stop', 'forward', 'braking'],
        ['release stop', 'forward', 'braking'],
        ['stands', 'none', 'at rest'],
        ['turns reverse', 'none', 'locked again'],
        ['stands', 'none', 'no command'],
        ['press forward', 'forward', 'start'],
        ['release forward', 'forward', 'held'],
        ['turns forward', 'forward', 'running'],
        ['press stop', 'reverse', 'braking'],
      ],
    },
  ]);
});
