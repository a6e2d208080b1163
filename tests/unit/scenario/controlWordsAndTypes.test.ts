import { describe, expect, it } from 'vitest';
import { controlledScenario, SWITCH } from './controlledScenario.ts';
import { codesOf, type Group, problemsOf } from './minimalScenario.ts';

const plugging = { scheme: 'plug to stop' };
const control = (changes: Group) => controlledScenario(changes, { zeroSpeedSwitch: SWITCH });
const action = (word: unknown) => controlledScenario({}, {}, { actions: [{ at: '0 s', do: word }] });
const fault = (written: Group) => controlledScenario({}, { zeroSpeedSwitch: SWITCH, faults: [written] });

describe('a misspelt word is answered with the one that was meant', () => {
  it.each<[string, Group, string]>([
    ['plug-to-stop', control({ scheme: 'plug-to-stop' }), '`plug to stop`'],
    ['antiplugging', control({ scheme: 'antiplugging' }), '`anti-plugging`'],
    ['Yes', control({ readyRelay: 'Yes' }), '`yes`'],
    ['ignore', control({ coilVoltage: 'ignore' }), '`ignored`'],
    ['pres forward', action('pres forward'), '`press forward`'],
    ['press emergencystop', action('press emergencystop'), '`press emergency stop`'],
    ['weldet contactor', fault({ kind: 'weldet contactor', contactor: 'forward' }), '`welded contactor`'],
    ['stuck close', fault({ kind: 'zero-speed switch', mode: 'stuck close' }), '`stuck closed`'],
    [
      'holdin',
      fault({ kind: 'auxiliary contact', contactor: 'forward', contact: 'holdin', stuck: 'open' }),
      '`hold-in`',
    ],
  ])('%s', (_, scenario, expected) => {
    const problems = problemsOf(scenario);
    expect(problems.map(({ code }) => code)).toEqual(['unknownWord']);
    expect(problems[0]?.expected).toMatch(new RegExp(`^${expected}`, 'u'));
  });

  it('and so is a misspelt key', () => {
    const [problem] = problemsOf(control({ memoryrelay: true }));
    expect(problem).toMatchObject({ code: 'unknownKey', path: 'starter.control.memoryrelay' });
    expect(problem?.expected).toContain('`memoryRelay`');
  });
});

it('every word that an action may be is named where none is near', () => {
  const [problem] = problemsOf(action('jump'));
  for (const word of [
    'start forward',
    'press reset',
    'hold stop',
    'release emergency stop',
    'reset overload',
  ])
    expect(problem?.expected).toContain(`\`${word}\``);
});

describe('something else entirely is refused by its type', () => {
  it.each<[string, Group, string]>([
    ['a scheme that is a number', control({ scheme: 2 }), 'wrongType starter.control.scheme'],
    ['no scheme', control({ scheme: undefined }), 'missingKey starter.control.scheme'],
    ['an empty scheme', control({ scheme: null }), 'missingKey starter.control.scheme'],
    ['a relay that is a list', control({ memoryRelay: [] }), 'wrongType starter.control.memoryRelay'],
    ['a relay that is nothing', control({ memoryRelay: null }), 'missingKey starter.control.memoryRelay'],
    [
      'an emergency stop that is a number',
      control({ emergencyStop: 0 }),
      'wrongType starter.control.emergencyStop',
    ],
    ['no category', control({ emergencyStop: {} }), 'missingKey starter.control.emergencyStop.category'],
    [
      'category 2',
      control({ emergencyStop: { category: 2 } }),
      'unknownWord starter.control.emergencyStop.category',
    ],
    [
      'a category that is a word',
      control({ emergencyStop: { category: 'zero' } }),
      'wrongType starter.control.emergencyStop.category',
    ],
    [
      'a limit without a unit',
      control({ ...plugging, emergencyStop: { category: 1, limit: 2 } }),
      'missingUnit starter.control.emergencyStop.limit',
    ],
    ['a timer in volts', control({ changeoverTimer: '3 V' }), 'wrongUnit starter.control.changeoverTimer'],
    [
      'a coil voltage that is a number',
      control({ coilVoltage: 0.8 }),
      'wrongType starter.control.coilVoltage',
    ],
    [
      'a coil voltage in volts',
      control({ coilVoltage: { pickUp: '180 V', dropOut: '50 %' } }),
      'wrongUnit starter.control.coilVoltage.pickUp',
    ],
    [
      'a coil that drops out at nothing that is said',
      control({ coilVoltage: { pickUp: '80 %' } }),
      'missingKey starter.control.coilVoltage.dropOut',
    ],
    ['an overload relay that is a list', control({ overload: [] }), 'wrongType starter.control.overload'],
    [
      'a setting without a unit',
      control({ overload: { setting: 14.6, class: 10 } }),
      'missingUnit starter.control.overload.setting',
    ],
    ...[15, '10B', 'ten'].map((one): [string, Group, string] => [
      `class ${one}`,
      control({ overload: { setting: '14.6 A', class: one } }),
      'unknownWord starter.control.overload.class',
    ]),
    [
      'a class that is a list',
      control({ overload: { setting: '14.6 A', class: [10] } }),
      'wrongType starter.control.overload.class',
    ],
    [
      'a relay that is lukewarm',
      control({ overload: { setting: '14.6 A', class: 10, start: 'lukewarm' } }),
      'unknownWord starter.control.overload.start',
    ],
    [
      'a lockout that is a word',
      controlledScenario({}, { zeroSpeedSwitch: { ...SWITCH, lockout: 'magnetic' } }),
      'unknownWord starter.zeroSpeedSwitch.lockout',
    ],
    [
      'reverse speeds that are one',
      controlledScenario({}, { zeroSpeedSwitch: { ...SWITCH, reverse: '60 rpm' } }),
      'wrongType starter.zeroSpeedSwitch.reverse',
    ],
    [
      'a supply that is back soon',
      fault({ kind: 'supply lost', at: '1 s', until: 'soon' }),
      'notANumber starter.faults.0.until',
    ],
    [
      'a supply that is back before the beginning',
      fault({ kind: 'supply lost', at: '1 s', until: '-1 s' }),
      'outOfRange starter.faults.0.until',
    ],
    [
      'a supply that is back without a unit',
      fault({ kind: 'supply lost', at: '1 s', until: 2 }),
      'missingUnit starter.faults.0.until',
    ],
    ['a switch without its mode', fault({ kind: 'zero-speed switch' }), 'missingKey starter.faults.0.mode'],
    ['an action that is a number', action(1), 'wrongType actions.0.do'],
    [
      'a press without a unit',
      controlledScenario({}, {}, { actions: [{ at: '0 s', do: 'press forward', for: 1 }] }),
      'missingUnit actions.0.for',
    ],
  ])('%s', (_, scenario, expected) => {
    expect(codesOf(scenario)).toEqual([expected]);
  });
});

it('keys that name parts of every object are unknown inside a control circuit too', () => {
  const json = JSON.stringify(controlledScenario()).replace(
    '"scheme":',
    '"__proto__": {"scheme": 1}, "scheme":',
  );
  expect(codesOf(json)).toEqual(['unknownKey starter.control.__proto__']);
  // Words are looked up among those that are known, not among what every object has.
  for (const word of ['constructor', 'toString', '__proto__']) {
    expect(codesOf(control({ scheme: word }))).toEqual(['unknownWord starter.control.scheme']);
    expect(codesOf(action(word))).toEqual(['unknownWord actions.0.do']);
  }
});
