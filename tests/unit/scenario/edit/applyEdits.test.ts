import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../../../src/estimate/parseScenario.ts';
import { applyEdits, textEditor } from '../../../../src/scenario/edit/applyEdits.ts';
import type { Edit } from '../../../../src/scenario/edit/edit.ts';
import { CIRCUITS, edited, example, SCHEMES } from './editing.ts';

describe('a text', () => {
  it('that is no scenario is returned as it is', () => {
    for (const text of [
      '',
      ': :',
      'title: x',
      '\u0000',
      `${example('may-this-belt-be-plugged')}\nextra: 1`,
    ]) {
      const done = applyEdits(text, [{ kind: 'clearActions' }]);
      expect(done).toMatchObject({ text, applied: false });
      expect(done.refusal).not.toBeNull();
    }
  });

  it('that nobody changes may be anything', () => {
    expect(applyEdits(': :', [])).toEqual({ text: ': :', applied: true, refusal: null });
  });

  it('in JSON stays JSON', () => {
    const scenario = {
      title: 'x',
      supply: { lineVoltage: '400 V', frequency: '50 Hz' },
      machine: {
        poles: 4,
        statorResistance: '0.56 ohm',
        statorLeakage: '1.25 ohm',
        magnetising: '39 ohm',
        cages: [{ resistance: '0.52 ohm', leakage: '1.45 ohm' }],
        inertia: '0.036 kg m^2',
        rated: { power: '7.5 kW' },
      },
      load: { inertia: '0.05 kg m^2', torque: 'none' },
      actions: [{ at: '0 s', do: 'start forward' }],
    };
    for (const indent of [0, 2]) {
      const after = edited(
        JSON.stringify(scenario, null, indent),
        { kind: 'adjust', key: 'lineResistance', value: 1.5 },
        { kind: 'adjust', key: 'closingAngle', value: 1 },
        { kind: 'adjust', key: 'sourcePower', value: 3e6 },
        { kind: 'command', at: 2, do: 'plug' },
        { kind: 'endTime', value: 20 },
        { kind: 'adjust', key: 'sourcePower', value: null },
      );
      expect(JSON.parse(after)).toEqual({
        ...scenario,
        supply: { ...scenario.supply, angle: '57.3 deg' },
        starter: { lineResistors: { resistance: '1.5 ohm' }, zeroSpeedSwitch: 'off' },
        actions: [...scenario.actions, { at: '2 s', do: 'plug' }],
        solver: { endTime: '20 s' },
      });
    }
  });

  it('keeps its line ends and an unfinished last line', () => {
    const unix = example('may-this-belt-be-plugged').split('\n\n# From here on')[0]!;
    const edits: Edit[] = [
      { kind: 'command', at: 0.7, do: 'coast' },
      { kind: 'adjust', key: 'lineResistance', value: 1 },
      { kind: 'endTime', value: 9 },
    ];
    const after = edited(unix, ...edits);
    const windows = edited(unix.replaceAll('\n', '\r\n'), ...edits);
    expect(windows.replaceAll('\r\n', '\n')).toBe(after);
    expect(
      windows
        .split('\n')
        .slice(0, -1)
        .every((line) => line.endsWith('\r')),
    ).toBe(true);
  });

  it('is taken as a whole or not at all', () => {
    const text = example('may-this-belt-be-plugged');
    const edits: Edit[] = [
      { kind: 'adjust', key: 'loadInertia', value: 1 },
      { kind: 'command', at: 1, do: 'brake' },
    ];
    expect(applyEdits(text, edits).text).toBe(text);
  });

  it('comes out the same with and without a memory, whatever was turned before', () => {
    const edit = fc.oneof(
      fc.record({
        kind: fc.constant('adjust' as const),
        key: fc.constantFrom('loadInertia', 'loadTorque', 'lineResistance', 'sourcePower', 'closingAngle'),
        value: fc.double({ min: 0.5, max: 6, noNaN: true }),
      }),
      fc.record({
        kind: fc.constant('scheme' as const),
        scheme: fc.constantFrom(...SCHEMES, null),
      }),
      fc.record({
        kind: fc.constant('button' as const),
        at: fc.double({ min: 0, max: 3, noNaN: true }),
        do: fc.constantFrom('press', 'hold', 'release'),
        button: fc.constantFrom('forward', 'reverse', 'stop', 'emergencyStop'),
      }),
    ) as fc.Arbitrary<Edit>;
    const remembering = textEditor(2);
    fc.assert(
      fc.property(fc.constantFrom(...CIRCUITS), fc.array(edit, { maxLength: 4 }), (name, edits) => {
        let text = example(name);
        for (const one of edits) {
          const plain = applyEdits(text, [one]);
          expect(remembering(text, [one])).toEqual(plain);
          if (plain.applied) expect(() => parseScenario(plain.text)).not.toThrow();
          text = plain.text;
        }
      }),
      { numRuns: 15, seed: 6 },
    );
  });
});
