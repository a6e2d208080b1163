import { describe, expect, it } from 'vitest';
import { assertScenario } from '../../../src/scenario/assertScenario.ts';
import type {
  Action,
  ButtonName,
  ControlData,
  Scenario,
  StarterData,
  StarterFault,
  ZeroSpeedSwitchData,
} from '../../../src/scenario/scenario.ts';
import { ScenarioError } from '../../../src/scenario/scenarioError.ts';
import { PLAIN_CONTROL } from '../../support/scenarios.ts';
import { controlledScenario } from './controlledScenario.ts';
import { minimalScenario, parseScenario } from './minimalScenario.ts';

const controlled = parseScenario(controlledScenario());
const commanded = parseScenario(minimalScenario());
const SWITCH: ZeroSpeedSwitchData = { dropOutSpeed: 5, pickUpSpeed: 10, delay: 0 };

/** A value that the types forbid and a program without types may hand over. */
const wrong = (value: unknown): never => value as never;

const withStarter = (starter: Partial<StarterData>, base = controlled): Scenario => ({
  ...base,
  starter: { ...base.starter, ...starter },
});
const withControl = (control: Partial<ControlData>, starter: Partial<StarterData> = {}): Scenario =>
  withStarter({ ...starter, control: { ...PLAIN_CONTROL, ...control } });
const withFaults = (...faults: readonly StarterFault[]) => withStarter({ faults });
const withActions = (...actions: readonly Action[]): Scenario => ({ ...controlled, actions });
const press = (button: ButtonName, at = 0): Action => ({ at, do: 'press', button });

function problemsOf(scenario: Scenario) {
  try {
    assertScenario(scenario);
    return [];
  } catch (error) {
    if (error instanceof ScenarioError) return error.problems;
    throw error;
  }
}

const overload = { setting: 10, tripClass: '10', start: 'cold', memory: 'kept' } as const;

const IMPOSSIBLE: readonly (readonly [string, Scenario, string])[] = [
  ['a control circuit that is a word', withStarter({ control: wrong('wired') }), 'starter.control'],
  ['an unknown scheme', withControl({ scheme: wrong('plugging') }), 'starter.control.scheme'],
  [
    'a relay that is neither there nor not',
    withControl({ memoryRelay: wrong(1) }),
    'starter.control.memoryRelay',
  ],
  ['a negative timer', withControl({ changeoverTimer: -1 }), 'starter.control.changeoverTimer'],
  ['a relay time that is no number', withControl({ relayTime: Number.NaN }), 'starter.control.relayTime'],
  ['an endless scan', withControl({ scanTime: Infinity }), 'starter.control.scanTime'],
  [
    'category 2',
    withControl({ emergencyStop: wrong({ category: 2 }) }),
    'starter.control.emergencyStop.category',
  ],
  [
    'category 1 without a limit',
    withControl({ scheme: 'jog', emergencyStop: wrong({ category: 1 }) }, { zeroSpeedSwitch: SWITCH }),
    'starter.control.emergencyStop.limit',
  ],
  [
    'coils that drop out above their pick-up voltage',
    withControl({ coilVoltage: { pickUp: 0.5, dropOut: 0.6 } }),
    'starter.control.coilVoltage.dropOut',
  ],
  [
    'coils at twice the voltage',
    withControl({ coilVoltage: { pickUp: 2, dropOut: 0.6 } }),
    'starter.control.coilVoltage.pickUp',
  ],
  ['no setting', withControl({ overload: { ...overload, setting: 0 } }), 'starter.control.overload.setting'],
  [
    'an unknown class',
    withControl({ overload: { ...overload, tripClass: wrong('15') } }),
    'starter.control.overload.tripClass',
  ],
  [
    'a relay that is lukewarm',
    withControl({ overload: { ...overload, start: wrong('lukewarm') } }),
    'starter.control.overload.start',
  ],
  [
    'a memory that fades',
    withControl({ overload: { ...overload, memory: wrong('fading') } }),
    'starter.control.overload.memory',
  ],
  ['a delay that nothing would heed', withStarter({ changeoverDelay: 0.03 }), 'starter.changeoverDelay'],
  ['a scheme that brakes without a switch', withControl({ scheme: 'plugStop' }), 'starter.zeroSpeedSwitch'],
  ['anti-plugging without a switch', withControl({ scheme: 'antiPlugging' }), 'starter.zeroSpeedSwitch'],
  [
    'a memory relay of a scheme that never brakes',
    withControl({ memoryRelay: true }),
    'starter.control.memoryRelay',
  ],
  [
    'category 1 of a scheme that never brakes',
    withControl({ emergencyStop: { category: 1, limit: 2 } }),
    'starter.control.emergencyStop.category',
  ],
  [
    'a lockout without a control circuit',
    withStarter({ zeroSpeedSwitch: { ...SWITCH, lockout: true } }, commanded),
    'starter.zeroSpeedSwitch.lockout',
  ],
  [
    'a lockout that is false',
    withStarter({ zeroSpeedSwitch: { ...SWITCH, lockout: wrong(false) } }),
    'starter.zeroSpeedSwitch.lockout',
  ],
  [
    'a switch without hysteresis',
    withStarter({ zeroSpeedSwitch: { ...SWITCH, dropOutSpeed: 10 } }),
    'starter.zeroSpeedSwitch.dropOutSpeed',
  ],
  [
    'a switch without hysteresis in reverse',
    withStarter({ zeroSpeedSwitch: { ...SWITCH, reverse: { dropOutSpeed: 10, pickUpSpeed: 10 } } }),
    'starter.zeroSpeedSwitch.reverse.dropOutSpeed',
  ],
  [
    'inching of a machine that runs at first',
    { ...withControl({ scheme: 'jog' }, { zeroSpeedSwitch: SWITCH }), initial: 'runningForward' },
    'initial',
  ],
  ['an unknown fault', withFaults(wrong({ kind: 'fire' })), 'starter.faults.0.kind'],
  ['a fault that is nothing', withFaults(wrong(null)), 'starter.faults.0.kind'],
  [
    'a third contactor',
    withFaults({ kind: 'weldedContactor', contactor: wrong('bypass') }),
    'starter.faults.0.contactor',
  ],
  [
    'a switch that fails somehow',
    withFaults({ kind: 'zeroSpeedSwitch', mode: wrong('broken') }),
    'starter.faults.0.mode',
  ],
  [
    'a switch that fails and is not there',
    withFaults({ kind: 'zeroSpeedSwitch', mode: 'stuckOpen' }),
    'starter.faults.0',
  ],
  [
    'a contact that is stuck ajar',
    withFaults({ kind: 'auxiliaryContact', contactor: 'forward', contact: 'holdIn', stuck: wrong('ajar') }),
    'starter.faults.0.stuck',
  ],
  [
    'a supply lost before the beginning',
    withFaults({ kind: 'supplyLost', from: -1, until: null }),
    'starter.faults.0.from',
  ],
  [
    'a supply back before it is lost',
    withFaults({ kind: 'supplyLost', from: 2, until: 1 }),
    'starter.faults.0.until',
  ],
  [
    'an overload relay that is not there and never trips',
    withFaults({ kind: 'overloadNeverTrips' }),
    'starter.faults.0',
  ],
  [
    'a missing interlock without a control circuit',
    withStarter({ faults: [{ kind: 'mechanicalInterlockMissing' }] }, commanded),
    'starter.faults.0',
  ],
  [
    'a contactor welded as a whole and in part',
    withFaults(
      { kind: 'weldedContactor', contactor: 'forward' },
      { kind: 'weldedPole', contactor: 'forward', pole: 'A' },
    ),
    'starter.faults.1',
  ],
  ['a command beside a control circuit', withActions({ at: 0, do: 'plug' }), 'actions.0.do'],
  ['a button without a control circuit', { ...commanded, actions: [press('forward')] }, 'actions.0.do'],
  ['an unknown button', withActions(press(wrong('start'))), 'actions.0.button'],
  ['a button that every object has', withActions(press(wrong('toString'))), 'actions.0.button'],
  ['a button that is turned', withActions({ at: 0, do: wrong('turn'), button: 'stop' }), 'actions.0.do'],
  ['an unknown command', { ...commanded, actions: [{ at: 0, do: wrong('brake') }] }, 'actions.0.do'],
  ['buttons out of order', withActions(press('forward', 1), press('stop', 0)), 'actions.1.at'],
  ['a reset button that is not there', withActions(press('reset')), 'actions.0.do'],
  ['an overload relay tripped that is not there', withActions(press('overloadTest')), 'actions.0.do'],
  [
    'a test button that is let go, which no file can say',
    {
      ...withControl({ overload }),
      actions: [{ at: 0, do: 'release', button: 'overloadTest' }],
    },
    'actions.0.do',
  ],
  [
    'commands at one instant',
    {
      ...commanded,
      actions: [
        { at: 0, do: 'startForward' },
        { at: 0, do: 'coast' },
      ],
    },
    'actions.1.at',
  ],
];

describe('a control circuit put together by a program', () => {
  it.each(IMPOSSIBLE)('with %s is refused by its path', (_, scenario, path) => {
    expect(problemsOf(scenario).map((problem) => problem.path)).toEqual([path]);
  });

  it('with two buttons at one instant is accepted', () => {
    expect(problemsOf(withActions(press('forward'), press('reverse')))).toEqual([]);
  });

  it('is told the same of a contradiction as a person who writes a file', () => {
    const [problem] = problemsOf(withControl({ scheme: 'plugStop' }));
    expect(problem).toMatchObject({ code: 'conflict', line: null });
    expect(problem?.message).toContain('a device working only on time is not permitted by IEC 60204-1');
    expect(problem?.expected).toContain('dropOutSpeed: 50 rpm');
  });

  it('is refused with all its problems at once', () => {
    const scenario = withControl({ memoryRelay: true, emergencyStop: { category: 1, limit: 2 } });
    expect(problemsOf({ ...scenario, actions: [press('reset')] }).map(({ path }) => path)).toEqual([
      'starter.control.memoryRelay',
      'starter.control.emergencyStop.category',
      'actions.0.do',
    ]);
  });
});
