import { describe, expect, it } from 'vitest';
import { readScenario } from '../../../src/scenario/readScenario.ts';
import { PLAIN_CONTROL } from '../../support/scenarios.ts';
import { controlledScenario, PRESS_FORWARD, SWITCH } from './controlledScenario.ts';
import { nameplateScenario } from './everyKey.ts';
import { codesOf, type Group, minimalScenario, parseScenario } from './minimalScenario.ts';
import { stubEstimator } from './stubEstimator.ts';

const RPM = Math.PI / 30;
const controlOf = (control: Group, starter: Group = {}, others: Group = {}) =>
  parseScenario(controlledScenario(control, starter, others)).starter.control;
const plugging = { scheme: 'plug to stop' };
const withSwitch = { zeroSpeedSwitch: SWITCH };

function originsOf(scenario: Group): Map<string, string> {
  const { origins } = readScenario(scenario, {}, stubEstimator());
  return new Map(
    origins.map(({ path, value, origin, source }) => [
      path,
      `${value} (${origin}${source === undefined ? '' : `: ${source}`})`,
    ]),
  );
}

it('a file of a page is read as it is meant', () => {
  const text = `
title: Saw
supply: { lineVoltage: 400 V, frequency: 50 Hz }
machine:
  poles: 4
  statorResistance: 0.56 ohm
  statorLeakage: 1.25 ohm
  magnetising: 39 ohm
  cages: [{ resistance: 0.52 ohm, leakage: 1.45 ohm }]
  inertia: 0.036 kg m^2
  rated: { power: 7.5 kW, speed: 1455 rpm, current: 14.6 A }
load: { inertia: 0.05 kg m^2, torque: none }
starter:
  closingTime: 18 ms
  openingTime: 9 ms
  zeroSpeedSwitch: { dropOutSpeed: 60 rpm, pickUpSpeed: 120 rpm, delay: 5 ms }
  control:
    scheme: plug to stop
    memoryRelay: true
    overload: { setting: 14.6 A, class: 10 }
actions:
  - { at: 0 s, do: press forward }
  - { at: 1 s, do: press stop }
`;
  const { starter, actions } = parseScenario(text);
  expect(starter.control).toEqual({
    ...PLAIN_CONTROL,
    scheme: 'plugStop',
    memoryRelay: true,
    overload: { setting: 14.6, tripClass: '10', start: 'cold', memory: 'kept' },
  });
  expect(actions).toEqual([
    { at: 0, do: 'press', button: 'forward' },
    { at: 0.2, do: 'release', button: 'forward' },
    { at: 1, do: 'press', button: 'stop' },
    { at: 1.2, do: 'release', button: 'stop' },
  ]);
});

it('a starter of which no control is stated has none', () => {
  expect('control' in parseScenario(minimalScenario()).starter).toBe(false);
});

describe('the control circuit', () => {
  it('is the plainest of its scheme where nothing more is said', () => {
    expect(controlOf({})).toEqual(PLAIN_CONTROL);
  });

  it.each([
    ['reversing through stop', 'throughStop'],
    ['reversing directly', 'direct'],
    ['plug to stop', 'plugStop'],
    ['plug to stop both directions', 'plugStopBoth'],
    ['anti-plugging', 'antiPlugging'],
    ['inching', 'jog'],
  ])('%s is the scheme %s', (scheme, expected) => {
    expect(controlOf({ scheme }, withSwitch)?.scheme).toBe(expected);
  });

  it('takes yes and no in words and as true and false', () => {
    for (const [written, meant] of [
      ['yes', true],
      [true, true],
      ['no', false],
      [false, false],
    ])
      expect(controlOf({ readyRelay: written, mechanicalInterlock: written })).toMatchObject({
        readyRelay: meant,
        mechanicalInterlock: meant,
      });
  });

  it('has its times in seconds', () => {
    expect(controlOf({ changeoverTimer: '100 ms', relayTime: '25 ms', scanTime: '8 ms' })).toMatchObject({
      changeoverTimer: 0.1,
      relayTime: 0.025,
      scanTime: 0.008,
    });
  });

  it('stops in an emergency by category 0, or by category 1 with its limit', () => {
    const stop = (emergencyStop: Group) =>
      controlOf({ ...plugging, emergencyStop }, withSwitch)?.emergencyStop;
    expect(stop({ category: 0 })).toEqual({ category: 0 });
    expect(stop({ category: 1, limit: '2 s' })).toEqual({ category: 1, limit: 2 });
  });

  it('has coils that feel the voltage, or do not', () => {
    expect(controlOf({ coilVoltage: { pickUp: '80 %', dropOut: 0.55 } })?.coilVoltage).toEqual({
      pickUp: 0.8,
      dropOut: 0.55,
    });
    expect(controlOf({ coilVoltage: 'ignored' })?.coilVoltage).toBeNull();
  });

  it.each([
    [5, '5'],
    ['5', '5'],
    ['10A', '10A'],
    [10, '10'],
    ['10', '10'],
    [20, '20'],
    [30, '30'],
  ])('has an overload relay of class %j', (written, tripClass) => {
    const overload = { setting: '14.6 A', class: written, start: 'warm', memory: 'lost' };
    expect(controlOf({ overload })?.overload).toEqual({
      setting: 14.6,
      tripClass,
      start: 'warm',
      memory: 'lost',
    });
  });

  it('has an overload relay set to the rated current where nothing is said', () => {
    const rated = { machine: { rated: { current: '46.8 A' } } };
    expect(controlOf({ overload: { class: 10 } }, {}, rated)?.overload?.setting).toBe(46.8);
    expect(controlOf({ overload: 'none' })?.overload).toBeNull();
  });

  it('takes the current of a nameplate for the setting, and asks for one where the plate has none', () => {
    const starter = { control: { scheme: 'reversing directly', overload: { class: 10 } } };
    const scenario = (plate: Group) => ({ ...nameplateScenario(plate), starter, actions: [PRESS_FORWARD] });
    // 15 A is the rated current of the stub that stands in for the estimation.
    const plate = { power: '7.5 kW', speed: '1740 rpm', current: '15 A' };
    expect(parseScenario(scenario(plate)).starter.control?.overload?.setting).toBe(15);
    expect(codesOf(scenario({ power: '7.5 kW', speed: '1740 rpm' }))).toEqual([
      'missingKey starter.control.overload.setting',
    ]);
  });

  it('leaves no delay between the coils as a datum: the dead time is what comes out', () => {
    const starter = { openingTime: '9 ms' };
    const scenario = controlledScenario({}, starter);
    expect(parseScenario(scenario).starter).toMatchObject({
      changeoverDelay: 0,
      changeoverGivenAs: 'default',
    });
    expect(originsOf(scenario).has('starter.changeoverDelay')).toBe(false);
    // Without a control circuit it is the opening time.
    expect(parseScenario(minimalScenario({ starter })).starter.changeoverDelay).toBe(0.009);
  });
});

describe('the origins', () => {
  it('list every default of a control circuit, and the relay time as an assumption', () => {
    const origins = originsOf(controlledScenario());
    const listed = [...origins].filter(([path]) => path.startsWith('starter.control.'));
    expect(Object.fromEntries(listed)).toEqual({
      'starter.control.scheme': 'reversing through stop (given)',
      'starter.control.memoryRelay': 'no (default)',
      'starter.control.readyRelay': 'no (default)',
      'starter.control.emergencyStop.category': '0 (default)',
      'starter.control.changeoverTimer': '0 ms (default)',
      'starter.control.mechanicalInterlock': 'yes (default)',
      'starter.control.relayTime':
        '10 ms (assumed: typical of small auxiliary relays, common practice, no source)',
      'starter.control.scanTime': '0 ms (default)',
      'starter.control.coilVoltage': 'ignored (default)',
      'starter.control.overload': 'none (default)',
    });
  });

  it('say that a setting is the rated current', () => {
    const origins = originsOf(
      controlledScenario({ overload: { class: 10 } }, {}, { machine: { rated: { current: '46.8 A' } } }),
    );
    expect(origins.get('starter.control.overload.setting')).toBe(
      '46.8 A (derived: rated current of the machine)',
    );
    expect(origins.get('starter.control.overload.start')).toBe('cold (default)');
    expect(origins.get('starter.control.overload.memory')).toBe('kept (default)');
    expect(origins.has('starter.control.overload')).toBe(false);
  });

  it('list a supply that stays away', () => {
    const faults = [{ kind: 'supply lost', at: '1 s' }];
    expect(originsOf(controlledScenario({}, { faults })).get('starter.faults.0.until')).toBe(
      'never (default)',
    );
  });
});

it('the zero-speed switch may differ in reverse and have a lockout', () => {
  const zeroSpeedSwitch = {
    ...SWITCH,
    reverse: { dropOutSpeed: '70 rpm', pickUpSpeed: '140 rpm' },
    lockout: true,
  };
  const { starter } = parseScenario(controlledScenario({}, { zeroSpeedSwitch }));
  expect(starter.zeroSpeedSwitch).toEqual({
    dropOutSpeed: 60 * RPM,
    pickUpSpeed: 120 * RPM,
    reverse: { dropOutSpeed: 70 * RPM, pickUpSpeed: 140 * RPM },
    lockout: true,
    delay: 0.005,
  });
  const without = parseScenario(controlledScenario({}, { zeroSpeedSwitch: { ...SWITCH, lockout: 'no' } }));
  expect(Object.keys(without.starter.zeroSpeedSwitch ?? {})).toEqual([
    'dropOutSpeed',
    'pickUpSpeed',
    'delay',
  ]);
});

it('faults of contactors, contacts, switch, relay and supply are read', () => {
  const faults = [
    { kind: 'welded contactor', contactor: 'forward' },
    { kind: 'zero-speed switch', mode: 'does not pick up' },
    { kind: 'auxiliary contact', contactor: 'forward', contact: 'hold-in', stuck: 'open' },
    { kind: 'auxiliary contact', contactor: 'reverse', contact: 'interlock', stuck: 'closed' },
    { kind: 'overload never trips' },
    { kind: 'supply lost', at: '1 s', until: '1500 ms' },
    { kind: 'mechanical interlock missing' },
  ];
  const control = { overload: { setting: '14.6 A', class: 10 } };
  expect(parseScenario(controlledScenario(control, { ...withSwitch, faults })).starter.faults).toEqual([
    { kind: 'weldedContactor', contactor: 'forward' },
    { kind: 'zeroSpeedSwitch', mode: 'doesNotPickUp' },
    { kind: 'auxiliaryContact', contactor: 'forward', contact: 'holdIn', stuck: 'open' },
    { kind: 'auxiliaryContact', contactor: 'reverse', contact: 'interlock', stuck: 'closed' },
    { kind: 'overloadNeverTrips' },
    { kind: 'supplyLost', from: 1, until: 1.5 },
    { kind: 'mechanicalInterlockMissing' },
  ]);
});

it.each([
  ['stuck closed', 'stuckClosed'],
  ['stuck open', 'stuckOpen'],
])('a switch may be %s', (mode, expected) => {
  const faults = [{ kind: 'zero-speed switch', mode }];
  const { starter } = parseScenario(controlledScenario({}, { ...withSwitch, faults }));
  expect(starter.faults).toEqual([{ kind: 'zeroSpeedSwitch', mode: expected }]);
});

it('a welded contactor, a failed switch and a lost supply need no control circuit', () => {
  const faults = [
    { kind: 'welded contactor', contactor: 'reverse' },
    { kind: 'zero-speed switch', mode: 'stuck open' },
    { kind: 'supply lost', at: '1 s', until: 'never' },
  ];
  expect(parseScenario(minimalScenario({ starter: { ...withSwitch, faults } })).starter.faults).toHaveLength(
    3,
  );
});

it.each(['running forward', 'running reverse'])(
  'a machine may be %s at first, as if its button had been pressed',
  (initial) => {
    const scheme = 'plug to stop both directions';
    const scenario = controlledScenario({ scheme }, withSwitch, { initial });
    expect(parseScenario(scenario).initial).toBe(
      initial === 'running forward' ? 'runningForward' : 'runningReverse',
    );
  },
);
