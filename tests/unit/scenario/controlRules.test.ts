import { describe, expect, it } from 'vitest';
import { controlledScenario, PRESS_FORWARD, SWITCH } from './controlledScenario.ts';
import { codesOf, type Group, minimalScenario, problemsOf } from './minimalScenario.ts';
import { accepts, type Refusal, refuses } from './refusals.ts';

const withSwitch = { zeroSpeedSwitch: SWITCH };
const plugging = { scheme: 'plug to stop' };
const inching = { scheme: 'inching' };

const ofTheCircuit: readonly Refusal[] = [
  ...['plug to stop', 'plug to stop both directions', 'inching'].map(
    (scheme): Refusal => [
      `${scheme} without a zero-speed switch`,
      controlledScenario({ scheme }),
      'conflict starter.zeroSpeedSwitch',
      'a device working only on time is not permitted by IEC 60204-1',
      'dropOutSpeed: 50 rpm',
    ],
  ),
  [
    'anti-plugging without a zero-speed switch',
    controlledScenario({ scheme: 'anti-plugging' }),
    'conflict starter.zeroSpeedSwitch',
    'while the machine turns the other way',
    'another scheme',
  ],
  [
    'a scheme that brakes with the switch off',
    controlledScenario(plugging, { zeroSpeedSwitch: 'off' }),
    'conflict starter.zeroSpeedSwitch',
    'plug to stop',
    'its speeds',
  ],
  ...['reversing through stop', 'reversing directly', 'anti-plugging'].map(
    (scheme): Refusal => [
      `a memory relay in ${scheme}`,
      controlledScenario({ scheme, memoryRelay: true }, withSwitch),
      'conflict starter.control.memoryRelay',
      'does not brake',
      '`plug to stop`',
    ],
  ),
  ...['reversing through stop', 'reversing directly', 'anti-plugging'].map(
    (scheme): Refusal => [
      `category 1 in ${scheme}`,
      controlledScenario({ scheme, emergencyStop: { category: 1, limit: '2 s' } }, withSwitch),
      'conflict starter.control.emergencyStop.category',
      'does not brake',
      'category 0',
    ],
  ),
  [
    'a lockout with anti-plugging',
    controlledScenario({ scheme: 'anti-plugging' }, { zeroSpeedSwitch: { ...SWITCH, lockout: 'yes' } }),
    'conflict starter.zeroSpeedSwitch.lockout',
    'keeps the switch from showing a shaft that the load turns',
    '`plug to stop`',
  ],
  [
    'category 1 without a limit',
    controlledScenario({ ...plugging, emergencyStop: { category: 1 } }, withSwitch),
    'conflict starter.control.emergencyStop.limit',
    'is missing',
    '`2 s`',
  ],
  [
    'category 0 with a limit',
    controlledScenario({ emergencyStop: { category: 0, limit: '2 s' } }),
    'conflict starter.control.emergencyStop.limit',
    'category 0, which does not brake',
    'category 1',
  ],
  [
    'a limit of no time',
    controlledScenario({ ...plugging, emergencyStop: { category: 1, limit: '0 s' } }, withSwitch),
    'outOfRange starter.control.emergencyStop.limit',
    '0 s is out of range',
    'above 0 s to 60 s',
  ],
  [
    'a change-over delay beside a control circuit',
    controlledScenario({}, { changeoverDelay: '20 ms' }),
    'conflict starter.changeoverDelay',
    'the dead time is what comes out',
    '`changeoverTimer` under control',
  ],
  [
    'a dead time beside a control circuit, however short',
    controlledScenario({}, { deadTime: '1 ms', closingTime: '20 ms' }),
    'conflict starter.deadTime',
    'the dead time is what comes out',
    '`changeoverTimer` under control',
  ],
  [
    'a lockout without a control circuit',
    minimalScenario({ starter: { zeroSpeedSwitch: { ...SWITCH, lockout: true } } }),
    'conflict starter.zeroSpeedSwitch.lockout',
    'whose contactors feed its solenoid',
    '`control` under starter',
  ],
  [
    'a coil that drops out above its pick-up voltage',
    controlledScenario({ coilVoltage: { pickUp: '55 %', dropOut: '80 %' } }),
    'conflict starter.control.coilVoltage.dropOut',
    'is not below the pick-up voltage',
    'a drop-out voltage below pickUp',
  ],
  [
    'a coil that drops out at a hundredth of its voltage',
    controlledScenario({ coilVoltage: { pickUp: '80 %', dropOut: '1 %' } }),
    'outOfRange starter.control.coilVoltage.dropOut',
    '"1 %" is out of range',
    'from 10 % to 100 %',
  ],
  [
    'a relay of two seconds',
    controlledScenario({ relayTime: '2 s' }),
    'outOfRange starter.control.relayTime',
    '2 s is out of range',
    'from 0 s to 1 s',
  ],
  [
    'a program that scans every two seconds',
    controlledScenario({ scanTime: '2 s' }),
    'outOfRange starter.control.scanTime',
    '2 s is out of range',
    'from 0 s to 1 s',
  ],
  [
    'an overload relay whose setting nothing tells',
    controlledScenario({ overload: { class: 10 } }),
    'missingKey starter.control.overload.setting',
    'the machine states no rated current',
    '`current` under rated',
  ],
  [
    'an overload relay without a class',
    controlledScenario({ overload: { setting: '14.6 A' } }),
    'missingKey starter.control.overload.class',
    'is missing',
    '`10A`',
  ],
  [
    'a reverse drop-out speed at the reverse pick-up speed',
    controlledScenario(
      {},
      { zeroSpeedSwitch: { ...SWITCH, reverse: { dropOutSpeed: '90 rpm', pickUpSpeed: '90 rpm' } } },
    ),
    'conflict starter.zeroSpeedSwitch.reverse.dropOutSpeed',
    'is not below the pick-up speed',
    'below pickUpSpeed',
  ],
  [
    'a reverse pick-up speed at synchronous speed',
    controlledScenario(
      {},
      { zeroSpeedSwitch: { ...SWITCH, reverse: { dropOutSpeed: '90 rpm', pickUpSpeed: '1800 rpm' } } },
    ),
    'conflict starter.zeroSpeedSwitch.reverse.pickUpSpeed',
    'is not below the synchronous speed of 1800 rpm',
    'a lower pick-up speed',
  ],
  ...['running forward', 'running reverse'].map(
    (initial): Refusal => [
      `inching of a machine that is ${initial} at first`,
      controlledScenario(inching, withSwitch, { initial }),
      'conflict initial',
      'only while a button is held',
      '`rest`',
    ],
  ),
  [
    'plug to stop of a machine that runs in reverse at first',
    controlledScenario(plugging, withSwitch, { initial: 'running reverse' }),
    'conflict initial',
    'plug to stop runs in one direction',
    '`running forward`',
  ],
];

describe('refused', () => refuses(ofTheCircuit));

describe('accepted', () =>
  accepts([
    ['a memory relay where it brakes', controlledScenario({ ...plugging, memoryRelay: true }, withSwitch)],
    [
      'category 1 where it brakes',
      controlledScenario({ ...inching, emergencyStop: { category: 1, limit: '2 s' } }, withSwitch),
    ],
    ['schemes that only reverse, without a switch', controlledScenario({ scheme: 'reversing directly' })],
  ]));

const switchFault = { kind: 'zero-speed switch', mode: 'stuck open' };
const interlock = { kind: 'mechanical interlock missing' };
const neverTrips = { kind: 'overload never trips' };
const faults = (...list: Group[]) => ({ faults: list });
const commands = (word: string) => ({ actions: [{ at: '0 s', do: word }] });

it('a control circuit that is wrong in several places comes with all its problems at once', () => {
  const scenario = controlledScenario(
    { memoryRelay: 'maybe', relayTime: 10, emergencyStop: { category: 1, limit: '1 s' } },
    { changeoverDelay: '10 ms', ...faults(switchFault, interlock, { kind: 'fire' }, neverTrips) },
    {
      actions: [
        { at: '0 s', do: 'plug' },
        { at: '0 s', do: 'press reset' },
      ],
    },
  );
  expect(codesOf(scenario)).toEqual([
    'unknownWord starter.control.memoryRelay',
    'missingUnit starter.control.relayTime',
    'unknownWord starter.faults.2.kind',
    'conflict starter.control.emergencyStop.category',
    'conflict starter.faults.0',
    'conflict starter.faults.3',
    'conflict actions.0.do',
    'conflict actions.1.do',
    'conflict starter.changeoverDelay',
  ]);
});

it('nothing is concluded from a value that was refused already', () => {
  const only = (scenario: Group) => codesOf(scenario);
  expect(only(controlledScenario({ scheme: 'plugging' }))).toEqual(['unknownWord starter.control.scheme']);
  expect(only(controlledScenario(plugging, { zeroSpeedSwitch: 'on' }))).toEqual([
    'wrongType starter.zeroSpeedSwitch',
  ]);
  expect(only(controlledScenario({ readyRelay: 3 }, {}, commands('press reset')))).toEqual([
    'wrongType starter.control.readyRelay',
  ]);
  expect(only(controlledScenario({ overload: 3 }, faults(neverTrips), commands('trip overload')))).toEqual([
    'wrongType starter.control.overload',
  ]);
  expect(only(controlledScenario({ mechanicalInterlock: 3 }, faults(interlock)))).toEqual([
    'wrongType starter.control.mechanicalInterlock',
  ]);
  expect(only(minimalScenario({ starter: { control: 'wired' }, actions: [PRESS_FORWARD] }))).toEqual([
    'wrongType starter.control',
  ]);
});

it('a contradiction has the line of the key that it is about', () => {
  const text = JSON.stringify(controlledScenario({ memoryRelay: true }), null, 1);
  const line = text.split('\n').findIndex((one) => one.includes('memoryRelay')) + 1;
  expect(problemsOf(text)[0]?.line).toBe(line);
});
