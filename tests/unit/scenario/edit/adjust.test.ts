import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../../../src/estimate/parseScenario.ts';
import { applyEdits } from '../../../../src/scenario/edit/applyEdits.ts';
import { adjusted, CIRCUITS, changedLines, EXAMPLES, example, near } from './editing.ts';

describe('an edit of one quantity', () => {
  it.each(EXAMPLES)('changes the inertia in its line alone: %s', (name) => {
    const text = example(name);
    const before = parseScenario(text);
    const after = adjusted(text, 'loadInertia', 0.123456);
    const { gone, come } = changedLines(text, after);
    expect([gone.length, come.length]).toEqual([1, 1]);
    expect(come[0]!.split('#')[1]).toBe(gone[0]!.split('#')[1]);
    const scenario = parseScenario(after);
    near(scenario.load.inertia, 0.123456);
    expect({ ...scenario, load: { ...scenario.load, inertia: 0 } }).toEqual({
      ...before,
      load: { ...before.load, inertia: 0 },
    });
  });

  it('is written with four digits, in the unit that stood there', () => {
    // 0.2 kg·m² over the pound foot squared of 0.0421401101 kg·m².
    expect(adjusted(example('what-does-a-full-reversal-cost'), 'loadInertia', 0.2)).toContain(
      '  inertia: 4.746 lb ft^2\n',
    );
    expect(adjusted(example('may-this-belt-be-plugged'), 'loadInertia', 1 / 3)).toContain(
      'inertia: 0.3333 kg m^2 # belt, rollers',
    );
  });

  it('leaves the text as it was where it says the same', () => {
    for (const name of CIRCUITS) {
      const text = example(name);
      const { inertia } = parseScenario(text).load;
      expect(adjusted(text, 'loadInertia', inertia)).toBe(text);
    }
  });

  it('keeps breakaway in its ratio to friction', () => {
    const { torques } = parseScenario(adjusted(example('may-this-belt-be-plugged'), 'loadTorque', 20)).load;
    expect(torques[0]).toEqual({ kind: 'friction', torque: 20, breakaway: 30 });
    expect(torques[1]!.kind).toBe('viscous');
  });

  it('scales a fan as it is written, and counts it at synchronous speed', () => {
    const text = example('should-this-fan-be-plugged');
    const after = adjusted(text, 'loadTorque', 100);
    expect(after).toContain('atSpeed: 1478 rpm } # air');
    const [fan] = parseScenario(after).load.torques;
    // Four poles at 50 Hz: 1500 r/min.
    near(fan?.kind === 'fan' ? fan.coefficient * (50 * Math.PI) ** 2 : null, 100);
  });

  it('turns a single torque behind a gear', () => {
    const { torques } = parseScenario(
      adjusted(example('how-hard-does-plugging-twist-the-shaft'), 'loadTorque', 260),
    ).load;
    expect(torques).toEqual([{ kind: 'friction', torque: 260, breakaway: 320 }]);
  });

  it('gives a dead time in place of a delay, in the same line', () => {
    const text = example('may-this-belt-be-plugged');
    const after = adjusted(text, 'deadTime', 0.04);
    expect(after).toContain('21 ms.\n  deadTime: 40 ms\n');
    const { starter } = parseScenario(after);
    expect(starter.changeoverGivenAs).toBe('deadTime');
    expect(starter.changeoverDelay + starter.closingTime - starter.openingTime).toBeCloseTo(0.04, 12);
    expect(starter.closingTime).toBe(0.018);
  });

  it('keeps the operating times that hold where none is stated', () => {
    const text = example('may-this-belt-be-plugged').replace(/^ {2}(closing|opening)Time.*\n/gmu, '');
    const before = parseScenario(text).starter;
    const after = parseScenario(adjusted(text, 'deadTime', 0.05)).starter;
    expect([after.closingTime, after.openingTime]).toEqual([before.closingTime, before.openingTime]);
  });

  it('reaches the shortest dead time that the contactors can make', () => {
    const text = example('may-this-belt-be-plugged').replace(
      'closingTime: 18 ms',
      'closingTime: 18.33333 ms',
    );
    const { closingTime, openingTime } = parseScenario(text).starter;
    const { starter } = parseScenario(adjusted(text, 'deadTime', closingTime - openingTime));
    expect(starter.changeoverDelay).toBeCloseTo(0, 9);
    expect(applyEdits(text, [{ kind: 'adjust', key: 'deadTime', value: 0.001 }])).toEqual({
      text,
      applied: false,
      refusal: expect.stringContaining('shorter than the contactors can make it'),
    });
  });

  it('turns the timer where there is a control circuit', () => {
    const { starter } = parseScenario(
      adjusted(example('what-happens-after-the-stop-button'), 'deadTime', 0.12),
    );
    expect(starter.control?.changeoverTimer).toBe(0.12);
  });

  it('sets the closing angle in degrees', () => {
    const after = adjusted(example('may-this-belt-be-plugged'), 'closingAngle', Math.PI / 3);
    expect(after).toContain('angle: 60 deg # where phase A');
    near(
      parseScenario(adjusted(example('what-does-a-full-reversal-cost'), 'closingAngle', 1)).supply.angle,
      1,
    );
  });

  it('puts line resistors in, turns them and takes them out', () => {
    const text = example('may-this-belt-be-plugged');
    const before = parseScenario(text).starter;
    const once = adjusted(text, 'lineResistance', 0.8);
    expect(parseScenario(once).starter.lineResistors).toEqual({
      resistance: 0.8,
      closingTime: before.closingTime,
      openingTime: before.openingTime,
      bypassAfter: null,
    });
    near(parseScenario(adjusted(once, 'lineResistance', 2.5)).starter.lineResistors?.resistance, 2.5);
    expect(adjusted(once, 'lineResistance', null)).toBe(text);
  });

  it('keeps the pick-up speed above the drop-out speed', () => {
    const text = example('may-this-belt-be-plugged');
    const rpm = Math.PI / 30;
    const low = parseScenario(adjusted(text, 'dropOutSpeed', 100 * rpm)).starter.zeroSpeedSwitch!;
    near(low.dropOutSpeed, 100 * rpm);
    near(low.pickUpSpeed, 120 * rpm);
    const high = parseScenario(adjusted(text, 'dropOutSpeed', 200 * rpm)).starter.zeroSpeedSwitch!;
    near(high.pickUpSpeed, 400 * rpm);
    const top = parseScenario(adjusted(text, 'dropOutSpeed', 1200 * rpm)).starter.zeroSpeedSwitch!;
    near(top.pickUpSpeed, 1350 * rpm);
  });

  it('takes the switch out where nothing needs it', () => {
    expect(
      parseScenario(adjusted(example('may-this-belt-be-plugged'), 'dropOutSpeed', null)).starter
        .zeroSpeedSwitch,
    ).toBeNull();
    const needed = applyEdits(example('what-happens-after-the-stop-button'), [
      { kind: 'adjust', key: 'dropOutSpeed', value: null },
    ]);
    expect(needed.refusal).toBe('the scheme `plug to stop` needs its zero-speed switch');
  });

  it.each(CIRCUITS)('gives the source a strength, and an infinite one: %s', (name) => {
    const text = example(name);
    const { supply } = parseScenario(adjusted(text, 'sourcePower', 2e6));
    const reactance = 2 * Math.PI * supply.frequency * supply.sourceInductance;
    near(Math.hypot(supply.sourceResistance, reactance), supply.lineVoltage ** 2 / 2e6);
    const stiff = parseScenario(adjusted(text, 'sourcePower', null)).supply;
    expect([stiff.sourceResistance, stiff.sourceInductance]).toEqual([0, 0]);
    expect(stiff.cable).toEqual(supply.cable);
  });

  it('keeps the ratio of reactance to resistance', () => {
    const { supply } = parseScenario(adjusted(example('what-does-a-full-reversal-cost'), 'sourcePower', 1e6));
    expect((2 * Math.PI * 60 * supply.sourceInductance) / supply.sourceResistance).toBeCloseTo(5, 9);
  });

  it('is refused where the element cannot be taken out or turned', () => {
    for (const key of ['loadInertia', 'loadTorque', 'deadTime', 'closingAngle'] as const)
      expect(
        applyEdits(example('may-this-belt-be-plugged'), [{ kind: 'adjust', key, value: null }]).applied,
      ).toBe(false);
    const none = example('how-hard-does-plugging-twist-the-shaft').replace(
      /torque: \{ kind: friction.*/u,
      'torque: none',
    );
    expect(applyEdits(none, [{ kind: 'adjust', key: 'loadTorque', value: 5 }]).refusal).toBe(
      'the scenario states no load torque',
    );
  });
});
