import { describe } from 'vitest';
import { controlledScenario, PRESS_FORWARD, SWITCH } from './controlledScenario.ts';
import { type Group, minimalScenario } from './minimalScenario.ts';
import { accepts, type Refusal, refuses } from './refusals.ts';

const withSwitch = { zeroSpeedSwitch: SWITCH };
const overload = { setting: '14.6 A', class: 10 };
const commands = (word: string) => ({ actions: [{ at: '0 s', do: word }] });
const plugging = { scheme: 'plug to stop' };
const inching = { scheme: 'inching' };
const both = { scheme: 'plug to stop both directions' };

const ofActions: readonly Refusal[] = [
  ...[
    ['start forward', {}, '`press forward`'],
    ['start reverse', {}, '`press reverse`'],
    ['coast', {}, '`press stop`'],
    ['stop', {}, '`press stop`'],
    ['plug', both, '`press stop`'],
    ['plug', { scheme: 'reversing directly' }, '`press reverse`'],
    ['plug', inching, '`release forward`'],
  ].map(([word, control, expected]): Refusal => {
    const scheme = (control as Group).scheme ?? 'reversing through stop';
    return [
      `${word} with the scheme ${scheme}`,
      controlledScenario(control as Group, withSwitch, commands(`${word}`)),
      'conflict actions.0.do',
      'is a command to the coils',
      `${expected}`,
    ];
  }),
  ...[
    ['press forward', '`start forward`'],
    ['hold reverse', '`start reverse`'],
    ['press stop', '`coast` or `plug`'],
    ['press emergency stop', '`coast`'],
    ['trip overload', '`control` under starter'],
  ].map(
    ([word, expected]): Refusal => [
      `${word} without a control circuit`,
      minimalScenario(commands(`${word}`)),
      'conflict actions.0.do',
      'needs a control circuit',
      `${expected}`,
    ],
  ),
  ...['press reverse', 'hold reverse', 'release reverse'].map(
    (word): Refusal => [
      `${word} with plug to stop`,
      controlledScenario(plugging, withSwitch, commands(word)),
      'conflict actions.0.do',
      'plug to stop runs in one direction',
      '`plug to stop both directions`',
    ],
  ),
  [
    'a reset button without a ready relay',
    controlledScenario({ overload }, {}, commands('press reset')),
    'conflict actions.0.do',
    'only the ready relay has a reset button',
    '`reset overload`',
  ],
  ...['trip overload', 'reset overload'].map(
    (word): Refusal => [
      `${word} without an overload relay`,
      controlledScenario({}, {}, commands(word)),
      'conflict actions.0.do',
      'an overload relay that is not there',
      '`overload` under control',
    ],
  ),
  ...['hold forward', 'release forward', 'press emergency stop', 'trip overload'].map(
    (word): Refusal => [
      `a duration of ${word}`,
      controlledScenario({ overload }, {}, { actions: [{ at: '0 s', do: word, for: '1 s' }] }),
      'conflict actions.0.for',
      `has no meaning with \`${word}\``,
      'press forward, reverse, stop or reset',
    ],
  ),
  [
    'a duration of a command',
    minimalScenario({ actions: [{ at: '0 s', do: 'start forward', for: '1 s' }] }),
    'conflict actions.0.for',
    'has no meaning with `start forward`',
    'or this key left out',
  ],
  [
    'a press of no time',
    controlledScenario({}, {}, { actions: [{ ...PRESS_FORWARD, for: '0 s' }] }),
    'outOfRange actions.0.for',
    '0 s is out of range',
    'above 0 s',
  ],
  [
    'buttons in descending order',
    controlledScenario({}, {}, { actions: [{ at: '1 s', do: 'press forward' }, PRESS_FORWARD] }),
    'conflict actions.1.at',
    'is earlier than the action before it',
    'a time not before 1 s',
  ],
  [
    'an end while the last button is still pressed',
    controlledScenario({}, {}, { solver: { endTime: '0.2 s' } }),
    'conflict solver.endTime',
    'a button let go at 0.2 s',
    'a time after 0.2 s',
  ],
  [
    'no action with a control circuit',
    controlledScenario({}, {}, { actions: [] }),
    'outOfRange actions',
    'the list is empty',
    'at least one action',
  ],
  [
    'more presses than a run has room for',
    controlledScenario(
      {},
      {},
      { actions: Array.from({ length: 501 }, (_, j) => ({ at: `${j} s`, do: 'press forward' })) },
    ),
    'outOfRange actions',
    'comes to 1002 presses and releases',
    'at most 1000',
  ],
];

describe('refused', () => refuses(ofActions));

describe('accepted', () =>
  accepts([
    [
      'two buttons at one instant',
      controlledScenario({}, {}, { actions: [PRESS_FORWARD, { at: '0 s', do: 'press reverse' }] }),
    ],
    ['an end after the last button is let go', controlledScenario({}, {}, { solver: { endTime: '0.3 s' } })],
  ]));
