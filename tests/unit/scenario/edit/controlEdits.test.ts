import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../../../src/estimate/parseScenario.ts';
import { applyEdits } from '../../../../src/scenario/edit/applyEdits.ts';
import type { Edit } from '../../../../src/scenario/edit/edit.ts';
import type { SchemeName, StarterFault } from '../../../../src/scenario/scenario.ts';
import { CIRCUITS, edited, example, SCHEMES } from './editing.ts';

describe('a control circuit', () => {
  it.each(CIRCUITS.flatMap((name) => SCHEMES.map((scheme) => [name, scheme] as const)))(
    'can be given to any example: %s, %s',
    (name, scheme) => {
      const text = example(name);
      const before = parseScenario(text);
      const { starter, actions, machine, load } = parseScenario(edited(text, { kind: 'scheme', scheme }));
      expect(starter.control?.scheme).toBe(scheme);
      expect([machine, load]).toEqual([before.machine, before.load]);
      expect(actions.every((action) => 'button' in action)).toBe(true);
      const without = parseScenario(
        edited(text, { kind: 'scheme', scheme }, { kind: 'scheme', scheme: null }),
      );
      expect(without.starter.control).toBeUndefined();
    },
  );

  it('protects the machine and remembers what has driven it', () => {
    const { control } = parseScenario(
      edited(example('may-this-belt-be-plugged'), { kind: 'scheme', scheme: 'plugStop' }),
    ).starter;
    expect(control).toMatchObject({ memoryRelay: true, overload: { setting: 14.6, tripClass: '10' } });
  });

  it('answers buttons that do what the commands did, and back', () => {
    const words = (text: string, scheme: SchemeName) =>
      parseScenario(edited(text, { kind: 'scheme', scheme }))
        .actions.filter((action) => action.do === 'press' || scheme === 'jog')
        .map((action) => `${action.do} ${'button' in action ? action.button : ''}`);
    const text = example('may-this-belt-be-plugged');
    expect(words(text, 'plugStop')).toEqual(['press forward', 'press stop']);
    expect(words(text, 'direct')).toEqual(['press forward', 'press reverse']);
    expect(words(text, 'throughStop')).toEqual(['press forward', 'press stop']);
    expect(words(text, 'jog')).toEqual(['press forward', 'release forward']);
    for (const scheme of ['plugStop', 'plugStopBoth', 'jog'] as const)
      expect(
        parseScenario(edited(text, { kind: 'scheme', scheme }, { kind: 'scheme', scheme: null })).actions,
      ).toEqual(parseScenario(text).actions);
  });

  it('takes the overload relay with it, and leaves it behind', () => {
    const text = example('should-this-fan-be-plugged');
    const before = parseScenario(text).protection?.overload;
    const given = edited(text, { kind: 'scheme', scheme: 'plugStop' });
    expect(parseScenario(given).protection?.overload ?? null).toBeNull();
    expect(parseScenario(given).starter.control?.overload).toMatchObject({ setting: 66, tripClass: '20' });
    const back = parseScenario(edited(given, { kind: 'scheme', scheme: null }));
    expect(back.protection?.overload).toEqual(before);
  });

  it('is exchanged with what the new one does without', () => {
    const text = edited(example('what-happens-after-the-stop-button'), {
      kind: 'faults',
      faults: [{ kind: 'auxiliaryContact', contactor: 'forward', contact: 'holdIn', stuck: 'open' }],
    });
    const jog = parseScenario(edited(text, { kind: 'scheme', scheme: 'jog' })).starter;
    expect(jog.faults).toBeUndefined();
    expect(jog.control).toMatchObject({ memoryRelay: true, emergencyStop: { category: 1, limit: 1.5 } });
    const direct = parseScenario(edited(text, { kind: 'scheme', scheme: 'direct' })).starter;
    expect(direct.faults).toHaveLength(1);
    expect(direct.control).toMatchObject({ memoryRelay: false, emergencyStop: { category: 0 } });
  });
});

describe('an option of the control circuit', () => {
  const text = example('what-happens-after-the-stop-button');
  const before = parseScenario(text).starter.control!;
  const option = (chosen: Extract<Edit, { kind: 'control' }>['option']) =>
    parseScenario(edited(text, { kind: 'control', option: chosen })).starter.control!;

  it.each([
    [{ key: 'memoryRelay', value: false }, { memoryRelay: false }],
    [{ key: 'readyRelay', value: false }, { readyRelay: false }],
    [{ key: 'mechanicalInterlock', value: false }, { mechanicalInterlock: false }],
    [{ key: 'changeoverTimer', value: 0.25 }, { changeoverTimer: 0.25 }],
    [{ key: 'scanTime', value: 0.01 }, { scanTime: 0.01 }],
    [{ key: 'relayTime', value: 0.025 }, { relayTime: 0.025 }],
    [{ key: 'emergencyStopLimit', value: null }, { emergencyStop: { category: 0 } }],
    [{ key: 'emergencyStopLimit', value: 2.5 }, { emergencyStop: { category: 1, limit: 2.5 } }],
    [{ key: 'coilVoltage', value: false }, { coilVoltage: null }],
    [{ key: 'overload', value: null }, { overload: null }],
    [{ key: 'overload', value: '10A' }, { overload: { ...before.overload!, tripClass: '10A' as const } }],
  ] as const)('%j changes that alone', (chosen, change) => {
    expect(option(chosen)).toEqual({ ...before, ...change });
  });

  it('takes the hands from buttons that go with it', () => {
    const { actions } = parseScenario(
      edited(text, { kind: 'control', option: { key: 'readyRelay', value: false } }),
    );
    expect(actions.some((action) => 'button' in action && action.button === 'reset')).toBe(false);
  });

  it('brings the coil voltage and an overload relay back', () => {
    const off = edited(
      text,
      { kind: 'control', option: { key: 'coilVoltage', value: false } },
      { kind: 'control', option: { key: 'overload', value: null } },
    );
    const on = edited(
      off,
      { kind: 'control', option: { key: 'coilVoltage', value: true } },
      { kind: 'control', option: { key: 'overload', value: '20' } },
    );
    expect(parseScenario(on).starter.control).toEqual({
      ...before,
      overload: { ...before.overload!, tripClass: '20' },
    });
  });

  it('leaves voltages of the coils that are stated as they are', () => {
    const own = text.replace('pickUp: 80 %', 'pickUp: 85 %');
    expect(edited(own, { kind: 'control', option: { key: 'coilVoltage', value: true } })).toBe(own);
  });

  it('is refused without a control circuit', () => {
    const edit: Edit = { kind: 'control', option: { key: 'scanTime', value: 0.01 } };
    expect(applyEdits(example('may-this-belt-be-plugged'), [edit]).applied).toBe(false);
  });
});

describe('faults', () => {
  const ALL: readonly StarterFault[] = [
    { kind: 'lostPhase', phase: 'B', from: 1.2 },
    { kind: 'weldedPole', contactor: 'forward', pole: 'A' },
    { kind: 'deadPole', contactor: 'reverse', pole: 'C' },
    { kind: 'weldedContactor', contactor: 'reverse' },
    { kind: 'zeroSpeedSwitch', mode: 'stuckClosed' },
    { kind: 'zeroSpeedSwitch', mode: 'stuckOpen' },
    { kind: 'zeroSpeedSwitch', mode: 'doesNotPickUp' },
    { kind: 'auxiliaryContact', contactor: 'forward', contact: 'holdIn', stuck: 'open' },
    { kind: 'auxiliaryContact', contactor: 'reverse', contact: 'interlock', stuck: 'closed' },
    { kind: 'overloadNeverTrips' },
    { kind: 'supplyLost', from: 1, until: 1.5 },
    { kind: 'supplyLost', from: 1, until: null },
    { kind: 'mechanicalInterlockMissing' },
  ];

  it.each(ALL)('can be chosen and taken back: %j', (fault) => {
    const text = example('what-happens-after-the-stop-button');
    const after = edited(text, { kind: 'faults', faults: [fault] });
    expect(parseScenario(after)).toEqual({
      ...parseScenario(text),
      starter: { ...parseScenario(text).starter, faults: [fault] },
    });
    expect(after).toContain('# faults: [{ kind: zero-speed switch');
    expect(edited(after, { kind: 'faults', faults: [] })).toBe(text);
  });

  it('of what is not there are refused', () => {
    const text = example('may-this-belt-be-plugged');
    expect(applyEdits(text, [{ kind: 'faults', faults: [{ kind: 'overloadNeverTrips' }] }])).toMatchObject({
      text,
      applied: false,
    });
  });
});
