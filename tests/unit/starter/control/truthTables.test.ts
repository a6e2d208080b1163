/**
 * What the schemes that do not brake by themselves do, hand by hand, written from the descriptions of the schemes and not from
 * their tables. Common practice, no source. `turns forward` and `stands`: what the zero-speed switch sees.
 */
import { describe, expect, it } from 'vitest';
import { controlCircuit } from '../../../../src/starter/control/schemes.ts';
import { controlBench } from '../../../support/controlBench.ts';
import { checkTables, PLAIN_CONTROL } from '../../../support/truthTable.ts';

describe('reversing only through stop', () => {
  const control = { scheme: 'throughStop' } as const;
  checkTables([
    {
      law: 'a contactor holds itself in, and the opposite button does nothing until stop',
      control,
      rows: [
        ['press forward', 'forward', 'the button closes the coil circuit'],
        ['release forward', 'forward', 'its own contact holds the contactor'],
        ['press reverse', 'forward', 'the forward contactor bars the reverse coil'],
        ['release reverse', 'forward', 'nothing was started'],
        ['press stop', 'none', 'stop opens the hold-in'],
        ['release stop', 'none', 'the hold-in was lost'],
        ['press reverse', 'reverse', 'nothing bars it any more'],
        ['release reverse', 'reverse', 'its own contact holds the contactor'],
        ['press forward', 'reverse', 'the reverse contactor bars the forward coil'],
        ['release forward', 'reverse', 'nothing was started'],
        ['press stop', 'none', 'stop opens the hold-in'],
        ['release stop', 'none', 'the hold-in was lost'],
      ],
    },
    {
      law: 'of both buttons at once the quicker contactor wins and stays',
      control,
      race: true,
      rows: [
        [['press forward', 'press reverse'], 'forward', 'the first armature takes the other coil away'],
        ['release forward', 'forward', 'held; the reverse button is still barred'],
        ['press stop', 'none', 'stop stands ahead of both'],
        ['release stop', 'reverse', 'the reverse button is still held down'],
      ],
    },
    {
      law: 'a button that was held while the other direction ran has its way only after a stop',
      control,
      rows: [
        ['press reverse', 'reverse', 'first'],
        ['press forward', 'reverse', 'barred'],
        ['release reverse', 'reverse', 'held by its own contact'],
        ['press stop', 'none', 'stop is stronger than a held button'],
        ['release stop', 'forward', 'the held button is a command as soon as stop is let go'],
        ['release forward', 'forward', 'held by its own contact'],
      ],
    },
    {
      law: 'a button held down while stop is pressed and let go starts again',
      control,
      rows: [
        ['press forward', 'forward', 'start'],
        ['press stop', 'none', 'stop is stronger than start'],
        ['release stop', 'forward', 'nothing asks whether the button had been let go'],
        ['press stop', 'none', 'stop is stronger than start'],
        ['release forward', 'none', 'stopped'],
        ['release stop', 'none', 'no command is left'],
      ],
    },
    {
      law: 'stop coasts, and a shaft turned by hand starts nothing',
      control,
      rows: [
        ['turns forward', 'none', 'no command'],
        ['turns reverse', 'none', 'no command'],
        ['stands', 'none', 'no command'],
        ['press forward', 'forward', 'start'],
        ['release forward', 'forward', 'held'],
        ['turns forward', 'forward', 'running'],
        ['press stop', 'none', 'coasting'],
        ['release stop', 'none', 'coasting'],
        ['press reverse', 'reverse', 'nothing asks for the speed: the motor is plugged by hand'],
      ],
    },
  ]);
});

describe('reversing directly', () => {
  const control = { scheme: 'direct' } as const;
  checkTables([
    {
      law: 'the opposite button drops the running contactor and starts the other',
      control,
      rows: [
        ['press forward', 'forward', 'the button closes the coil circuit'],
        ['release forward', 'forward', 'its own contact holds the contactor'],
        ['turns forward', 'forward', 'running'],
        ['press reverse', 'reverse', 'its break contact dropped the forward contactor: the motor is plugged'],
        ['release reverse', 'reverse', 'held by its own contact'],
        ['stands', 'reverse', 'nothing ends the plugging'],
        ['turns reverse', 'reverse', 'it has run up the other way'],
        ['press forward', 'forward', 'the same the other way round'],
        ['release forward', 'forward', 'held'],
        ['press stop', 'none', 'stop opens the hold-in'],
        ['release stop', 'none', 'stop does not brake'],
      ],
    },
    {
      law: 'both buttons at once start nothing and drop what runs',
      control,
      rows: [
        [['press forward', 'press reverse'], 'none', 'each button opens the other coil circuit'],
        ['release forward', 'reverse', 'one button is left'],
        ['release reverse', 'reverse', 'held'],
        [['press forward', 'press reverse'], 'none', 'each button opens the other coil circuit'],
        [['release forward', 'release reverse'], 'none', 'the hold-in was lost'],
      ],
    },
    {
      law: 'a button held down while stop is pressed and let go starts again',
      control,
      rows: [
        ['press reverse', 'reverse', 'start'],
        ['press stop', 'none', 'stop is stronger than start'],
        ['release stop', 'reverse', 'nothing asks whether the button had been let go'],
        ['press stop', 'none', 'stop is stronger than start'],
        ['release reverse', 'none', 'stopped'],
        ['release stop', 'none', 'no command is left'],
      ],
    },
    {
      law: 'the opposite button pressed again and again reverses each time',
      control,
      rows: [
        ['press forward', 'forward', 'start'],
        ['release forward', 'forward', 'held'],
        ['press reverse', 'reverse', 'reversed'],
        ['release reverse', 'reverse', 'held'],
        ['press reverse', 'reverse', 'it runs already'],
        ['release reverse', 'reverse', 'held'],
        ['press forward', 'forward', 'reversed'],
        ['release forward', 'forward', 'held'],
      ],
    },
    {
      law: 'the contacts alone keep the contactors apart, in both directions of reversal',
      control,
      setUp: { mechanicalInterlock: false },
      rows: [
        ['press forward', 'forward', 'start'],
        ['release forward', 'forward', 'held'],
        ['press reverse', 'reverse', 'forward has dropped before reverse is fed'],
        ['release reverse', 'reverse', 'held'],
        ['press forward', 'forward', 'reverse has dropped before forward is fed'],
      ],
    },
    {
      law: 'a shaft turned by hand starts nothing',
      control,
      rows: [
        ['turns forward', 'none', 'no command'],
        ['turns reverse', 'none', 'no command'],
      ],
    },
  ]);

  it('the incoming contactor moves only after the outgoing one has dropped', () => {
    const bench = controlBench(controlCircuit({ ...PLAIN_CONTROL, ...control }, false));
    bench.act('press forward');
    bench.act('release forward');
    bench.act('press reverse');
    expect(bench.moves().filter((one) => one.includes('Contactor'))).toEqual([
      'forwardContactor out',
      'reverseContactor in',
    ]);
  });
});

describe('anti-plugging', () => {
  const control = { scheme: 'antiPlugging' } as const;
  checkTables([
    {
      law: 'the opposite button stops the motor, and starts it only once the speed is low',
      control,
      rows: [
        ['press forward', 'forward', 'start'],
        ['release forward', 'forward', 'held by its own contact'],
        ['turns forward', 'forward', 'running'],
        [
          'press reverse',
          'none',
          'dropped by the button; reverse is blocked while the machine turns forward',
        ],
        ['release reverse', 'none', 'coasting'],
        ['press reverse', 'none', 'still blocked'],
        ['release reverse', 'none', 'coasting'],
        ['stands', 'none', 'a blocked press is not remembered'],
        ['press reverse', 'reverse', 'the speed is low'],
        ['release reverse', 'reverse', 'held'],
        ['turns reverse', 'reverse', 'running'],
        ['press forward', 'none', 'the same the other way round'],
        ['release forward', 'none', 'coasting'],
        ['stands', 'none', 'a blocked press is not remembered'],
        ['press forward', 'forward', 'the speed is low'],
      ],
    },
    {
      law: 'a button held down waits for the low speed',
      control,
      rows: [
        ['press reverse', 'reverse', 'start'],
        ['release reverse', 'reverse', 'held'],
        ['turns reverse', 'reverse', 'running'],
        ['press forward', 'none', 'blocked'],
        ['stands', 'forward', 'the button is still a command'],
        ['release forward', 'forward', 'held'],
      ],
    },
    {
      law: 'the direction of rotation is not blocked',
      control,
      rows: [
        ['press forward', 'forward', 'start'],
        ['release forward', 'forward', 'held'],
        ['turns forward', 'forward', 'running'],
        ['press stop', 'none', 'coasting'],
        ['release stop', 'none', 'coasting'],
        ['press forward', 'forward', 'it turns this way anyway'],
      ],
    },
    {
      law: 'below the pick-up speed it reverses directly',
      control,
      rows: [
        ['press forward', 'forward', 'start'],
        ['release forward', 'forward', 'held'],
        ['press reverse', 'reverse', 'the switch does not show forward'],
      ],
    },
    {
      law: 'stop ends a run in either direction',
      control,
      rows: [
        ['press reverse', 'reverse', 'start'],
        ['release reverse', 'reverse', 'held'],
        ['press stop', 'none', 'stop opens the hold-in'],
        ['release stop', 'none', 'the hold-in was lost'],
        ['press forward', 'forward', 'start'],
        ['release forward', 'forward', 'held'],
        ['press stop', 'none', 'stop opens the hold-in'],
        ['release stop', 'none', 'the hold-in was lost'],
      ],
    },
    {
      law: 'the contacts alone keep the contactors apart, in both directions of reversal',
      control,
      setUp: { mechanicalInterlock: false },
      rows: [
        ['press forward', 'forward', 'start'],
        ['release forward', 'forward', 'held'],
        ['press reverse', 'reverse', 'slow: forward has dropped before reverse is fed'],
        ['release reverse', 'reverse', 'held'],
        ['press forward', 'forward', 'slow: reverse has dropped before forward is fed'],
      ],
    },
    {
      law: 'a contactor drops when the load turns the machine against it',
      control,
      rows: [
        ['press reverse', 'reverse', 'start'],
        ['release reverse', 'reverse', 'held'],
        ['turns forward', 'none', 'reverse is blocked while the machine turns forward'],
        ['stands', 'none', 'the hold-in was lost'],
        ['press forward', 'forward', 'start'],
        ['release forward', 'forward', 'held'],
        ['turns reverse', 'none', 'forward is blocked while the machine turns in reverse'],
      ],
    },
    {
      law: 'a shaft turned by hand blocks the opposite start and starts nothing',
      control,
      rows: [
        ['turns reverse', 'none', 'no command'],
        ['press forward', 'none', 'the machine turns the other way'],
        ['release forward', 'none', 'no command'],
        ['press reverse', 'reverse', 'it turns this way'],
      ],
    },
    {
      law: 'both buttons at once start nothing and drop what runs',
      control,
      rows: [
        [['press forward', 'press reverse'], 'none', 'each button opens the other coil circuit'],
        ['release reverse', 'forward', 'one button is left'],
        ['release forward', 'forward', 'held'],
        [['press forward', 'press reverse'], 'none', 'each button opens the other coil circuit'],
        [['release forward', 'release reverse'], 'none', 'the hold-in was lost'],
      ],
    },
  ]);
});
