import { describe, expect, it } from 'vitest';
import { renderScenario } from '../../../src/scenario/renderScenario.ts';
import { type Group, minimalScenario, parseScenario } from './minimalScenario.ts';
import { accepts, refuses } from './refusals.ts';

const SWITCH = { dropOutSpeed: '60 rpm', pickUpSpeed: '120 rpm' };
const BRAKE = { torque: '80 N m', delay: '60 ms' };
const INJECTION = { voltage: '24 V', resistance: '0.1 ohm', delay: '0.5 s' };

const stopping = (how: string, starter: Group) =>
  minimalScenario({
    starter,
    actions: [
      { at: '0 s', do: 'start forward' },
      { at: '1 s', do: how },
    ],
  });

describe('brake and direct current in a file', () => {
  it('a brake is read in SI and sets on command where nothing else is said', () => {
    const { starter, actions } = parseScenario(stopping('apply brake', { brake: BRAKE }));
    expect(starter.brake).toEqual({ torque: 80, delay: 0.06, sets: 'onCommand' });
    expect(actions[1]).toEqual({ at: 1, do: 'brake' });
    const held = parseScenario(stopping('coast', { brake: { ...BRAKE, sets: 'after plugging' } }));
    expect(held.starter.brake?.sets).toBe('afterPlugging');
  });

  it('direct current closes like the other contactors and lasts until the switch opens where nothing else is said', () => {
    const { starter, actions } = parseScenario(
      stopping('inject dc', { closingTime: '18 ms', zeroSpeedSwitch: SWITCH, injection: INJECTION }),
    );
    expect(starter.injection).toEqual({
      voltage: 24,
      resistance: 0.1,
      delay: 0.5,
      closingTime: 0.018,
      duration: null,
    });
    expect(actions[1]).toEqual({ at: 1, do: 'injectDc' });
  });

  it('both come back to the last bit', () => {
    const scenario = parseScenario(
      stopping('inject dc', {
        zeroSpeedSwitch: SWITCH,
        brake: { ...BRAKE, sets: 'after plugging' },
        injection: { ...INJECTION, closingTime: '7 ms', duration: '2.1 s' },
      }),
    );
    expect(parseScenario(renderScenario(scenario))).toEqual(scenario);
  });

  refuses([
    [
      'a brake that is applied must be stated',
      stopping('apply brake', {}),
      'conflict actions.1.do',
      'a brake that is not stated',
      '`brake` under starter',
    ],
    [
      'direct current that is injected must have a source',
      stopping('inject dc', { zeroSpeedSwitch: SWITCH }),
      'conflict actions.1.do',
      'a source of direct current that is not stated',
      '`injection` under starter',
    ],
    [
      'direct current that nothing ends is refused',
      stopping('inject dc', { injection: INJECTION }),
      'conflict starter.injection',
      'there is no such switch',
      '`duration` with a time',
    ],
    [
      'with a control circuit nothing is commanded',
      minimalScenario({
        starter: { brake: BRAKE, control: { scheme: 'reversing through stop' } },
        actions: [{ at: '0 s', do: 'apply brake' }],
      }),
      'conflict actions.0.do',
      'is a command to the coils',
      'no `control`',
    ],
  ]);

  accepts([
    [
      'direct current with a time needs no switch',
      stopping('inject dc', { injection: { ...INJECTION, duration: '2 s' } }),
    ],
  ]);
});
