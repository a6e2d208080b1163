import { describe, expect, it } from 'vitest';
import { controlledScenario, SWITCH } from './controlledScenario.ts';
import { type Group, parseScenario } from './minimalScenario.ts';

const full = { readyRelay: 'yes', overload: { setting: '14.6 A', class: 10 } };

/** Every press and release as `time verb button`. */
function pressed(...actions: Group[]): string[] {
  const scenario = controlledScenario(full, { zeroSpeedSwitch: SWITCH }, { actions });
  return parseScenario(scenario).actions.map((action) =>
    'button' in action ? `${action.at} ${action.do} ${action.button}` : 'a command',
  );
}

describe('a button', () => {
  it.each(['forward', 'reverse', 'stop', 'reset'])(
    '%s that is pressed is let go a fifth of a second later',
    (button) => {
      expect(pressed({ at: '1 s', do: `press ${button}` })).toEqual([
        `1 press ${button}`,
        `1.2 release ${button}`,
      ]);
    },
  );

  it('is let go after the time that is stated', () => {
    expect(pressed({ at: '1 s', do: 'press stop', for: '500 ms' })).toEqual([
      '1 press stop',
      '1.5 release stop',
    ]);
  });

  it('that is held stays until it is released', () => {
    expect(pressed({ at: '0 s', do: 'hold forward' })).toEqual(['0 press forward']);
    expect(pressed({ at: '0 s', do: 'hold forward' }, { at: '3 s', do: 'release forward' })).toEqual([
      '0 press forward',
      '3 release forward',
    ]);
  });

  it('may be released before it is let go by itself', () => {
    expect(pressed({ at: '0 s', do: 'press forward' }, { at: '0.1 s', do: 'release forward' })).toEqual([
      '0 press forward',
      '0.1 release forward',
      '0.2 release forward',
    ]);
  });

  it('that is pressed again before it is let go stays pressed until after the later press', () => {
    expect(pressed({ at: '0 s', do: 'press stop' }, { at: '0.1 s', do: 'press stop', for: '0.4 s' })).toEqual(
      ['0 press stop', '0.1 press stop', '0.5 release stop'],
    );
    expect(pressed({ at: '0 s', do: 'press stop' }, { at: '0.1 s', do: 'hold stop' })).toEqual([
      '0 press stop',
      '0.1 press stop',
    ]);
  });

  it('that is pressed again at the instant it is let go is let go first', () => {
    expect(
      pressed(
        { at: '0 s', do: 'press forward', for: '0.5 s' },
        { at: '0.5 s', do: 'press forward', for: '0.5 s' },
      ),
    ).toEqual(['0 press forward', '0.5 release forward', '0.5 press forward', '1 release forward']);
  });

  it('that another one is pressed beside is let go all the same', () => {
    expect(
      pressed({ at: '0 s', do: 'press forward' }, { at: '0.1 s', do: 'press reverse', for: '1 s' }),
    ).toEqual(['0 press forward', '0.1 press reverse', '0.2 release forward', '1.1 release reverse']);
  });
});

it('both buttons may be pressed at once, in the order they are written', () => {
  const both = (first: string, second: string) =>
    pressed({ at: '0 s', do: `press ${first}` }, { at: '0 s', do: `press ${second}` });
  expect(both('forward', 'reverse')).toEqual([
    '0 press forward',
    '0 press reverse',
    '0.2 release forward',
    '0.2 release reverse',
  ]);
  expect(both('reverse', 'forward').slice(0, 2)).toEqual(['0 press reverse', '0 press forward']);
});

it('what repeats itself at one instant is done once', () => {
  expect(pressed({ at: '0 s', do: 'press forward' }, { at: '0 s', do: 'press forward' })).toEqual([
    '0 press forward',
    '0.2 release forward',
  ]);
  expect(
    pressed(
      { at: '0 s', do: 'hold forward' },
      { at: '1 s', do: 'release forward' },
      { at: '1 s', do: 'release forward' },
    ),
  ).toEqual(['0 press forward', '1 release forward']);
  // Not a repetition: the button is let go between.
  expect(
    pressed(
      { at: '0 s', do: 'hold stop' },
      { at: '0 s', do: 'release stop' },
      { at: '0 s', do: 'hold stop' },
    ),
  ).toEqual(['0 press stop', '0 release stop', '0 press stop']);
});

it('an emergency stop stays pressed until it is released', () => {
  expect(
    pressed({ at: '1 s', do: 'press emergency stop' }, { at: '5 s', do: 'release emergency stop' }),
  ).toEqual(['1 press emergencyStop', '5 release emergencyStop']);
});

it('the overload relay is tripped and reset by a touch', () => {
  expect(pressed({ at: '1 s', do: 'trip overload' }, { at: '5 s', do: 'reset overload' })).toEqual([
    '1 press overloadTest',
    '5 press overloadReset',
  ]);
});

it('five hundred presses are a thousand presses and releases, which is the most there may be', () => {
  const presses = Array.from({ length: 500 }, (_, j) => ({ at: `${j} s`, do: 'press forward' }));
  expect(pressed(...presses)).toHaveLength(1000);
});
