/**
 * What jogging does, hand by hand, written from the description of the scheme and not from its table. Common practice, no
 * source. `turns forward` and `stands`: what the zero-speed switch sees.
 */
import { describe } from 'vitest';
import { checkTables } from '../../../support/truthTable.ts';

describe('jogging with plug to stop', () => {
  const plain = { scheme: 'jog' } as const;
  const memory = { scheme: 'jog', memoryRelay: true } as const;
  for (const control of [plain, memory])
    checkTables([
      {
        law: 'letting go at speed brakes until the switch opens, in both directions',
        control,
        rows: [
          ['press forward', 'forward', 'in while the button is held'],
          ['turns forward', 'forward', 'running'],
          ['release forward', 'reverse', 'the opposite contactor brakes'],
          ['stands', 'none', 'the switch ends it'],
          ['press reverse', 'reverse', 'in while the button is held'],
          ['turns reverse', 'reverse', 'running'],
          ['release reverse', 'forward', 'the opposite contactor brakes'],
          ['stands', 'none', 'the switch ends it'],
        ],
      },
      {
        law: 'a short jog below the pick-up speed coasts out',
        control,
        rows: [
          ['press forward', 'forward', 'in while the button is held'],
          ['release forward', 'none', 'no hold-in, and too slow for the switch'],
          ['press reverse', 'reverse', 'in while the button is held'],
          ['release reverse', 'none', 'no hold-in, and too slow for the switch'],
        ],
      },
      {
        law: 'stop is stronger than a held button, and brakes',
        control,
        rows: [
          ['press forward', 'forward', 'in while the button is held'],
          ['turns forward', 'forward', 'running'],
          ['press stop', 'reverse', 'a stop brakes'],
          ['stands', 'none', 'at rest; stop is still pressed'],
          ['release forward', 'none', 'no command'],
          ['release stop', 'none', 'no command'],
        ],
      },
      {
        law: 'both buttons at once are no command: nothing starts from rest, and a running machine is braked',
        control,
        rows: [
          [['press forward', 'press reverse'], 'none', 'each button opens the other circuit'],
          ['release reverse', 'forward', 'one button is left'],
          ['turns forward', 'forward', 'running'],
          ['press reverse', 'reverse', 'no command is left: braking'],
          ['stands', 'none', 'the switch ends the braking; both are still pressed'],
          ['release forward', 'reverse', 'one button is left'],
        ],
      },
      {
        law: 'the same button while it brakes waits for the switch; the other one makes the braking a run',
        control,
        rows: [
          ['press forward', 'forward', 'in while the button is held'],
          ['turns forward', 'forward', 'running'],
          ['release forward', 'reverse', 'braking'],
          ['press forward', 'reverse', 'the braking contactor bars the forward coil'],
          ['stands', 'forward', 'the button is still held down'],
          ['turns forward', 'forward', 'running'],
          ['release forward', 'reverse', 'braking'],
          ['press reverse', 'reverse', 'the contactor that brakes is to run'],
          ['stands', 'reverse', 'the button is held down'],
          ['release reverse', 'none', 'no hold-in'],
        ],
      },
      {
        law: 'a button held down while stop is pressed and let go starts again',
        control,
        rows: [
          ['press reverse', 'reverse', 'in while the button is held'],
          ['press stop', 'none', 'stop is stronger than start; too slow to brake'],
          ['release stop', 'reverse', 'nothing asks whether the button had been let go'],
          ['release reverse', 'none', 'no hold-in'],
        ],
      },
    ]);
  checkTables([
    {
      law: 'without a memory a shaft turned by hand brings the opposite contactor in',
      control: plain,
      rows: [
        ['turns forward', 'reverse', 'nothing tells a hand from a motor'],
        ['turns reverse', 'forward', 'nothing tells a hand from a motor'],
        ['stands', 'none', 'the switch opens'],
      ],
    },
    {
      law: 'with memory relays a shaft turned by hand starts nothing',
      control: memory,
      rows: [
        ['turns forward', 'none', 'no contactor has driven the machine'],
        ['turns reverse', 'none', 'no contactor has driven the machine'],
        ['stands', 'none', 'no command'],
        ['press forward', 'forward', 'in while the button is held'],
        ['turns forward', 'forward', 'running'],
        ['release forward', 'reverse', 'braking'],
        ['stands', 'none', 'at rest'],
        ['turns forward', 'none', 'the memory has dropped'],
        ['turns reverse', 'none', 'braking is no run: nothing is to be braked'],
      ],
    },
  ]);
});
