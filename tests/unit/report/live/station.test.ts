import { describe, expect, it } from 'vitest';
import { parseScenario, simulate } from '../../../../src/index.ts';
import { buttonEdit } from '../../../../src/report/live/buttonEdit.ts';
import { channelValue } from '../../../../src/report/live/channelValue.ts';
import { filmOf } from '../../../../src/report/live/filmOf.ts';
import { heldAfter } from '../../../../src/report/live/heldAfter.ts';
import { letPass } from '../../../../src/report/live/letPass.ts';
import { eventsUpTo, stationAt } from '../../../../src/report/live/stationAt.ts';
import { stationButtons, stationCommands } from '../../../../src/report/live/stationButtons.ts';
import { applyEdits } from '../../../../src/scenario/edit/applyEdits.ts';
import type { ButtonName, ControlData, Scenario, SchemeName } from '../../../../src/scenario/scenario.ts';
import type { Channel, ChannelOf, ChannelValue } from '../../../../src/simulate/channels.ts';
import { controlScenario, hold, press } from '../../../support/controlScenario.ts';
import { exampleText } from '../../../support/examples.ts';
import { ARCING_STARTER, scenarioOf } from '../../../support/scenarios.ts';
import { KRAUSE } from '../../../support/textbookMachines.ts';
import { fakeFilm } from './fakeFilm.ts';

/** A history written as value, time, value, time, value … from 0 s on. */
function channel(of: ChannelOf, ...history: readonly (ChannelValue | number)[]): Channel {
  const changes: { t: number; value: ChannelValue }[] = [];
  for (let i = 0; i < history.length; i += 2)
    changes.push({ t: i === 0 ? 0 : (history[i - 1] as number), value: history[i] as ChannelValue });
  return { of, changes };
}

const OVERLOAD: ControlData['overload'] = { setting: 10, tripClass: '10', start: 'cold', memory: 'kept' };

describe('the starter at an instant', () => {
  const scenario = controlScenario(
    { readyRelay: true, memoryRelay: true, overload: OVERLOAD },
    [hold('forward', 1), ...press('stop', 2, 0.2)],
    [{ kind: 'weldedPole', contactor: 'reverse', pole: 'B' }],
  );
  const film = fakeFilm({}, 4, {
    channels: [
      channel({ kind: 'device', device: 'forwardButton' }, 'off', 1, 'on'),
      channel({ kind: 'device', device: 'stopButton' }, 'off', 2, 'on', 2.2, 'off'),
      channel({ kind: 'device', device: 'overload' }, 'off', 3.5, 'on'),
      channel({ kind: 'device', device: 'switchForward' }, 'off', 1.3, 'on', 2.8, 'off'),
      channel({ kind: 'device', device: 'forwardContactor' }, 'off', 1.02, 'on', 2.01, 'off'),
      channel({ kind: 'device', device: 'forwardMemory' }, 'off', 1.04, 'on'),
      channel({ kind: 'coil', device: 'forwardMemory' }, 'off', 1.03, 'on'),
      channel({ kind: 'coil', device: 'forwardContactor' }, 'off', 1, 'on', 2, 'off'),
      channel(
        { kind: 'pole', contactor: 'forward', phase: 'A' },
        'open',
        1.02,
        'closed',
        2.01,
        'arcing',
        2.014,
        'open',
      ),
      channel({ kind: 'pole', contactor: 'reverse', phase: 'B' }, 'open', 2.5, 'closed'),
      channel({ kind: 'controlVoltage' }, 'on', 3, 'off'),
    ],
    thermal: { t: [0, 2, 4], value: [0, 0.5, 1] },
    auxiliaries: [
      {
        label: 'Brake',
        onWord: 'set',
        offWord: 'released',
        changes: [
          { t: 0, on: false },
          { t: 3, on: true },
        ],
      },
    ],
    events: [
      { t: 1, text: 'one' },
      { t: 1, text: 'two' },
      { t: 2, text: 'three' },
    ],
  });
  const at = (t: number) => stationAt(film, scenario, t);

  it('has a change at the very instant of it', () => {
    const history = film.channels[1]!.changes;
    expect([1.9999, 2, 2.1, 2.2, 9].map((t) => channelValue(history, t))).toEqual([
      'off',
      'on',
      'on',
      'off',
      'off',
    ]);
    expect(channelValue(history, -1)).toBe('off');
  });

  it('shows poles open, closed and arcing; one that never moved is open', () => {
    expect([1, 1.02, 2.012, 2.02].map((t) => at(t).contactors.forward.poles.A)).toEqual([
      'open',
      'closed',
      'arcing',
      'open',
    ]);
    expect(at(2).contactors.forward.poles.C).toBe('open');
  });

  it('tells coil from armature', () => {
    expect(
      [0.5, 1.01, 1.5, 2.005, 2.5].map((t) => [at(t).contactors.forward.coil, at(t).contactors.forward.isIn]),
    ).toEqual([
      [false, false],
      [true, false],
      [true, true],
      [false, true],
      [false, false],
    ]);
  });

  it('calls a pole welded once it has touched, and no other', () => {
    expect(at(2.4).contactors.reverse.welded.B).toBe(false);
    expect(at(2.5).contactors.reverse.welded).toEqual({ A: false, B: true, C: false });
    expect(at(1.5).contactors.forward.welded.A).toBe(false);
  });

  it('tells a held button from one that will be let go', () => {
    const button = (name: string, t: number) => at(t).buttons.find((one) => one.button === name);
    expect(button('forward', 1.5)).toMatchObject({ pressed: true, held: true });
    expect(button('stop', 2.1)).toMatchObject({ pressed: true, held: false });
    expect(button('stop', 2.3)).toMatchObject({ pressed: false, held: false });
  });

  it('shows switch, relays, voltage, relay heat and what else is switched', () => {
    expect(at(1.5).zeroSpeedSwitch).toEqual({ forward: true, reverse: false });
    expect(at(1.035).relays).toEqual([
      { device: 'forwardMemory', label: '-K3 forward memory relay', coil: true, operated: false },
    ]);
    expect([2.9, 3].map((t) => at(t).controlVoltage)).toEqual([true, false]);
    expect(at(3).overload).toEqual({ tripped: false, share: 0.75 });
    expect(at(3.6).overload?.tripped).toBe(true);
    expect([2.9, 3].map((t) => at(t).auxiliaries[0]?.words)).toEqual(['released', 'set']);
  });

  it('has the last event, and the last few with the latest first', () => {
    expect(at(0.9).lastEvent).toBeNull();
    expect(at(1).lastEvent?.text).toBe('two');
    expect(eventsUpTo(film, 3, 2).map(({ text }) => text)).toEqual(['three', 'two']);
    expect(eventsUpTo(film, 0.5, 2)).toEqual([]);
  });

  it('without a control circuit has no buttons, no voltage, and an armature that its poles show', () => {
    const plain = scenarioOf(KRAUSE.hp3, { starter: ARCING_STARTER });
    const state = stationAt(film, plain, 1.5);
    expect(state).toMatchObject({ buttons: [], controlVoltage: null, overload: null, zeroSpeedSwitch: null });
    const poles = film.channels.filter(({ of }) => of.kind === 'pole');
    expect(stationAt({ ...film, channels: poles }, plain, 1.5).contactors.forward.isIn).toBe(true);
    expect(stationAt({ ...film, channels: poles }, plain, 2.012).contactors.forward.isIn).toBe(false);
  });
});

describe('what else a starter switches', () => {
  const belt = controlScenario({}, []);
  const run = (starter: Partial<Scenario['starter']>, actions: Scenario['actions']) => {
    const { control: _, ...bare } = belt.starter;
    const solver = { ...belt.solver, endTime: 0.4 };
    const scenario = { ...belt, starter: { ...bare, changeoverDelay: 0.03, ...starter }, actions, solver };
    return filmOf(simulate(scenario), 'SI').auxiliaries ?? [];
  };

  it('is a brake that sets after its delay', () => {
    const brake = { torque: 75, delay: 0.06, sets: 'onCommand' } as const;
    const found = run({ brake }, [
      { at: 0, do: 'startForward' },
      { at: 0.3, do: 'brake' },
    ]);
    expect(found.map(({ label }) => label)).toEqual(['Mechanical brake']);
    expect(found[0]?.changes).toEqual([
      { t: 0, on: false },
      { t: expect.closeTo(0.36, 9), on: true },
    ]);
  });

  it('is a supply phase that is lost, and nothing where nothing is', () => {
    const found = run({ faults: [{ kind: 'lostPhase', phase: 'B', from: 0.1 }] }, [
      { at: 0, do: 'startForward' },
    ]);
    expect(found).toMatchObject([
      { label: 'Supply phase B', changes: [{ on: true }, { t: 0.1, on: false }] },
    ]);
    expect(run({}, [{ at: 0, do: 'startForward' }])).toEqual([]);
  });
});

describe('the buttons of a station', () => {
  const buttonsOf = (scheme: SchemeName, control: Partial<ControlData> = {}) =>
    stationButtons(controlScenario({ scheme, ...control }, [])).map(({ button }) => button);

  it('are those that the control circuit has contacts of', () => {
    expect(buttonsOf('direct')).toEqual(['forward', 'reverse', 'stop', 'emergencyStop']);
    expect(buttonsOf('plugStop')).toEqual(['forward', 'stop', 'emergencyStop']);
    expect(buttonsOf('jog', { readyRelay: true, overload: OVERLOAD })).toEqual([
      'forward',
      'reverse',
      'stop',
      'reset',
      'emergencyStop',
      'overloadTest',
      'overloadReset',
    ]);
  });

  it('are replaced by commands where there is no control circuit', () => {
    const plain = scenarioOf(KRAUSE.hp3, {});
    expect(stationButtons(plain)).toEqual([]);
    expect(stationCommands(plain).map(({ command }) => command)).toEqual([
      'startForward',
      'startReverse',
      'plug',
      'coast',
    ]);
    expect(stationCommands(controlScenario({}, []))).toEqual([]);
  });
});

describe('a touch of a button', () => {
  const direct = controlScenario({ scheme: 'direct' }, []);
  const jog = controlScenario({ scheme: 'jog' }, []);
  const does = (
    scenario: Scenario,
    button: Parameters<typeof buttonEdit>[1]['button'],
    held: boolean,
    keep: boolean,
  ) => {
    const edit = buttonEdit(scenario, { button, held, keep, at: 0.7 });
    expect(edit).toMatchObject({ kind: 'button', at: 0.7, button });
    return edit.kind === 'button' ? edit.do : null;
  };

  it('presses it, or keeps it pressed until it is touched again', () => {
    expect(does(direct, 'forward', false, false)).toBe('press');
    expect(does(direct, 'forward', false, true)).toBe('hold');
    expect(does(direct, 'forward', true, true)).toBe('release');
    expect(does(direct, 'forward', true, false)).toBe('release');
  });

  it('latches and releases an emergency stop', () => {
    expect(does(direct, 'emergencyStop', false, true)).toBe('press');
    expect(does(direct, 'emergencyStop', true, false)).toBe('release');
  });

  it('inches as long as the hand stays', () => {
    expect(does(jog, 'forward', false, false)).toBe('hold');
    expect(does(jog, 'reverse', true, false)).toBe('release');
    expect(does(jog, 'stop', false, false)).toBe('press');
  });

  it('never holds the test or the reset of the overload relay', () => {
    for (const button of ['overloadTest', 'overloadReset'] as const) {
      expect(does(direct, button, true, true)).toBe('press');
      expect(does(direct, button, false, true)).toBe('press');
    }
  });

  it('knows after a touch how the button stands, so that a second touch lets go before the run of the first is there', () => {
    const touch = (button: ButtonName, held: boolean, keep: boolean) =>
      buttonEdit(direct, { button, held, keep, at: 1 });
    expect(heldAfter(touch('emergencyStop', false, false))).toBe(true);
    expect(heldAfter(touch('emergencyStop', true, false))).toBe(false);
    expect(heldAfter(touch('forward', false, true))).toBe(true);
    expect(heldAfter(touch('forward', false, false))).toBe(false);
    expect(heldAfter(touch('overloadTest', false, true))).toBe(false);
    const twice = [touch('emergencyStop', false, false), touch('emergencyStop', true, false)];
    const done = applyEdits(exampleText('what-happens-after-the-stop-button.yaml'), twice);
    expect(done.refusal).toBeNull();
    expect(parseScenario(done.text).actions.slice(-2)).toMatchObject([
      { at: 1, button: 'emergencyStop', do: 'press' },
      { at: 1, button: 'emergencyStop', do: 'release' },
    ]);
  });

  it('lets a second pass at the end of the run', () => {
    expect(letPass({ tEnd: 1.3 }, null)).toEqual({ kind: 'endTime', value: 2.3 });
  });

  it('lets another second pass after the one that was asked for', () => {
    expect(letPass({ tEnd: 1.3 }, 2.3)).toEqual({ kind: 'endTime', value: 3.3 });
  });
});
