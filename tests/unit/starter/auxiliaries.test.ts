/** Bypass contactor, slip-ring resistors, star connection and faults, written from their description: no machine. */
import { describe, expect, it } from 'vitest';
import type { Action, RotorResistorData, StarterData } from '../../../src/scenario/scenario.ts';
import { reconnectWinding } from '../../../src/starter/auxiliaries.ts';
import { clearableArcs, conduction, isIdle } from '../../../src/starter/conduction.ts';
import { extinguishDeadArcs } from '../../../src/starter/extinguish.ts';
import { clearLine } from '../../../src/starter/lines.ts';
import { initialStarter, type StarterState } from '../../../src/starter/starter.ts';
import { clearPole, crossThreshold } from '../../../src/starter/transitions.ts';
import { ARCING_STARTER, IDEAL_STARTER } from '../../support/scenarios.ts';
import { advance, told } from './agenda.ts';

/** Closing 22 ms, opening 12 ms, change-over delay 30 ms; the switch reacts at once. */
const data: StarterData = {
  ...ARCING_STARTER,
  zeroSpeedSwitch: { dropOutSpeed: 5, pickUpSpeed: 9, delay: 0 },
};
const resistors = { resistance: 2, closingTime: 0.015, openingTime: 0.008, bypassAfter: null };
const steps: RotorResistorData = {
  starting: [
    { resistance: 3, duration: 0.4 },
    { resistance: 1, duration: 0.2 },
  ],
  plugging: 5,
};

function starter(
  actions: readonly Action[],
  more: Partial<StarterData>,
  running = false,
  rotor: RotorResistorData | null = null,
): StarterState {
  return initialStarter({ ...data, ...more }, actions, running ? 'runningForward' : 'rest', rotor);
}

const of = (events: Parameters<typeof told>[0], word: string) =>
  told(events).filter((line) => line.includes(word));

describe('the bypass contactor of the line resistors', () => {
  it('closes with the contactor of a start, after its own closing time', () => {
    const { state, events } = advance(
      starter([{ at: 0.1, do: 'startForward' }], { lineResistors: resistors }),
      1,
    );
    expect(of(events, 'bypass')).toEqual(['115 bypassCloses']);
    expect(state.bypass).toEqual({ coil: true, closed: true });
  });

  it('opens at a plug command and stays open while plugging lasts', () => {
    const { state, events } = advance(
      starter([{ at: 0.1, do: 'plug' }], { lineResistors: resistors }, true),
      5,
    );
    expect(of(events, 'bypass')).toEqual(['108 bypassOpens']);
    expect(state.bypass).toEqual({ coil: false, closed: false });
  });

  it('closes again the stated time after the reversing coil, where a time is stated', () => {
    const lineResistors = { ...resistors, bypassAfter: 0.5 };
    const { events } = advance(starter([{ at: 0.1, do: 'startReverse' }], { lineResistors }, true), 5);
    expect(of(events, 'coilEnergised')).toEqual(['130 coilEnergised reverse']);
    expect(of(events, 'bypass')).toEqual(['108 bypassOpens', '645 bypassCloses']);
  });

  it('does not close any more once the zero-speed switch has ended the plugging', () => {
    const lineResistors = { ...resistors, bypassAfter: 0.5 };
    const plugging = advance(starter([{ at: 0.1, do: 'plug' }], { lineResistors }, true), 0.4).state;
    const { state, events } = advance(crossThreshold(plugging, 0.4, 'forward', false), 5);
    expect(of(events, 'bypass')).toEqual([]);
    expect(state.bypass.closed).toBe(false);
  });

  it('drops out with the contactors when the machine coasts', () => {
    const { events } = advance(starter([{ at: 0.1, do: 'coast' }], { lineResistors: resistors }, true), 5);
    expect(of(events, 'bypass')).toEqual(['108 bypassOpens']);
  });
});

describe('resistors at the slip rings', () => {
  it('go out step by step after the coil of a start is energised', () => {
    const { state, events } = advance(starter([{ at: 0.1, do: 'startForward' }], {}, false, steps), 2);
    expect(of(events, 'rotorStep')).toEqual(['100 rotorStep', '500 rotorStep', '700 rotorStep']);
    expect(state.rotorResistance).toBe(0);
    expect(
      advance(starter([{ at: 0.1, do: 'startForward' }], {}, false, steps), 0.6).state.rotorResistance,
    ).toBe(1);
  });

  it('are all in from the plug command to the end of plugging, with none in before', () => {
    const running = starter([{ at: 0.1, do: 'plug' }], {}, true, steps);
    expect(running.rotorResistance).toBe(0);
    const { state, events } = advance(running, 2);
    expect(of(events, 'rotorStep')).toEqual(['100 rotorStep']);
    expect(state.rotorResistance).toBe(5);
  });

  it('go through the steps of a start when a start against the rotation has passed the switch', () => {
    const against = advance(starter([{ at: 0.1, do: 'startReverse' }], {}, true, steps), 0.5).state;
    expect(against.rotorResistance).toBe(5);
    const { state, events } = advance(crossThreshold(against, 0.5, 'forward', false), 2);
    expect(of(events, 'rotorStep')).toEqual(['500 rotorStep', '900 rotorStep', '1100 rotorStep']);
    expect(state.rotorResistance).toBe(0);
  });

  it('stay where they are when the coil drops out in the middle of a start', () => {
    const { state } = advance(
      starter(
        [
          { at: 0.1, do: 'startForward' },
          { at: 0.3, do: 'coast' },
        ],
        {},
        false,
        steps,
      ),
      2,
    );
    expect(state.rotorResistance).toBe(3);
  });
});

describe('a delta machine that plugs in star', () => {
  it('is reconnected once no pole conducts, and back for the next start', () => {
    const plugging = advance(
      starter([{ at: 0.1, do: 'plug' }], { plugConnection: 'star' }, true),
      0.12,
    ).state;
    expect(plugging.windingWanted).toBe('star');
    expect(reconnectWinding(plugging, 0.12, false).state.winding).toBe('built');
    const after = reconnectWinding(plugging, 0.125, true);
    expect(after.state.winding).toBe('star');
    expect(told(after.events)).toEqual(['125 windingReconnected']);
    expect(reconnectWinding(after.state, 0.13, true).events).toEqual([]);
    const stopped = advance(crossThreshold(after.state, 0.4, 'forward', false), 1).state;
    const again = {
      ...stopped,
      agenda: [{ t: 2, kind: 'action', action: { at: 2, do: 'startForward' } }],
    } as const;
    expect(advance(again, 2).state.windingWanted).toBe('built');
  });

  it('stays in delta for a start against the rotation', () => {
    const started = starter([{ at: 0.1, do: 'startReverse' }], { plugConnection: 'star' }, true);
    expect(advance(started, 1).state.windingWanted).toBe('built');
  });
});

describe('a lost supply phase', () => {
  const lostB: Partial<StarterData> = { faults: [{ kind: 'lostPhase', phase: 'B', from: 0.05 }] };

  it('arcs until its current zero, and leaves two terminals', () => {
    const { state, events } = advance(starter([], lostB, true), 1);
    expect(told(events)).toEqual(['50 phaseLost B']);
    expect(conduction(state).kind).toBe('three');
    expect(clearableArcs(state)).toEqual([{ kind: 'line', phase: 1, terminal: 1 }]);
    const cleared = clearLine(state, 0.053, 1, 'its current zero').state;
    expect(conduction(cleared)).toEqual({ kind: 'two', connection: [0, -1, 2] });
  });

  it('behind the reversing contactor is looked for at the terminal it feeds there', () => {
    const { state } = advance(starter([{ at: 0.1, do: 'startReverse' }], lostB, false), 0.13);
    // The reversing contactor exchanges B and C: supply phase B is at terminal C. Nothing flowed when it was lost.
    const settled = extinguishDeadArcs(advance(starter([], lostB, false), 0.06).state, 0.06);
    expect(settled.state.lines).toEqual(['closed', 'open', 'closed']);
    const lost = { ...state, lines: settled.state.lines };
    expect(conduction(lost)).toEqual({ kind: 'two', connection: [0, 2, -1] });
  });

  it('ends at once where poles are ideal', () => {
    const ideal = { ...IDEAL_STARTER, ...lostB };
    const { state, events } = advance(initialStarter(ideal, [], 'runningForward'), 1);
    expect(told(events)).toEqual(['50 phaseLost B', '50 phaseClears B']);
    expect(conduction(state).kind).toBe('two');
  });

  it('takes the arcs of poles in series with it along', () => {
    const { state } = advance(starter([{ at: 0.04, do: 'coast' }], lostB, true), 0.06);
    expect(state.poles.forward).toEqual(['arcing', 'arcing', 'arcing']);
    const settled = extinguishDeadArcs(clearLine(state, 0.06, 1, 'its current zero').state, 0.06);
    expect(settled.state.poles.forward).toEqual(['arcing', 'open', 'arcing']);
  });
});

describe('a faulty pole', () => {
  it('that is welded does not part, and does not keep the starter from being idle', () => {
    const faults = [{ kind: 'weldedPole', contactor: 'forward', pole: 'A' }] as const;
    const { state, events } = advance(starter([{ at: 0.1, do: 'coast' }], { faults }, true), 1);
    expect(of(events, 'Parts')).toEqual(['112 poleParts forward B', '112 poleParts forward C']);
    const cleared = clearPole(clearPole(state, 0.12, 'forward', 1, '').state, 0.12, 'forward', 2, '').state;
    expect(cleared.poles.forward).toEqual(['closed', 'open', 'open']);
    expect(isIdle(cleared)).toBe(true);
  });

  it('that is welded in an exchanged phase makes a short circuit when the other contactor touches', () => {
    const faults = [{ kind: 'weldedPole', contactor: 'forward', pole: 'C' }] as const;
    const plugged = advance(starter([{ at: 0.1, do: 'plug' }], { faults }, true), 0.14).state;
    const cleared = clearPole(clearPole(plugged, 0.13, 'forward', 0, '').state, 0.13, 'forward', 1, '').state;
    expect(conduction(advance(cleared, 0.2).state)).toEqual({ kind: 'shortCircuit', terminal: 2 });
  });

  it('that is dead never touches', () => {
    const faults = [{ kind: 'deadPole', contactor: 'reverse', pole: 'B' }] as const;
    const { state, events } = advance(starter([{ at: 0.1, do: 'startReverse' }], { faults }), 1);
    expect(of(events, 'Touches')).toEqual(['122 poleTouches reverse A', '122 poleTouches reverse C']);
    expect(conduction(state)).toEqual({ kind: 'two', connection: [0, -1, 1] });
  });
});
