/** What a reader must know first of a run with a control circuit, each against a run in which it happens and one in which it does not. */
import { describe, expect, it } from 'vitest';
import { simulate } from '../../../src/measure/simulate.ts';
import { finding } from '../../../src/report/findings.ts';
import type { Scenario, StarterFault } from '../../../src/scenario/scenario.ts';
import { controlScenario, hold, press } from '../../support/controlScenario.ts';

const kinds = (...args: Parameters<typeof controlScenario>) =>
  simulate(controlScenario(...args)).controlFindings.map(({ kind }) => kind);
const startAndStop = [...press('forward', 0), ...press('stop', 1)];
const auxiliary = (contact: 'holdIn' | 'interlock', stuck: 'open' | 'closed'): StarterFault => ({
  kind: 'auxiliaryContact',
  contactor: 'forward',
  contact,
  stuck,
});
const weak = (scenario: Scenario): Scenario => ({
  ...scenario,
  supply: { ...scenario.supply, sourceResistance: 0.15, sourceInductance: 1.6e-3 },
  load: { ...scenario.load, inertia: 0.4 },
});

describe('a start without a hand', () => {
  it('is told of a hold-in contact that is stuck closed, at first and when stop is let go', () => {
    const result = simulate(
      controlScenario({ scheme: 'throughStop' }, press('stop', 0.6), [auxiliary('holdIn', 'closed')]),
    );
    expect(result.controlFindings).toEqual([
      { kind: 'startsByItself', contactor: 'forward', t: 0, cause: 'the control voltage is on', held: false },
      { kind: 'startsByItself', contactor: 'forward', t: 0.75, cause: 'stop button released', held: false },
    ]);
  });

  it('is told with the button that is held down when the emergency stop is released', () => {
    const [found] = simulate(
      controlScenario({ scheme: 'throughStop' }, [
        hold('forward', 0),
        hold('emergencyStop', 0.4),
        { at: 0.7, do: 'release', button: 'emergencyStop' },
      ]),
    ).controlFindings;
    expect(found).toMatchObject({ kind: 'startsByItself', held: true });
  });

  it('is not told of anti-plugging that lets a held button in at low speed, nor of inching and braking', () => {
    expect(kinds({ scheme: 'antiPlugging' }, [...press('forward', 0), hold('reverse', 1)])).toEqual([]);
    expect(kinds({ scheme: 'jog', memoryRelay: true }, press('forward', 0, 0.3))).toEqual([]);
    expect(kinds({ memoryRelay: true }, startAndStop)).toEqual([]);
  });

  it('is not told of a coil that lets go before its contactor is in', () => {
    const result = simulate(
      controlScenario({ scheme: 'throughStop' }, [...press('forward', 0), ...press('reverse', 0)]),
    );
    // Both were energised for the travel of an armature.
    expect(result.controlFindings).toEqual([{ kind: 'heldByInterlock', contactor: 'reverse', t: 0.018 }]);
    expect(result.trajectory.commands).toEqual([{ at: 0, do: 'startForward' }]);
  });
});

describe('a stop that does not brake', () => {
  it('blames the switch only where the switch showed nothing', () => {
    const of = (fault: StarterFault) =>
      simulate(controlScenario({}, startAndStop, [fault])).controlFindings.find(
        ({ kind }) => kind === 'notBraked',
      );
    expect(of({ kind: 'zeroSpeedSwitch', mode: 'doesNotPickUp' })).toMatchObject({ shown: false });
    expect(of(auxiliary('interlock', 'open'))).toMatchObject({ shown: true });
    // Its coil is energised all the time, so the other contactor brakes as it should.
    expect(of(auxiliary('interlock', 'closed'))).toBeUndefined();
  });

  it('by a program whose scan comes after the button is let go is one that brakes', () => {
    const result = simulate(
      controlScenario({ memoryRelay: true, scanTime: 0.01 }, [
        ...press('forward', 0, 0.3),
        ...press('stop', 1, 0.05),
      ]),
    );
    expect(result.controlFindings).toEqual([]);
    expect(result.operations.reversal?.switchOpening).not.toBeNull();
    expect(result.metrics.stopTimeFromTouch.value).not.toBeNull();
  });

  it('or is cut short by the time limit of category 1, which is told with the speed', () => {
    const result = simulate(
      controlScenario(
        { memoryRelay: true, emergencyStop: { category: 1, limit: 0.1 } },
        [...press('forward', 0), hold('emergencyStop', 1)],
        [],
        (s) => ({
          ...s,
          load: { ...s.load, inertia: 0.4 },
        }),
      ),
    );
    expect(result.controlFindings).toMatchObject([{ kind: 'limitEndsBraking', t: 1.1, ranUp: false }]);
    expect(finding(result, 'SI')).toMatch(
      /^The time limit of the emergency stop ends the braking at 1.1000 s, at \d+ r\/min.* of it coasting with all poles open/,
    );
  });

  it('and is told when the machine runs on though stop was the last thing asked for', () => {
    // On two phases there is no braking to speak of, and the machine is driven on.
    const found = kinds(
      { memoryRelay: true },
      [...press('forward', 0), ...press('stop', 1)],
      [{ kind: 'zeroSpeedSwitch', mode: 'stuckClosed' }],
    );
    expect(found).toEqual(['runsUpInReverse']);
    const limited = kinds(
      { memoryRelay: true, emergencyStop: { category: 1, limit: 3 } },
      [...press('forward', 0), hold('emergencyStop', 1)],
      [{ kind: 'zeroSpeedSwitch', mode: 'stuckClosed' }],
    );
    expect(limited).toContain('limitEndsBraking');
    const [told] = simulate(
      controlScenario(
        { memoryRelay: true, emergencyStop: { category: 1, limit: 3 } },
        [...press('forward', 0), hold('emergencyStop', 1)],
        [{ kind: 'zeroSpeedSwitch', mode: 'stuckClosed' }],
      ),
    ).controlFindings;
    expect(told).toMatchObject({ kind: 'limitEndsBraking', ranUp: true });
  });
});

describe('a dip of the control voltage', () => {
  const dips = (dropOut: number, button = startAndStop) =>
    simulate(
      controlScenario(
        { memoryRelay: true, coilVoltage: { pickUp: dropOut + 0.05, dropOut } },
        button,
        [],
        weak,
      ),
    );

  it('counts contactors that go out, and leaves the figures those of the whole stop', () => {
    const result = dips(0.88, [
      hold('forward', 0),
      { at: 0.99, do: 'release', button: 'forward' },
      ...press('stop', 1),
    ]);
    const found = result.controlFindings.find(({ kind }) => kind === 'voltageDrops');
    const out = result.trajectory.events.filter(
      ({ kind, contactor }) =>
        kind === 'relayDropsOut' &&
        contactor === (found?.kind === 'voltageDrops' ? found.contactor : undefined),
    );
    expect(found?.kind === 'voltageDrops' && found.times).toBeGreaterThan(1);
    expect(found?.kind === 'voltageDrops' && found.times).toBeLessThanOrEqual(out.length);
    for (const command of result.trajectory.commands) expect([0, 0.99, 1, 1.15]).toContain(command.at);
  });

  it('is not told of a supply that is lost', () => {
    const found = kinds(
      { scheme: 'throughStop', coilVoltage: { pickUp: 0.8, dropOut: 0.5 } },
      press('forward', 0),
      [{ kind: 'supplyLost', from: 1, until: null }],
    );
    expect(found).toEqual([]);
  });

  it('of one lost phase does not chatter: with C lost the coils are undisturbed, with A they are dead', () => {
    const lose = (phase: 'A' | 'C') =>
      simulate(
        controlScenario(
          { scheme: 'throughStop', coilVoltage: { pickUp: 0.8, dropOut: 0.55 } },
          press('forward', 0),
          [{ kind: 'lostPhase', phase, from: 0.8 }],
        ),
      ).trajectory.events.filter(({ kind }) => kind === 'coilReleased').length;
    expect(lose('C')).toBe(0);
    expect(lose('A')).toBe(1);
  });
});

it('the mechanical interlock is named only where both coils stay energised', () => {
  const both = kinds(
    { scheme: 'throughStop' },
    [...press('forward', 0), hold('reverse', 0.5)],
    [auxiliary('interlock', 'closed')],
  );
  expect(both).toContain('heldByInterlock');
  const passing = kinds(
    { scheme: 'direct' },
    [...press('forward', 0), ...press('reverse', 1)],
    [auxiliary('interlock', 'closed')],
  );
  expect(passing).not.toContain('heldByInterlock');
});

it('a single welded pole stops the machine only while the coil is dead, and is not called one that nothing can end', () => {
  const found = kinds({ memoryRelay: true }, startAndStop, [
    { kind: 'weldedPole', contactor: 'forward', pole: 'A' },
  ]);
  expect(found).not.toContain('doesNotStop');
  expect(found).toContain('startsByItself');
});

it('a contactor that the mechanical interlock has held back obeys from the release of the other one on', () => {
  const { commands } = simulate(
    controlScenario({}, startAndStop, [auxiliary('interlock', 'closed')]),
  ).trajectory;
  expect(commands).toEqual([
    { at: 0, do: 'startForward' },
    { at: 1, do: 'plug' },
  ]);
});

it('a supply that returns to coils that feel the voltage starts by itself as it does to coils that do not', () => {
  const lost: StarterFault = { kind: 'supplyLost', from: 1, until: 1.15 };
  for (const coilVoltage of [null, { pickUp: 0.8, dropOut: 0.55 }]) {
    const { controlFindings, trajectory } = simulate(
      controlScenario({ coilVoltage }, press('forward', 0), [lost]),
    );
    expect(controlFindings).toMatchObject([
      { kind: 'startsByItself', contactor: 'reverse', cause: 'the supply is back' },
    ]);
    expect(trajectory.commands.map((command) => command.do)).toEqual(['startForward', 'coast', 'plug']);
  }
});

it('a limit that runs out in a second emergency stop is told too', () => {
  const release = (at: number) => ({ at, do: 'release', button: 'emergencyStop' }) as const;
  const found = kinds(
    { memoryRelay: true, emergencyStop: { category: 1, limit: 0.1 } },
    [hold('emergencyStop', 0), release(0.4), ...press('forward', 0.5), hold('emergencyStop', 1.5)],
    [],
    (s) => ({ ...s, load: { ...s.load, inertia: 0.4 } }),
  );
  expect(found).toEqual(['limitEndsBraking']);
});

it('a short circuit in a start is the finding, with no torque of rounding size', () => {
  const result = simulate(
    controlScenario({ scheme: 'throughStop', mechanicalInterlock: false }, [
      ...press('forward', 0),
      ...press('reverse', 0),
    ]),
  );
  expect(finding(result, 'SI')).toMatch(/^The contactors short-circuit two phases at 0.0180 s/);
  expect(finding(result, 'SI')).not.toContain('10⁻');
});
