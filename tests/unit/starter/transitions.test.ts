/** Truth table of the starter, written from its description: no machine, no integration. */
import { describe, expect, it } from 'vitest';
import type { Action, StarterData } from '../../../src/scenario/scenario.ts';
import { isIdle } from '../../../src/starter/conduction.ts';
import { initialStarter, type StarterState } from '../../../src/starter/starter.ts';
import { clearPole, crossThreshold } from '../../../src/starter/transitions.ts';
import { ARCING_STARTER, IDEAL_STARTER } from '../../support/scenarios.ts';
import { advance, told } from './agenda.ts';

/** Closing 22 ms, opening 12 ms, change-over delay 30 ms; poles B and C touch 1 and 2 ms later, A parts 3 ms later. */
const data: StarterData = {
  ...ARCING_STARTER,
  closingScatter: [0, 0.001, 0.002],
  openingScatter: [0.003, 0, 0],
};
const withSwitch: StarterData = {
  ...data,
  zeroSpeedSwitch: { dropOutSpeed: 5, pickUpSpeed: 9, delay: 0.015 },
};

function starter(actions: readonly Action[], from: StarterData = data, running = false): StarterState {
  return initialStarter(from, actions, running ? 'runningForward' : 'rest');
}

describe('starting', () => {
  it('energises the coil at the command and touches pole by pole after the closing time', () => {
    const { state, events } = advance(starter([{ at: 0.1, do: 'startForward' }]), 1);
    expect(told(events)).toEqual([
      '100 action',
      '100 coilEnergised forward',
      '122 poleTouches forward A',
      '123 poleTouches forward B',
      '124 poleTouches forward C',
    ]);
    expect(state.poles.forward).toEqual(['closed', 'closed', 'closed']);
    expect(state.poles.reverse).toEqual(['open', 'open', 'open']);
  });

  it('twice does nothing the second time', () => {
    const { events } = advance(
      starter([
        { at: 0, do: 'startForward' },
        { at: 0.01, do: 'startForward' },
        { at: 0.5, do: 'startForward' },
      ]),
      1,
    );
    expect(told(events).filter((line) => line.includes('coil'))).toEqual(['0 coilEnergised forward']);
    expect(told(events).filter((line) => line.includes('Touches')).length).toBe(3);
  });

  it('the reverse contactor needs no change-over delay when the other never was in', () => {
    const { events } = advance(starter([{ at: 0.2, do: 'startReverse' }]), 1);
    expect(told(events)).toContain('200 coilEnergised reverse');
  });
});

describe('opening', () => {
  it('parts the poles after the opening time, each arcing until it is cleared', () => {
    const { state, events } = advance(starter([{ at: 0.1, do: 'coast' }], data, true), 1);
    expect(told(events)).toEqual([
      '100 action',
      '100 coilReleased forward',
      '112 poleParts forward B',
      '112 poleParts forward C',
      '115 poleParts forward A',
    ]);
    expect(state.poles.forward).toEqual(['arcing', 'arcing', 'arcing']);
    expect(isIdle(state)).toBe(false);
    const cleared = [0, 1, 2].reduce((at, pole) => clearPole(at, 0.2, 'forward', pole, 'test').state, state);
    expect(cleared.poles.forward).toEqual(['open', 'open', 'open']);
    expect(isIdle(cleared)).toBe(true);
  });

  it('lets a pole clear at once, or only after the minimum arcing time', () => {
    const at = (minimumArcingTime: number, until: number) =>
      advance(starter([{ at: 0, do: 'coast' }], { ...data, minimumArcingTime }, true), until).state.mayClear
        .forward;
    expect(at(0, 0.013)).toEqual([false, true, true]);
    expect(at(0.004, 0.0155)).toEqual([false, false, false]);
    expect(at(0.004, 0.0165)).toEqual([false, true, true]);
    expect(at(0.004, 0.0195)).toEqual([true, true, true]);
  });

  it('with ideal poles clears at the parting', () => {
    const { state, events } = advance(starter([{ at: 0, do: 'coast' }], IDEAL_STARTER, true), 0);
    expect(told(events).filter((line) => line.includes('poleClears')).length).toBe(3);
    expect(state.poles.forward).toEqual(['open', 'open', 'open']);
  });

  it('before the contacts have touched cancels their touching', () => {
    const { state, events } = advance(
      starter([
        { at: 0, do: 'startForward' },
        { at: 0.0225, do: 'coast' },
      ]),
      1,
    );
    expect(told(events)).toEqual([
      '0 action',
      '0 coilEnergised forward',
      '22 poleTouches forward A',
      '22.5 action',
      '22.5 coilReleased forward',
      '37.5 poleParts forward A',
    ]);
    expect(state.poles.forward).toEqual(['arcing', 'open', 'open']);
  });

  it('is cancelled when the coil is energised again before the contacts part', () => {
    const { state, events } = advance(
      starter(
        [
          { at: 0, do: 'coast' },
          { at: 0.005, do: 'startForward' },
        ],
        data,
        true,
      ),
      1,
    );
    expect(told(events).some((line) => line.includes('poleParts'))).toBe(false);
    expect(state.poles.forward).toEqual(['closed', 'closed', 'closed']);
  });
});

describe('reversing', () => {
  it('energises the other coil once the change-over delay has passed since this one’s release', () => {
    const { events } = advance(starter([{ at: 0.2, do: 'startReverse' }], data, true), 1);
    expect(told(events)).toEqual([
      '200 action',
      '200 coilReleased forward',
      '212 poleParts forward B',
      '212 poleParts forward C',
      '215 poleParts forward A',
      '230 coilEnergised reverse',
      '252 poleTouches reverse A',
      '253 poleTouches reverse B',
      '254 poleTouches reverse C',
    ]);
  });

  it('counts the delay from an earlier release', () => {
    const { events } = advance(
      starter(
        [
          { at: 0.2, do: 'coast' },
          { at: 0.22, do: 'startReverse' },
        ],
        data,
        true,
      ),
      1,
    );
    expect(told(events)).toContain('230 coilEnergised reverse');
  });

  it('is called off by coasting during the delay', () => {
    const { state, events } = advance(
      starter(
        [
          { at: 0.2, do: 'startReverse' },
          { at: 0.21, do: 'coast' },
        ],
        data,
        true,
      ),
      1,
    );
    expect(told(events).some((line) => line.includes('reverse'))).toBe(false);
    expect(state.coil).toEqual({ forward: false, reverse: false });
  });
});

describe('plugging', () => {
  /** A running motor whose switch has picked up, told to plug at 0.2 s. */
  const plugged = () => advance(starter([{ at: 0.2, do: 'plug' }], withSwitch, true), 0.3);

  it('drops the running contactor and energises the opposite one', () => {
    const { state, events } = plugged();
    expect(told(events)).toContain('200 coilReleased forward');
    expect(told(events)).toContain('230 coilEnergised reverse');
    expect(state.plugging).toEqual({ contactor: 'reverse', braking: 'forward' });
  });

  it('of a motor running in reverse energises the forward contactor', () => {
    const state = initialStarter(withSwitch, [{ at: 0, do: 'plug' }], 'runningReverse');
    expect(advance(state, 1).state.plugging).toEqual({ contactor: 'forward', braking: 'reverse' });
  });

  it('is held by the switch and released when it opens, after its delay', () => {
    const below = crossThreshold(plugged().state, 0.5, 'forward', false);
    const before = advance(below, 0.514);
    expect(before.events).toEqual([]);
    expect(before.state.coil.reverse).toBe(true);
    const after = advance(below, 1);
    expect(told(after.events)).toEqual([
      '515 switchOpens',
      '515 coilReleased reverse',
      '527 poleParts reverse B',
      '527 poleParts reverse C',
      '530 poleParts reverse A',
    ]);
    expect(after.state.plugging).toBe(null);
  });

  it('is not released by a dip of speed shorter than the delay', () => {
    const dipped = crossThreshold(
      crossThreshold(plugged().state, 0.5, 'forward', false),
      0.51,
      'forward',
      true,
    );
    const { state, events } = advance(dipped, 1);
    expect(events).toEqual([]);
    expect(state.coil.reverse).toBe(true);
  });

  it('is not released by the switch of the other direction', () => {
    const moved = crossThreshold(
      crossThreshold(plugged().state, 0.5, 'reverse', true),
      0.6,
      'reverse',
      false,
    );
    expect(advance(moved, 1).state.coil.reverse).toBe(true);
  });

  it('is refused when the switch has not picked up, and the motor coasts', () => {
    const state = starter(
      [
        { at: 0, do: 'startForward' },
        { at: 0.2, do: 'plug' },
      ],
      withSwitch,
    );
    const { state: end, events } = advance(state, 1);
    expect(
      told(events)
        .filter((line) => line.startsWith('2'))
        .slice(-1),
    ).toEqual(['230 plugRefused reverse']);
    expect(end.coil).toEqual({ forward: false, reverse: false });
    expect(end.plugging).toBe(null);
  });

  it('without a switch is never released', () => {
    const { state } = advance(starter([{ at: 0.2, do: 'plug' }], data, true), 5);
    expect(state.coil.reverse).toBe(true);
  });

  it('of a motor at rest with nothing in is refused', () => {
    expect(told(advance(starter([{ at: 0, do: 'plug' }]), 1).events)).toEqual(['0 action', '0 plugRefused']);
  });

  it('while plugging already is refused', () => {
    const { events } = advance(
      starter(
        [
          { at: 0.2, do: 'plug' },
          { at: 0.4, do: 'plug' },
        ],
        withSwitch,
        true,
      ),
      1,
    );
    expect(told(events)).toContain('400 plugRefused');
  });

  it('of a coasting motor brakes the direction that the switch shows', () => {
    const { state } = advance(
      starter(
        [
          { at: 0, do: 'coast' },
          { at: 0.1, do: 'plug' },
        ],
        withSwitch,
        true,
      ),
      1,
    );
    expect(state.plugging).toEqual({ contactor: 'reverse', braking: 'forward' });
    expect(state.coil.reverse).toBe(true);
  });
});
