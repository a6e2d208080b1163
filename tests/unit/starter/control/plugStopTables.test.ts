/**
 * What plug to stop in one direction does, hand by hand, written from the description of the scheme and not from its table.
 * Common practice, no source. `turns forward` and `stands`: what the zero-speed switch sees.
 */
import { describe } from 'vitest';
import { checkTables } from '../../../support/truthTable.ts';

describe('plug to stop, one direction', () => {
  const plain = { scheme: 'plugStop' } as const;
  const memory = { scheme: 'plugStop', memoryRelay: true } as const;
  for (const control of [plain, memory])
    checkTables([
      {
        law: 'stop brakes until the switch opens, and nothing holds the braking contactor in',
        control,
        rows: [
          ['press forward', 'forward', 'start'],
          ['release forward', 'forward', 'held by its own contact'],
          ['turns forward', 'forward', 'running; the forward contactor bars the reverse coil'],
          ['press stop', 'reverse', 'the forward contactor has dropped and the machine turns'],
          ['release stop', 'reverse', 'braking does not depend on the button'],
          ['stands', 'none', 'the switch ends the braking'],
          ['turns reverse', 'none', 'a little too far: nothing drives it on'],
          ['stands', 'none', 'at rest'],
          ['press forward', 'forward', 'a new command'],
        ],
      },
      {
        law: 'stop held down ends at rest all the same',
        control,
        rows: [
          ['press forward', 'forward', 'start'],
          ['turns forward', 'forward', 'the button is still held'],
          ['press stop', 'reverse', 'stop is stronger than start'],
          ['release forward', 'reverse', 'braking'],
          ['stands', 'none', 'the switch ends the braking'],
          ['release stop', 'none', 'no command is left'],
        ],
      },
      {
        law: 'below the pick-up speed stop only coasts',
        control,
        rows: [
          ['press forward', 'forward', 'start'],
          ['release forward', 'forward', 'held'],
          ['press stop', 'none', 'the switch does not show rotation'],
          ['release stop', 'none', 'coasting'],
        ],
      },
      {
        law: 'start is barred while it brakes, and a button held down starts after it',
        control,
        rows: [
          ['press forward', 'forward', 'start'],
          ['release forward', 'forward', 'held'],
          ['turns forward', 'forward', 'running'],
          ['press stop', 'reverse', 'braking'],
          ['release stop', 'reverse', 'braking'],
          ['press forward', 'reverse', 'the reverse contactor bars the forward coil'],
          ['stands', 'forward', 'the button is still held down'],
        ],
      },
      {
        law: 'start and stop together do not start',
        control,
        rows: [
          [['press forward', 'press stop'], 'none', 'stop is stronger than start'],
          ['release forward', 'none', 'nothing was started'],
          ['release stop', 'none', 'nothing was started'],
        ],
      },
      {
        law: 'a shaft turned backwards by hand starts nothing',
        control,
        rows: [
          ['turns reverse', 'none', 'one direction: only forward rotation is braked'],
          ['stands', 'none', 'no command'],
        ],
      },
    ]);
  checkTables([
    {
      law: 'without a memory a shaft turned forward by hand brings the reverse contactor in',
      control: plain,
      rows: [
        ['turns forward', 'reverse', 'nothing tells a hand from a motor: the flaw of the plain circuit'],
        ['stands', 'none', 'the switch opens'],
      ],
    },
    {
      law: 'with a memory relay a shaft turned by hand starts nothing, before a run and after it',
      control: memory,
      rows: [
        ['turns forward', 'none', 'no contactor has driven the machine'],
        ['stands', 'none', 'no command'],
        ['press forward', 'forward', 'start'],
        ['release forward', 'forward', 'held'],
        ['turns forward', 'forward', 'running'],
        ['press stop', 'reverse', 'the memory relay lets it brake'],
        ['release stop', 'reverse', 'braking'],
        ['stands', 'none', 'the switch ends the braking and the memory'],
        ['turns forward', 'none', 'the memory has dropped'],
      ],
    },
    {
      law: 'the memory of a run that never reached the pick-up speed does not outlast it',
      control: memory,
      rows: [
        ['press forward', 'forward', 'start'],
        ['release forward', 'forward', 'held'],
        ['press stop', 'none', 'too slow for the switch'],
        ['release stop', 'none', 'coasting'],
        ['turns forward', 'none', 'turned by hand: no contactor drives it'],
      ],
    },
    {
      law: 'with a lockout a shaft turned by hand starts nothing, and a run is braked',
      control: plain,
      lockout: true,
      rows: [
        ['turns forward', 'none', 'the solenoid keeps the switch from being actuated'],
        ['stands', 'none', 'no command'],
        ['press forward', 'forward', 'start; the solenoid lets the switch go'],
        ['release forward', 'forward', 'held'],
        ['turns forward', 'forward', 'running'],
        ['press stop', 'reverse', 'the switch is actuated and stays so'],
        ['release stop', 'reverse', 'braking'],
        ['stands', 'none', 'the switch opens'],
        ['turns forward', 'none', 'locked again'],
      ],
    },
  ]);
});
