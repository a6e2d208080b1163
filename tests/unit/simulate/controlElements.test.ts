/** What a control circuit does to resistors, connection and purpose while contactors change. */
import { describe, expect, it } from 'vitest';
import type { Scenario } from '../../../src/scenario/scenario.ts';
import { runTrajectory } from '../../../src/simulate/run.ts';
import { controlScenario, hold, press } from '../../support/controlScenario.ts';

const noSwitch = (scenario: Scenario): Scenario => ({
  ...scenario,
  starter: { ...scenario.starter, zeroSpeedSwitch: null },
});

const withResistors = (scenario: Scenario): Scenario => ({
  ...scenario,
  starter: {
    ...scenario.starter,
    lineResistors: { resistance: 2, closingTime: 0.01, openingTime: 0.005, bypassAfter: 0.4 },
  },
});

/** Line resistance in the circuit while poles conduct, Ω, at an instant. */
function resistanceAt(scenario: Scenario, t: number): number {
  const { segments } = runTrajectory(scenario);
  return segments.findLast((segment) => segment.t0 <= t)!.inserted.lineResistance;
}

describe('line resistors under a control circuit', () => {
  it.each([
    ['without a zero-speed switch, which the coils themselves tell', 'direct', noSwitch, 'reverse'],
    ['with a switch that shows the rotation', 'direct', (s: Scenario) => s, 'reverse'],
    ['while it brakes', 'plugStop', (s: Scenario) => s, 'stop'],
  ] as const)(
    'are in the lines when the machine is turned against its rotation, %s',
    (_, scheme, change, button) => {
      const scenario = controlScenario({ scheme }, [...press('forward', 0), ...press(button, 1)], [], (s) =>
        withResistors(change(s)),
      );
      expect(resistanceAt(scenario, 0.5), 'started bypassed').toBe(0);
      expect(resistanceAt(scenario, 1.05)).toBe(2);
    },
  );

  it('are bypassed by a reversal that lasts longer than their time', () => {
    const scenario = controlScenario(
      { scheme: 'direct' },
      [...press('forward', 0), ...press('reverse', 1)],
      [],
      (s) => withResistors(noSwitch(s)),
    );
    // 1.009 s: the reverse coil; 0.4 s later the bypass coil, which takes 10 ms.
    expect(resistanceAt(scenario, 1.418)).toBe(2);
    expect(resistanceAt(scenario, 1.42)).toBe(0);
  });
});

describe('star connection while plugging', () => {
  const star = (scenario: Scenario): Scenario => ({
    ...scenario,
    machine: { ...scenario.machine, connection: 'delta' },
    starter: { ...scenario.starter, plugConnection: 'star' },
  });

  it('is taken for braking and left for the next start', () => {
    const { events, segments } = runTrajectory(
      controlScenario(
        { memoryRelay: true },
        [...press('forward', 0), ...press('stop', 1), ...press('forward', 2)],
        [],
        star,
      ),
    );
    const changes = events.filter(({ kind }) => kind === 'windingReconnected').map(({ text }) => text);
    expect(changes).toEqual(['windings are connected in star', 'windings are connected in delta']);
    expect(segments.findLast(({ t0 }) => t0 <= 1.1)?.inserted.star).toBe(true);
    expect(segments.at(-1)?.inserted.star).toBe(false);
  });
});

describe('a reversal from the buttons of a starter that plugs in star', () => {
  it('runs up as built, although the braking circuit is the first to ask for the contactor', () => {
    const star = (scenario: Scenario): Scenario => ({
      ...scenario,
      machine: { ...scenario.machine, connection: 'delta' },
      starter: { ...scenario.starter, plugConnection: 'star' },
    });
    const { segments } = runTrajectory(
      controlScenario(
        { scheme: 'plugStopBoth', memoryRelay: true },
        [...press('forward', 0, 0.3), ...press('reverse', 1)],
        [],
        star,
      ),
    );
    expect(
      segments.filter(({ t0, kind }) => t0 > 1.03 && kind === 'three').map(({ inserted }) => inserted.star),
    ).not.toContain(true);
  });
});

describe('a contactor that is in changes its purpose', () => {
  it('from braking to running when its own start button is pressed meanwhile', () => {
    const trajectory = runTrajectory(
      controlScenario({ scheme: 'plugStopBoth', memoryRelay: true }, [
        ...press('forward', 0, 0.3),
        ...press('stop', 1, 0.02),
        ...press('reverse', 1.05),
      ]),
    );
    const change = trajectory.events.find(({ kind }) => kind === 'purposeChanges');
    expect(change?.text).toBe('reverse coil stays energised, now to run: reverse run relay picks up');
    expect(trajectory.commands.map((command) => command.do)).toEqual([
      'startForward',
      'plug',
      'startReverse',
    ]);
    expect(trajectory.status.code).toBe('finished');
    expect(trajectory.at(trajectory.tEnd).speed).toBeLessThan(-150);
  });

  it('from running to braking when stop is pressed in the middle of a reversal', () => {
    const trajectory = runTrajectory(
      controlScenario({ scheme: 'plugStopBoth', memoryRelay: true }, [
        ...press('forward', 0, 0.3),
        ...press('reverse', 1, 0.05),
        hold('stop', 1.07),
      ]),
    );
    const change = trajectory.events.findLast(({ kind }) => kind === 'purposeChanges');
    expect(change?.purpose).toBe('brake');
    expect(trajectory.commands.map((command) => command.do)).toEqual([
      'startForward',
      'startReverse',
      'plug',
    ]);
    expect(trajectory.at(trajectory.tEnd).speed).toBe(0);
  });
});

describe('what is recorded', () => {
  it('is every change of devices, coils and poles, the first at t = 0', () => {
    const { channels } = runTrajectory(
      controlScenario({ scheme: 'throughStop' }, [...press('forward', 0.1), ...press('stop', 0.5)]),
    );
    const of = (kind: string, name: string) =>
      channels
        .find((channel) => channel.of.kind === kind && JSON.stringify(channel.of).includes(name))
        ?.changes.map(({ t, value }) => [Number(t.toFixed(3)), value]);
    expect(of('device', 'forwardButton')).toEqual([
      [0, 'off'],
      [0.1, 'on'],
      [0.25, 'off'],
    ]);
    expect(of('coil', 'forwardContactor')).toEqual([
      [0, 'off'],
      [0.1, 'on'],
      [0.5, 'off'],
    ]);
    expect(of('device', 'forwardContactor')).toEqual([
      [0, 'off'],
      [0.118, 'on'],
      [0.509, 'off'],
    ]);
    expect(of('pole', '"B"')?.map(([, value]) => value)).toEqual(['open', 'closed', 'arcing', 'open']);
    // Poles and voltage that never change are left out; devices of the circuit are not.
    expect(channels.filter((channel) => channel.of.kind === 'pole')).toHaveLength(3);
    expect(channels.some((channel) => channel.of.kind === 'controlVoltage')).toBe(false);
    expect(of('device', 'reverseContactor')).toEqual([[0, 'off']]);
  });
});
