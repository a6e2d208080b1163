/**
 * The change-over timer: a contactor is energised only when the other one has been out for its time. Written from the description.
 */
import { describe } from 'vitest';
import { checkTables } from '../../../support/truthTable.ts';

const changeoverTimer = 0.3;

const OTHER = { forward: 'reverse', reverse: 'forward' } as const;

describe('the change-over timer', () => {
  checkTables(
    (['throughStop', 'direct', 'antiPlugging', 'plugStopBoth', 'jog'] as const).flatMap((scheme) =>
      (['forward', 'reverse'] as const).map((way) => ({
        law: `after ${way}, the same direction starts at once, the other one when its time has passed`,
        control: { scheme, changeoverTimer },
        rows: [
          [`press ${way}`, way, 'both have been out for long'],
          ['press stop', 'none', 'the time begins'],
          [`release ${way}`, 'none', 'the time runs'],
          ['release stop', 'none', 'the time runs'],
          [`press ${way}`, way, 'the other contactor has been out for long'],
          ['press stop', 'none', 'the time begins anew'],
          [`release ${way}`, 'none', 'no command is left, in a run relay either'],
          ['release stop', 'none', 'no command is left'],
          [`press ${OTHER[way]}`, 'none', 'the other direction waits'],
          ['change-over time passes', OTHER[way], 'the button is held down'],
          ['change-over time passes', OTHER[way], 'the timer drops nothing'],
        ] as const,
      })),
    ),
  );

  checkTables([
    {
      law: 'a start right after braking waits for its time',
      control: { scheme: 'plugStop', changeoverTimer },
      rows: [
        ['press forward', 'forward', 'start'],
        ['release forward', 'forward', 'held'],
        ['turns forward', 'forward', 'running'],
        ['press stop', 'none', 'the time runs'],
        ['release stop', 'none', 'the time runs'],
        ['change-over time passes', 'reverse', 'braking'],
        ['stands', 'none', 'the switch ends it; the time begins anew'],
        ['press forward', 'none', 'the time runs'],
        ['change-over time passes', 'forward', 'the button is held down'],
      ],
    },
    {
      law: 'after long rest a start does not wait, and the contactor that is in stays in',
      control: { scheme: 'throughStop', changeoverTimer },
      rows: [
        ['press forward', 'forward', 'both have been out for long'],
        ['release forward', 'forward', 'held'],
        ['change-over time passes', 'forward', 'the timer drops nothing'],
      ],
    },
    {
      law: 'a held button waits for the time, a press shorter than the time is lost',
      control: { scheme: 'throughStop', changeoverTimer },
      rows: [
        ['press forward', 'forward', 'start'],
        ['release forward', 'forward', 'held'],
        ['press stop', 'none', 'the time begins'],
        ['release stop', 'none', 'the time runs'],
        ['press reverse', 'none', 'the time runs'],
        ['release reverse', 'none', 'no contactor was in to hold'],
        ['change-over time passes', 'none', 'no command is left'],
        ['press reverse', 'reverse', 'the time has passed'],
        ['release reverse', 'reverse', 'held'],
        ['press stop', 'none', 'the time begins anew'],
        ['release stop', 'none', 'the time runs'],
        ['press reverse', 'reverse', 'the same direction does not wait'],
      ],
    },
    {
      law: 'a direct reversal waits for the time',
      control: { scheme: 'direct', changeoverTimer },
      rows: [
        ['press forward', 'forward', 'start'],
        ['release forward', 'forward', 'held'],
        ['press reverse', 'none', 'forward has dropped; the time runs'],
        ['change-over time passes', 'reverse', 'the button is held down'],
        ['release reverse', 'reverse', 'held'],
      ],
    },
    {
      law: 'anti-plugging waits for the low speed and for the time',
      control: { scheme: 'antiPlugging', changeoverTimer },
      rows: [
        ['press forward', 'forward', 'start'],
        ['release forward', 'forward', 'held'],
        ['turns forward', 'forward', 'running'],
        ['press reverse', 'none', 'blocked, and the time runs'],
        ['change-over time passes', 'none', 'blocked'],
        ['stands', 'reverse', 'the button is held down'],
      ],
    },
    ...([false, true] as const).map((memoryRelay) => ({
      law: 'braking begins after the time',
      control: { scheme: 'plugStop', memoryRelay, changeoverTimer } as const,
      rows: [
        ['press forward', 'forward', 'start'],
        ['release forward', 'forward', 'held'],
        ['turns forward', 'forward', 'running'],
        ['press stop', 'none', 'forward has dropped; the time runs'],
        ['release stop', 'none', 'the time runs'],
        ['change-over time passes', 'reverse', 'braking'],
        ['stands', 'none', 'the switch ends it'],
      ] as const,
    })),
    ...([false, true] as const).map((memoryRelay) => ({
      law: 'braking begins after the time, in both directions',
      control: { scheme: 'plugStopBoth', memoryRelay, changeoverTimer } as const,
      rows: [
        ['press reverse', 'reverse', 'start'],
        ['release reverse', 'reverse', 'held'],
        ['turns reverse', 'reverse', 'running'],
        ['press stop', 'none', 'reverse has dropped; the time runs'],
        ['release stop', 'none', 'the time runs'],
        ['change-over time passes', 'forward', 'braking'],
        ['stands', 'none', 'the switch ends it'],
      ] as const,
    })),
    {
      law: 'a run relay remembers a press that is shorter than the time',
      control: { scheme: 'plugStopBoth', memoryRelay: true, changeoverTimer },
      rows: [
        ['press forward', 'forward', 'start'],
        ['release forward', 'forward', 'held'],
        ['press reverse', 'none', 'forward has dropped; the time runs'],
        ['release reverse', 'none', 'the run relay holds itself'],
        ['change-over time passes', 'reverse', 'the run relay is in'],
        ['press forward', 'none', 'reverse has dropped; the time runs'],
        ['release forward', 'none', 'the run relay holds itself'],
        ['change-over time passes', 'forward', 'the run relay is in'],
      ],
    },
    {
      law: 'the time after a jog is waited for in both directions',
      control: { scheme: 'jog', changeoverTimer },
      rows: [
        ['press forward', 'forward', 'in while the button is held'],
        ['release forward', 'none', 'too slow to brake; the time runs'],
        ['press reverse', 'none', 'the time runs'],
        ['change-over time passes', 'reverse', 'the button is held down'],
        ['release reverse', 'none', 'the time runs'],
        ['press forward', 'none', 'the time runs'],
        ['change-over time passes', 'forward', 'the button is held down'],
      ],
    },
    {
      law: 'a machine that has become slow within the time is not braked any more',
      control: { scheme: 'plugStop', memoryRelay: true, changeoverTimer },
      rows: [
        ['press forward', 'forward', 'start'],
        ['release forward', 'forward', 'held'],
        ['turns forward', 'forward', 'running'],
        ['press stop', 'none', 'the time runs'],
        ['release stop', 'none', 'the time runs'],
        ['stands', 'none', 'slow'],
        ['change-over time passes', 'none', 'nothing to brake'],
      ],
    },
    {
      law: 'a jog is braked after the time',
      control: { scheme: 'jog', memoryRelay: true, changeoverTimer },
      rows: [
        ['press forward', 'forward', 'in while the button is held'],
        ['turns forward', 'forward', 'running'],
        ['release forward', 'none', 'the time runs'],
        ['change-over time passes', 'reverse', 'braking'],
        ['stands', 'none', 'the switch ends it'],
      ],
    },
  ]);
});
