import { describe, expect, it } from 'vitest';
import type { SchemeName, StarterFault } from '../../../src/scenario/scenario.ts';
import { ScenarioError } from '../../../src/scenario/scenarioError.ts';
import {
  commissioningSheet,
  commissioningTests,
  runnableBench,
} from '../../../src/survey/commissioning/commissioningSheet.ts';
import { scenarioOf } from '../../support/scenarios.ts';
import { KRAUSE } from '../../support/textbookMachines.ts';
import { expectWithin } from '../../support/tolerance.ts';
import { benchScenario, type ControlOptions, IMPROVED, trialBench } from './commissioningBenches.ts';

const SCHEMES: readonly SchemeName[] = [
  'throughStop',
  'direct',
  'plugStop',
  'plugStopBoth',
  'antiPlugging',
  'jog',
];
const formOf = (scheme: SchemeName) => IMPROVED.find((form) => form.scheme === scheme)!;
const NOBODY: readonly SchemeName[] = [];
const WITHOUT_BLOCK = SCHEMES.filter((scheme) => scheme !== 'antiPlugging');

/** What the sheet must test, by which row, and the schemes that have no such thing. */
const ITEMS: readonly (readonly [string, string, readonly SchemeName[]])[] = [
  ['normal start forward', 'start.forward', NOBODY],
  ['normal start reverse', 'start.reverse', ['plugStop']],
  ['opposite button while running forward', 'reverse.forward', ['plugStop']],
  ['opposite button while running reverse', 'reverse.reverse', ['plugStop']],
  ['stop from forward, braked where the scheme brakes', 'stop.forward', NOBODY],
  ['stop from reverse', 'stop.reverse', ['plugStop']],
  ['emergency stop at rest', 'emergencyStop.atRest', NOBODY],
  ['emergency stop while starting', 'emergencyStop.starting', NOBODY],
  ['emergency stop running forward', 'emergencyStop.forward', NOBODY],
  ['emergency stop running reverse', 'emergencyStop.reverse', ['plugStop']],
  ['emergency stop while plugging', 'emergencyStop.plugging', ['antiPlugging']],
  ['overload trip while running', 'overload.running', NOBODY],
  ['overload trip while plugging', 'overload.plugging', ['antiPlugging']],
  ['supply lost and back while running', 'supply.running', NOBODY],
  ['supply lost and back while plugging', 'supply.plugging', ['antiPlugging']],
  ['start button held while the supply returns', 'supply.buttonHeld', NOBODY],
  ['both buttons at once', 'handling.bothButtons', NOBODY],
  ['start button held over a stop', 'handling.heldOverStop', NOBODY],
  ['opposite button hit again and again', 'handling.repeatedHits', NOBODY],
  ['plugging blocked until the machine is slow', 'reverse.held', WITHOUT_BLOCK],
  ['forward contactor welded', 'fault.weldedContactor', NOBODY],
  ['pole welded', 'fault.weldedPole', NOBODY],
  ['zero-speed switch stuck closed', 'fault.zeroSpeedSwitch.stuckClosed', ['throughStop', 'direct']],
  ['zero-speed switch stuck open', 'fault.zeroSpeedSwitch.stuckOpen', ['throughStop', 'direct']],
  ['zero-speed switch does not pick up', 'fault.zeroSpeedSwitch.doesNotPickUp', ['throughStop', 'direct']],
  ['hold-in contact failed open', 'fault.holdInOpen', ['jog']],
  ['hold-in contact of forward failed closed', 'fault.holdInClosed.forward', ['jog']],
  ['hold-in contact of reverse failed closed', 'fault.holdInClosed.reverse', ['jog', 'plugStop']],
  ['interlock contact failed closed', 'fault.interlockClosed', NOBODY],
  ['the same without mechanical interlock', 'fault.interlockClosed.noMechanical', NOBODY],
  ['mechanical interlock missing', 'fault.mechanicalInterlockMissing', NOBODY],
  ['overload never trips', 'fault.overloadNeverTrips', NOBODY],
  ['phase lost while running', 'fault.lostPhase.running', NOBODY],
  ['phase lost while plugging', 'fault.lostPhase.plugging', ['antiPlugging']],
];

/** The list of a starter, with instants that need no run. */
function listOf(options: ControlOptions): readonly string[] {
  const scenario = benchScenario(options);
  const control = scenario.starter.control!;
  const times = {
    start: () => ({ half: 0.3, full: 0.6 }),
    plug: () => ({ half: 0.2, rest: 0.4 }),
    left: () => ({ switchOpens: null, stands: null }),
  };
  return commissioningTests({ ...runnableBench(scenario, control), times }).map(({ id }) => id);
}

describe('the list of tests', () => {
  it.each(SCHEMES)('of %s has every item that the scheme can show, and each row once', (scheme) => {
    const ids = listOf(formOf(scheme));
    expect(new Set(ids).size).toBe(ids.length);
    for (const [item, id, missing] of ITEMS)
      expect(`${item}: ${ids.includes(id)}`).toBe(`${item}: ${!missing.includes(scheme)}`);
  });

  it('tests what is there: a reset button, an overload relay, a mechanical interlock', () => {
    expect(listOf({ scheme: 'direct', readyRelay: true })).toContain('start.withoutReset');
    expect(listOf({ scheme: 'direct' })).not.toContain('start.withoutReset');
    const bare = listOf({ scheme: 'direct', overload: null, mechanicalInterlock: false });
    expect(bare.filter((id) => id.startsWith('overload') || id === 'fault.overloadNeverTrips')).toEqual([]);
    expect(bare).not.toContain('fault.mechanicalInterlockMissing');
    expect(bare).toContain('fault.interlockClosed.noMechanical');
  });
});

describe('a sheet', () => {
  it.each(IMPROVED)(
    'of $scheme with the relays that its reservations ask for agrees in every row',
    (form) => {
      const { rows } = commissioningSheet(benchScenario(form));
      expect(rows.filter(({ verdict }) => verdict.kind !== 'agrees').map(({ test }) => test.id)).toEqual([]);
      const dangerous = rows.filter(({ dangers }) => dangers.length > 0).map(({ test }) => test.group);
      expect(new Set(dangerous)).toEqual(new Set(['faults']));
    },
  );

  it('of the textbook plug stop calls dangerous what closes by itself on a coasting machine', () => {
    const bench = trialBench(benchScenario({ scheme: 'plugStop' }));
    for (const [id, when] of [
      ['supply.running', 'the supply is back'],
      ['supply.plugging', 'the supply is back'],
      ['emergencyStop.forward', 'the emergency stop is released'],
      ['overload.running', 'the overload relay is reset'],
      ['supply.buttonHeld', 'the supply is back and a button is held'],
    ] as const) {
      const row = bench.row(id);
      expect(row.verdict).toEqual({ kind: 'differs', unmet: [`nothing closes by itself when ${when}`] });
      expect(row.dangers).toEqual([`A contactor closes by itself when ${when}.`]);
    }
    expect(bench.row('stop.forward').verdict).toEqual({ kind: 'agrees' });
  });

  it('of category 1 brakes on the emergency stop and is dead after it', () => {
    const { row } = trialBench(
      benchScenario({
        scheme: 'plugStopBoth',
        memoryRelay: true,
        readyRelay: true,
        emergencyStop: { category: 1, limit: 3 },
      }),
    );
    for (const state of ['starting', 'forward', 'reverse', 'plugging']) {
      const { verdict, shows, test } = row(`emergencyStop.${state}`);
      expect(verdict).toEqual({ kind: 'agrees' });
      expect(test.requirements.map(({ words }) => words)).toContain('comes to rest, both contactors out');
      expect(shows?.end).toEqual({ kind: 'rest' });
    }
  });

  it('needs a control circuit', () => {
    expect(() => commissioningSheet(scenarioOf(KRAUSE.hp3))).toThrow(ScenarioError);
    expect(() => commissioningSheet(scenarioOf(KRAUSE.hp3))).toThrow(/starter\.control: is missing/u);
  });
});

const welded: StarterFault = { kind: 'weldedContactor', contactor: 'forward' };
const weldedReverse: StarterFault = { kind: 'weldedContactor', contactor: 'reverse' };
const interlockClosed: StarterFault = {
  kind: 'auxiliaryContact',
  contactor: 'forward',
  contact: 'interlock',
  stuck: 'closed',
};
const holdIn = (stuck: 'open' | 'closed'): StarterFault => ({
  kind: 'auxiliaryContact',
  contactor: 'forward',
  contact: 'holdIn',
  stuck,
});
const noMechanical: StarterFault = { kind: 'mechanicalInterlockMissing' };
const zeroSpeed = (mode: 'stuckClosed' | 'stuckOpen' | 'doesNotPickUp'): StarterFault => ({
  kind: 'zeroSpeedSwitch',
  mode,
});

/** Scheme, row, what is wrong and nobody says so, and the requirements that must then fail. */
const PLANTED: readonly (readonly [SchemeName, string, readonly StarterFault[], readonly string[]])[] = [
  [
    'direct',
    'start.forward',
    [holdIn('open')],
    ['runs forward at its steady speed', 'the forward contactor stays in when the button is let go'],
  ],
  [
    'direct',
    'reverse.forward',
    [welded],
    ['the forward contactor drops out', 'runs reverse at its steady speed'],
  ],
  [
    'throughStop',
    'reverse.forward',
    [interlockClosed, noMechanical],
    [
      'nothing happens until stop is pressed',
      'runs forward at its steady speed',
      'the reverse contactor stays out',
    ],
  ],
  [
    'antiPlugging',
    'reverse.forward',
    [zeroSpeed('doesNotPickUp')],
    [
      'it is not braked: the reverse contactor stays out',
      'coasts until its load stops it, both contactors out',
    ],
  ],
  [
    'antiPlugging',
    'reverse.held',
    [zeroSpeed('doesNotPickUp')],
    ['the reverse contactor waits until the zero-speed switch opens'],
  ],
  [
    'plugStop',
    'stop.forward',
    [zeroSpeed('stuckClosed')],
    [
      'braking ends when the zero-speed switch opens',
      'comes to rest, both contactors out',
      'does not run up in reverse',
    ],
  ],
  [
    'plugStop',
    'stop.forward',
    [zeroSpeed('stuckOpen')],
    ['the reverse contactor brakes', 'braking ends when the zero-speed switch opens'],
  ],
  [
    'jog',
    'stop.forward',
    [welded],
    [
      'the forward contactor drops out',
      'the reverse contactor brakes',
      'braking ends when the zero-speed switch opens',
      'comes to rest, both contactors out',
    ],
  ],
  [
    'direct',
    'emergencyStop.forward',
    [welded],
    [
      'both coils drop at once and both contactors go out',
      'coasts until its load stops it, both contactors out',
      'nothing closes by itself when the emergency stop is released',
    ],
  ],
  [
    'plugStop',
    'emergencyStop.plugging',
    [weldedReverse],
    [
      'both coils drop at once and both contactors go out',
      'coasts until its load stops it, both contactors out',
      'nothing closes by itself when the emergency stop is released',
    ],
  ],
  [
    'throughStop',
    'overload.running',
    [welded],
    [
      'both coils drop at once and both contactors go out',
      'coasts until its load stops it, both contactors out',
      'nothing closes by itself when the overload relay is reset',
    ],
  ],
  [
    'plugStopBoth',
    'handling.repeatedHits',
    [interlockClosed, noMechanical],
    ['the two contactors are never in together', 'runs forward at its steady speed'],
  ],
];

describe('a requirement is not met when', () => {
  it.each(PLANTED)('%s, %s, runs with something wrong', (scheme, id, faults, unmet) => {
    const { verdict } = trialBench(benchScenario(formOf(scheme))).rowWith(id, faults);
    expect(verdict).toEqual({ kind: 'differs', unmet });
  });

  it('the ready relay is not there that the row is about', () => {
    const { rowBy } = trialBench(benchScenario({ scheme: 'direct', readyRelay: true }));
    const { verdict } = rowBy('start.withoutReset', {}, benchScenario({ scheme: 'direct' }));
    expect(verdict).toEqual({
      kind: 'differs',
      unmet: ['neither contactor picks up before reset has been pressed'],
    });
  });

  it('an armature stays in over a loss of the supply', () => {
    const { tests, rowWith } = trialBench(benchScenario(formOf('direct')));
    const { faults } = tests.find(({ id }) => id === 'supply.running')!;
    expect(rowWith('supply.running', [...faults, welded]).verdict).toMatchObject({
      unmet: expect.arrayContaining(['both contactors drop out when the supply fails']),
    });
  });

  it('stop is not pressed that the row is about', () => {
    const { tests, rowBy } = trialBench(benchScenario(formOf('direct')));
    const actions = tests
      .find(({ id }) => id === 'handling.heldOverStop')!
      .actions.filter((action) => action.button !== 'stop');
    expect(rowBy('handling.heldOverStop', { actions }).verdict).toEqual({
      kind: 'differs',
      unmet: ['while stop is pressed nothing drives the machine'],
    });
  });

  it('the opposite button is not pressed on a coasting machine that should be plugged', () => {
    const { tests, rowBy } = trialBench(benchScenario(formOf('throughStop')));
    const actions = tests
      .find(({ id }) => id === 'reverse.afterStop')!
      .actions.filter((action) => action.button !== 'reverse');
    expect(rowBy('reverse.afterStop', { actions }).verdict).toMatchObject({
      unmet: [
        'the reverse contactor closes while the machine turns forward',
        'runs reverse at its steady speed',
      ],
    });
  });

  it('a category 1 stop brakes longer than the limit that the row knows', () => {
    const stop = (limit: number) =>
      benchScenario({ ...formOf('plugStop'), emergencyStop: { category: 1, limit } });
    const { rowBy } = trialBench(stop(0.1));
    const { verdict } = rowBy('emergencyStop.forward', { faults: [zeroSpeed('stuckClosed')] }, stop(0.8));
    expect(verdict).toMatchObject({
      unmet: expect.arrayContaining(['both coils are dead when the time limit has run out']),
    });
  });

  it('both armatures arrive where one should win', () => {
    const { rowWith } = trialBench(benchScenario(formOf('throughStop')));
    expect(rowWith('handling.bothButtons', [interlockClosed, noMechanical]).verdict).toEqual({
      kind: 'differs',
      unmet: ['at most one of the two contactors goes in', 'the two contactors are never in together'],
    });
  });

  it('the overload relay ends a start that takes too long for its setting', () => {
    const scenario = benchScenario({
      scheme: 'direct',
      overload: { setting: 1.5, tripClass: '5', start: 'warm', memory: 'kept' },
    });
    const { verdict, shows } = trialBench(scenario).row('start.forward');
    expect(verdict.kind).toBe('differs');
    expect(shows?.sequence.items.map(({ words }) => words)).toContain('overload relay trips');
  });

  it('the load drives the machine on with nothing connected', () => {
    const scenario = benchScenario({ scheme: 'direct' });
    const hoist = {
      ...scenario,
      load: { ...scenario.load, torques: [{ kind: 'gravity', torque: -4 } as const] },
    };
    const { verdict, dangers } = trialBench(hoist).row('stop.forward');
    expect(verdict).toEqual({
      kind: 'differs',
      unmet: ['coasts until its load stops it, both contactors out'],
    });
    expect(dangers).toEqual(['The load drives the machine on with nothing connected.']);
  });
});

describe('a fault row', () => {
  /** Rows whose expectation is that the fault changes nothing: they agree without it too. */
  const HARMLESS: readonly string[] = [
    'plugStop fault.mechanicalInterlockMissing',
    'antiPlugging fault.zeroSpeedSwitch.stuckOpen',
    'antiPlugging fault.interlockClosed',
    'antiPlugging fault.mechanicalInterlockMissing',
    'antiPlugging fault.interlockClosed.noMechanical',
  ];

  it.each(['plugStop', 'antiPlugging'] as const)('of %s differs on a sound machine', (scheme) => {
    const { tests, rowWith } = trialBench(benchScenario(formOf(scheme)));
    const faulty = tests.filter(({ group }) => group === 'faults').map(({ id }) => id);
    const agreeing = faulty.filter((id) => rowWith(id, []).verdict.kind === 'agrees');
    expect(agreeing.map((id) => `${scheme} ${id}`)).toEqual(
      HARMLESS.filter((name) => name.startsWith(`${scheme} `)),
    );
  });

  it.each<readonly [SchemeName, string, readonly StarterFault[], readonly string[]]>([
    [
      'direct',
      'fault.weldedContactor',
      [],
      ['the forward contactor stays in though its coil is released', 'runs on forward'],
    ],
    [
      'direct',
      'fault.weldedPole',
      [welded],
      ['the motor is off while stop is pressed: one pole alone carries no current'],
    ],
    ['throughStop', 'fault.interlockClosed.noMechanical', [], ['both coils are energised together']],
    [
      'direct',
      'fault.interlockClosed',
      [],
      ['the two contactors are still not in together: the mechanical interlock makes one wait for the other'],
    ],
    [
      'plugStop',
      'fault.mechanicalInterlockMissing',
      [interlockClosed, noMechanical],
      ['no short circuit: the arcs end before the poles touch'],
    ],
  ])('of %s, %s, does not agree when something else is wrong', (scheme, id, faults, unmet) => {
    expect(trialBench(benchScenario(formOf(scheme))).rowWith(id, faults).verdict).toMatchObject({
      kind: 'differs',
      unmet: expect.arrayContaining([...unmet]),
    });
  });

  it('of an overload relay that never trips does not agree when it trips', () => {
    const { tests, rowBy } = trialBench(benchScenario(formOf('direct')));
    const { faults } = tests.find(({ id }) => id === 'fault.overloadNeverTrips')!;
    const quick = benchScenario({
      ...formOf('direct'),
      overload: { setting: 1.5, tripClass: '5', start: 'warm', memory: 'kept' },
    });
    const sound = faults.filter(({ kind }) => kind !== 'overloadNeverTrips');
    expect(rowBy('fault.overloadNeverTrips', { faults: sound }, quick).verdict).toMatchObject({
      unmet: expect.arrayContaining(['the overload relay does not trip']),
    });
  });

  it('says of a dead time that cannot be enough that two phases are short-circuited, and they are', () => {
    const scenario = benchScenario({ scheme: 'direct' });
    const quick = { ...scenario, starter: { ...scenario.starter, closingTime: 0.006, openingTime: 0.009 } };
    const { verdict, test, shows } = trialBench(quick).row('fault.interlockClosed.noMechanical');
    expect(test.requirements.map(({ words }) => words)).toEqual([
      'the poles touch before the others have parted: two phases are short-circuited',
    ]);
    expect(verdict).toEqual({ kind: 'agrees' });
    expect(shows?.end.kind).toBe('shortCircuit');
    expect(shows?.readings.operation).toBe(null);
  });

  it('says of a dead time that arcs may outlast that it depends on the instant, whichever it is', () => {
    const scenario = benchScenario({ scheme: 'direct' });
    const close = { ...scenario, starter: { ...scenario.starter, closingTime: 0.012, openingTime: 0.009 } };
    const { row, rowWith } = trialBench(close);
    const { verdict, dangers } = row('fault.interlockClosed.noMechanical');
    expect(verdict).toEqual({ kind: 'agrees' });
    expect(dangers[0]).toMatch(/at some instants of switching two phases are short-circuited/u);
    // With sound contacts the coil waits for the armature: 12 ms from parting to touch instead of 3.
    expect(rowWith('fault.interlockClosed.noMechanical', []).verdict).toEqual({
      kind: 'differs',
      unmet: [
        'the reverse poles touch as soon as their closing time allows, whether the arcs have ended or not',
      ],
    });
  });

  it('says of a dead time that is longer than any arc that there is no short circuit, and there is none', () => {
    const scenario = benchScenario({ scheme: 'direct' });
    const slow = { ...scenario, starter: { ...scenario.starter, closingTime: 0.03, openingTime: 0.009 } };
    const { verdict, shows } = trialBench(slow).row('fault.interlockClosed.noMechanical');
    expect(verdict).toEqual({ kind: 'agrees' });
    // Parting to touch is 30 − 9 ms; the last arc ends within half a period.
    expect(shows?.durations[0]?.value).toBeGreaterThan(0.021 - 1 / 120);
    expect(shows?.durations[0]?.value).toBeLessThan(0.021);
  });
});

describe('the numbers', () => {
  it('change with the inertia: start and braking take twice as long with twice as much', () => {
    const light = trialBench(benchScenario({ scheme: 'plugStop' }, 0.3));
    const heavy = trialBench(benchScenario({ scheme: 'plugStop' }, 0.6));
    const time = (bench: typeof light, id: string) => bench.row(id).shows!.durations[0]!.value!;
    // From the touch on; the contactor closes in 18 ms, the change-over takes 9 ms more.
    const closing = { 'start.forward': 0.018, 'stop.forward': 0.027 };
    for (const id of ['start.forward', 'stop.forward'] as const) {
      const ratio = (time(heavy, id) - closing[id]) / (time(light, id) - closing[id]);
      // Braking begins with a transient and a dead time, in which friction slows the light machine more.
      expectWithin(ratio, 2, { relative: id === 'start.forward' ? 0.03 : 0.12 }, id);
    }
    const inrush = (bench: typeof light) => bench.row('start.forward').shows!.readings.operation!.hall.value;
    expect(inrush(heavy)).not.toBe(inrush(light));
  });

  it('are missing where the integration does not come to an end, with the reason', () => {
    const scenario = benchScenario({ scheme: 'plugStop' });
    const short = { ...scenario, solver: { ...scenario.solver, maxSteps: 5 } };
    const { verdict, shows, dangers } = trialBench(short).row('start.forward');
    expect(verdict.kind).toBe('notSimulated');
    expect(verdict.kind === 'notSimulated' && verdict.reason).toMatch(/steps/u);
    expect([shows, dangers]).toEqual([null, []]);
  });

  it('are missing for a direction in which the machine cannot drive its load, and are there for the other', () => {
    const scenario = benchScenario({ scheme: 'direct' });
    const ramp = {
      kind: 'table' as const,
      mirrored: false,
      points: [
        { speed: -400, torque: -400 },
        { speed: 0, torque: 0 },
        { speed: 400, torque: 10 },
      ],
    };
    const { row } = trialBench({ ...scenario, load: { ...scenario.load, torques: [ramp] } });
    expect(row('stop.reverse').verdict.kind).toBe('notSimulated');
    expect(row('start.forward').verdict.kind).toBe('agrees');
  });
});
