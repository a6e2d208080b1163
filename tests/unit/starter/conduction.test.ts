import { describe, expect, it } from 'vitest';
import type { StarterData } from '../../../src/scenario/scenario.ts';
import { clearableArcs, conduction, supplyPhases } from '../../../src/starter/conduction.ts';
import { extinguishDeadArcs } from '../../../src/starter/extinguish.ts';
import { initialStarter, type Poles, type StarterState } from '../../../src/starter/starter.ts';
import { ARCING_STARTER } from '../../support/scenarios.ts';

const OPEN: Poles = ['open', 'open', 'open'];
const CLOSED: Poles = ['closed', 'closed', 'closed'];
const ARCING: Poles = ['arcing', 'arcing', 'arcing'];

function withPoles(forward: Poles, reverse: Poles, change: Partial<StarterData> = {}): StarterState {
  return { ...initialStarter({ ...ARCING_STARTER, ...change }, [], 'rest'), poles: { forward, reverse } };
}

describe('supplyPhases', () => {
  it.each([
    ['AB', [1, 0, 2]],
    ['BC', [0, 2, 1]],
    ['CA', [2, 1, 0]],
  ] as const)('exchanges %s behind the reversing contactor', (exchangedPhases, phases) => {
    const data = { ...ARCING_STARTER, exchangedPhases };
    expect(supplyPhases(data, 'reverse')).toEqual(phases);
    expect(supplyPhases(data, 'forward')).toEqual([0, 1, 2]);
  });
});

describe('the conducting set', () => {
  it.each([
    ['all open', OPEN, OPEN, 'none'],
    ['forward closed', CLOSED, OPEN, 'three'],
    ['reverse closed', OPEN, CLOSED, 'three'],
    ['forward arcing', ARCING, OPEN, 'three'],
    ['one pole cleared', ['open', 'arcing', 'arcing'], OPEN, 'two'],
    ['one pole touching', ['open', 'closed', 'open'], OPEN, 'none'],
    ['two poles touching', ['closed', 'closed', 'open'], OPEN, 'two'],
    ['common pole of both contactors', ['arcing', 'open', 'open'], CLOSED, 'three'],
    [
      'B still arcs, reverse A and C closed',
      ['open', 'arcing', 'open'],
      ['closed', 'open', 'closed'],
      'three',
    ],
  ] as const)('%s', (_name, forward, reverse, kind) => {
    expect(conduction(withPoles(forward, reverse)).kind).toBe(kind);
  });

  it('names the supply phase behind each terminal', () => {
    expect(conduction(withPoles(OPEN, CLOSED))).toEqual({ kind: 'three', connection: [0, 2, 1] });
    expect(conduction(withPoles(['open', 'arcing', 'arcing'], OPEN))).toEqual({
      kind: 'two',
      connection: [-1, 1, 2],
    });
    // B still on its own phase while A and C are on the exchanged ones: two terminals on phase B.
    const mixed = withPoles(['open', 'arcing', 'open'], ['closed', 'open', 'closed']);
    expect(conduction(mixed)).toEqual({ kind: 'three', connection: [0, 1, 1] });
  });

  it.each([
    ['BC', 0, false],
    ['BC', 1, true],
    ['BC', 2, true],
    ['AB', 0, true],
    ['AB', 1, true],
    ['AB', 2, false],
    ['CA', 1, false],
    ['CA', 2, true],
  ] as const)(
    'with %s exchanged, poles of both contactors on terminal %d are a short circuit: %s',
    (exchangedPhases, terminal, fault) => {
      const on = (k: number): Poles => [
        k === 0 ? 'arcing' : 'open',
        k === 1 ? 'arcing' : 'open',
        k === 2 ? 'arcing' : 'open',
      ];
      const found = conduction(withPoles(on(terminal), on(terminal), { exchangedPhases }));
      expect(found.kind === 'shortCircuit').toBe(fault);
      if (fault) expect(found).toEqual({ kind: 'shortCircuit', terminal });
    },
  );
});

describe('clearableArcs', () => {
  it('are those that arc and whose minimum arcing time is over', () => {
    const state: StarterState = {
      ...withPoles(['arcing', 'arcing', 'closed'], OPEN),
      mayClear: { forward: [false, true, true], reverse: [false, false, false] },
    };
    expect(clearableArcs(state)).toEqual([{ kind: 'pole', contactor: 'forward', pole: 1 }]);
  });
});

describe('extinguishDeadArcs', () => {
  it('ends the arc of a pole whose circuit another pole has opened', () => {
    const { state, events } = extinguishDeadArcs(withPoles(['open', 'open', 'arcing'], OPEN), 0.3);
    expect(state.poles.forward).toEqual(OPEN);
    expect(events.map((event) => [event.kind, event.phase, event.t])).toEqual([['poleClears', 'C', 0.3]]);
  });

  it('ends the arc on the common phase when the other contactor takes its current over', () => {
    const { state } = extinguishDeadArcs(withPoles(['arcing', 'open', 'open'], CLOSED), 0.3);
    expect(state.poles).toEqual({ forward: OPEN, reverse: CLOSED });
  });

  it('leaves two arcs that carry current alone', () => {
    const state = withPoles(['open', 'arcing', 'arcing'], OPEN);
    expect(extinguishDeadArcs(state, 0.3)).toEqual({ state, events: [] });
  });
});
