/** Control circuit and machine together: what hands on buttons do to the shaft. */
import { describe, expect, it } from 'vitest';
import { simulate } from '../../../src/measure/simulate.ts';
import { finding } from '../../../src/report/findings.ts';
import type { ControlData, Scenario, StarterFault } from '../../../src/scenario/scenario.ts';
import { runTrajectory } from '../../../src/simulate/run.ts';
import type { RunEvent, Trajectory } from '../../../src/simulate/trajectory.ts';
import { controlScenario, hold, press } from '../../support/controlScenario.ts';

const STUCK_CLOSED: StarterFault = { kind: 'zeroSpeedSwitch', mode: 'stuckClosed' };
const startAndStop = [...press('forward', 0), ...press('stop', 1)];

function coils(trajectory: Trajectory): string[] {
  return trajectory.events
    .filter(({ kind }) => kind === 'coilEnergised' || kind === 'coilReleased')
    .map(
      ({ t, kind, contactor }) => `${t.toFixed(3)} ${contactor} ${kind === 'coilEnergised' ? 'on' : 'off'}`,
    );
}

function run(...args: Parameters<typeof controlScenario>): Trajectory {
  return runTrajectory(controlScenario(...args));
}

const atEnd = (trajectory: Trajectory) => trajectory.at(trajectory.tEnd).speed;
const first = (trajectory: Trajectory, kind: RunEvent['kind']) =>
  trajectory.events.find((event) => event.kind === kind);

describe('a plug stop by push buttons', () => {
  it('ends at rest, the zero-speed switch having dropped the reverse contactor', () => {
    const result = simulate(controlScenario({ memoryRelay: true }, startAndStop));
    expect(result.status.code).toBe('finished');
    expect(atEnd(result.trajectory)).toBe(0);
    const released = result.trajectory.events.findLast(({ kind }) => kind === 'coilReleased');
    expect(released?.text).toBe('reverse coil released: zero-speed switch opens (forward)');
    expect(released?.speed).toBeGreaterThan(0);
    expect(result.controlFindings).toEqual([]);
  });

  it('is the same run as the command to plug with coils that change at the same instants', () => {
    const wired = controlScenario({ memoryRelay: true }, startAndStop);
    const { control: _, ...starter } = wired.starter;
    const commanded: Scenario = {
      ...wired,
      // The interlock lets the reverse coil in as soon as the forward contactor is out.
      starter: { ...starter, changeoverDelay: starter.openingTime },
      actions: [
        { at: 0, do: 'startForward' },
        { at: 1, do: 'plug' },
      ],
    };
    const a = simulate(wired).metrics;
    const b = simulate(commanded).metrics;
    // The buttons' own events cut the integration elsewhere: equal to a hundred tolerances.
    for (const key of [
      'plugMinimumTorque',
      'plugPeakCurrent',
      'stopTimeFromTouch',
      'plugRotorHeat',
      'arcMargin',
      'startTime',
    ] as const)
      expect(Math.abs(a[key].value! / b[key].value! - 1), key).toBeLessThan(1e-6);
    const { commands } = runTrajectory(wired);
    expect(commands).toEqual(commanded.actions);
  });

  it('runs up in reverse when the switch is stuck closed, and says so before anything else', () => {
    const result = simulate(controlScenario({ memoryRelay: true }, startAndStop, [STUCK_CLOSED]));
    expect(atEnd(result.trajectory)).toBeLessThan(-150);
    expect(result.status.code).toBe('switchNeverOpened');
    // It is followed until it runs steadily, not for minutes.
    expect(result.trajectory.tEnd).toBeLessThan(3);
    expect(result.status.message).toContain('run up in the other direction to 99 % of synchronous speed');
    expect(result.usable).toBe(false);
    expect(finding(result, 'SI')).toMatch(
      /^The zero-speed switch does not end the braking: .* runs up in the other direction/,
    );
  });

  it('coasts when the switch shows nothing, and says why', () => {
    const blind: StarterFault = { kind: 'zeroSpeedSwitch', mode: 'stuckOpen' };
    const result = simulate(controlScenario({}, startAndStop, [blind]));
    expect(coils(result.trajectory)).toEqual(['0.000 forward on', '1.000 forward off']);
    expect(finding(result, 'SI')).toMatch(/^The stop at 1.0000 s does not brake/);
  });
});

describe('hands on buttons', () => {
  it('releasing the start button leaves the machine running through the auxiliary contact', () => {
    const trajectory = run({ scheme: 'throughStop' }, press('forward', 0));
    expect(coils(trajectory)).toEqual(['0.000 forward on']);
    expect(atEnd(trajectory)).toBeGreaterThan(150);
  });

  it('a hold-in contact that does not close lets the machine go with the button', () => {
    const fault: StarterFault = {
      kind: 'auxiliaryContact',
      contactor: 'forward',
      contact: 'holdIn',
      stuck: 'open',
    };
    expect(coils(run({ scheme: 'throughStop' }, press('forward', 0), [fault]))).toEqual([
      '0.000 forward on',
      '0.150 forward off',
    ]);
  });

  it('a button let go before the contactor is in leaves nothing behind', () => {
    const trajectory = run({ scheme: 'throughStop' }, press('forward', 0, 0.01));
    expect(coils(trajectory)).toEqual(['0.000 forward on', '0.010 forward off']);
    expect(trajectory.segments.every(({ kind }) => kind === 'none')).toBe(true);
  });

  it('with the contact interlock the opposite button does nothing until stop', () => {
    const trajectory = run({ scheme: 'throughStop' }, [
      ...press('forward', 0),
      ...press('reverse', 0.6),
      ...press('stop', 0.9),
      ...press('reverse', 1.2),
    ]);
    expect(coils(trajectory)).toEqual(['0.000 forward on', '0.900 forward off', '1.200 reverse on']);
  });

  it('reversing directly, without a zero-speed switch, the opposite button slows the machine fast and runs it up the other way', () => {
    const without = (scenario: Scenario): Scenario => ({
      ...scenario,
      starter: { ...scenario.starter, zeroSpeedSwitch: null },
    });
    const trajectory = run(
      { scheme: 'direct' },
      [...press('forward', 0), ...press('reverse', 1)],
      [],
      without,
    );
    expect(coils(trajectory)).toEqual(['0.000 forward on', '1.000 forward off', '1.009 reverse on']);
    const zero = trajectory.events.find(({ kind, t }) => kind === 'zeroSpeed' && t > 1)!.t;
    expect(zero - 1).toBeLessThan(0.25);
    expect(atEnd(trajectory)).toBeLessThan(-150);
    expect(trajectory.commands.at(-1)).toEqual({ at: 1, do: 'startReverse' });
  });

  it('hitting the opposite button again and again reverses each time, never with both coils energised', () => {
    const hits = [0.5, 0.7, 0.9, 1.1].flatMap((t, i) => press(i % 2 === 0 ? 'reverse' : 'forward', t, 0.1));
    const trajectory = run({ scheme: 'direct' }, [...press('forward', 0), ...hits]);
    const on = { forward: false, reverse: false };
    for (const event of trajectory.events) {
      if (event.kind === 'coilEnergised') on[event.contactor!] = true;
      if (event.kind === 'coilReleased') on[event.contactor!] = false;
      expect(on.forward && on.reverse).toBe(false);
    }
    expect(trajectory.commands.map((command) => command.do)).toEqual([
      'startForward',
      'startReverse',
      'startForward',
      'startReverse',
      'startForward',
    ]);
  });

  it('both buttons at one instant end with one contactor in, the other held out by the interlock contact', () => {
    const trajectory = run({ scheme: 'throughStop' }, [...press('forward', 0), ...press('reverse', 0)]);
    expect(coils(trajectory)).toEqual(['0.000 forward on', '0.000 reverse on', '0.018 reverse off']);
    expect(trajectory.shortCircuit).toBeNull();
  });

  it('anti-plugging keeps the opposite contactor out until the speed is low, and lets a held button in then', () => {
    const trajectory = run({ scheme: 'antiPlugging' }, [...press('forward', 0), hold('reverse', 1)]);
    const [, off, on] = coils(trajectory);
    expect(off).toBe('1.000 forward off');
    const opens = first(trajectory, 'switchOpens')!;
    expect(on).toBe(`${opens.t.toFixed(3)} reverse on`);
    expect(opens.speed).toBeLessThan(7);
  });

  it('inching brakes when the button is let go', () => {
    const trajectory = run({ scheme: 'jog', memoryRelay: true }, press('reverse', 0, 0.3));
    expect(coils(trajectory).slice(0, 3)).toEqual([
      '0.000 reverse on',
      '0.300 reverse off',
      '0.309 forward on',
    ]);
    expect(atEnd(trajectory)).toBe(0);
  });
});

describe('emergency stop and overload', () => {
  it.each([
    ['wired', 0],
    ['programmed with a scan of 0.1 s', 0.1],
  ])(
    '%s: category 0 drops both coils at once, while plugging too, and nothing starts when it is released',
    (_, scanTime) => {
      const trajectory = run(
        { memoryRelay: true, scanTime },
        [
          ...press('forward', 0, 0.5),
          ...press('stop', 1, 0.3),
          hold('emergencyStop', 1.3),
          { at: 1.35, do: 'release', button: 'emergencyStop' },
        ],
        [],
        (scenario) => ({ ...scenario, load: { ...scenario.load, inertia: 0.5 } }),
      );
      expect(coils(trajectory).at(-1)).toBe('1.300 reverse off');
      expect(trajectory.at(1.35).speed).toBeGreaterThan(20);
    },
  );

  it('the plain plug-stop circuit brakes again when the emergency stop is released while the machine coasts', () => {
    const result = simulate(
      controlScenario({}, [
        ...press('forward', 0),
        hold('emergencyStop', 1),
        { at: 1.1, do: 'release', button: 'emergencyStop' },
      ]),
    );
    expect(coils(result.trajectory)).toContain('1.100 reverse on');
    expect(result.controlFindings[0]).toEqual({
      kind: 'startsByItself',
      contactor: 'reverse',
      t: 1.1,
      cause: 'emergency stop released',
      held: false,
    });
  });

  it('category 1 brakes until the switch opens, or until its time limit is over', () => {
    const heavy =
      (inertia: number) =>
      (scenario: Scenario): Scenario => ({
        ...scenario,
        load: { ...scenario.load, inertia },
      });
    const stop = (limit: number, inertia: number) =>
      run(
        { memoryRelay: true, emergencyStop: { category: 1, limit } },
        [...press('forward', 0), hold('emergencyStop', 2)],
        [],
        heavy(inertia),
      );
    const braked = stop(2, 0.05);
    expect(coils(braked).slice(1)).toEqual([
      '2.000 forward off',
      '2.009 reverse on',
      `${first(braked, 'switchOpens')!.t.toFixed(3)} reverse off`,
    ]);
    const limited = stop(0.1, 0.5);
    expect(coils(limited).slice(1)).toEqual(['2.000 forward off', '2.009 reverse on', '2.100 reverse off']);
    expect(limited.commands).toEqual([
      { at: 0, do: 'startForward' },
      { at: 2, do: 'plug' },
    ]);
    expect(first(limited, 'timerElapses')?.text).toBe('braking time limit has run out');
  });

  it('the overload relay drops both coils while plugging, and its reset starts nothing', () => {
    const trajectory = run(
      { memoryRelay: true, overload: { setting: 14.6, tripClass: '10', start: 'cold', memory: 'kept' } },
      [...press('forward', 0), ...press('stop', 1), hold('overloadTest', 1.08), hold('overloadReset', 1.12)],
    );
    expect(coils(trajectory).at(-1)).toBe('1.080 reverse off');
    expect(first(trajectory, 'overloadResets')?.t).toBe(1.12);
    expect(atEnd(trajectory)).toBe(0);
  });

  it('a relay that never trips heats beyond its trip level', () => {
    const stalled = (scenario: Scenario): Scenario => ({
      ...scenario,
      load: { ...scenario.load, torques: [{ kind: 'friction', torque: 500, breakaway: 500 }] },
      solver: { ...scenario.solver, endTime: 12 },
    });
    const overload: ControlData['overload'] = {
      setting: 14.6,
      tripClass: '10',
      start: 'cold',
      memory: 'kept',
    };
    const fails = run(
      { scheme: 'throughStop', overload },
      press('forward', 0),
      [{ kind: 'overloadNeverTrips' }],
      stalled,
    );
    expect(fails.thermal?.value.at(-1)).toBeGreaterThan(1);
    expect(fails.segments.at(-1)?.kind).toBe('three');
  });
});

describe('faults of contactors and supply', () => {
  it('a welded forward contactor keeps the machine running whatever is pressed, and the report begins with it', () => {
    const result = simulate(
      controlScenario({ memoryRelay: true }, startAndStop, [
        { kind: 'weldedContactor', contactor: 'forward' },
      ]),
    );
    expect(atEnd(result.trajectory)).toBeGreaterThan(150);
    expect(finding(result, 'SI')).toMatch(/^The machine does not stop: the forward contactor stays in/);
    expect(result.controlFindings.map(({ kind }) => kind)).toEqual(['doesNotStop', 'startsByItself']);
    // Its break contact stays open: the reverse coil is never energised.
    expect(coils(result.trajectory).filter((text) => text.includes('reverse'))).toEqual([]);
  });

  it('with the interlock contact failed, the mechanical interlock keeps the other contactor out until it can move', () => {
    const failed: StarterFault = {
      kind: 'auxiliaryContact',
      contactor: 'forward',
      contact: 'interlock',
      stuck: 'closed',
    };
    const trajectory = run({ scheme: 'direct' }, [...press('forward', 0), ...press('reverse', 1)], [failed]);
    expect(first(trajectory, 'interlockBlocks')?.t).toBe(1);
    const touch = trajectory.events.find(
      ({ kind, contactor }) => kind === 'poleTouches' && contactor === 'reverse',
    )!.t;
    // It begins to move when the forward armature is out, 9 ms after its coil, and takes 18 ms.
    expect(touch).toBeCloseTo(1.027, 9);
    expect(trajectory.shortCircuit).toBeNull();
  });

  it('without it, and with too little time between the coils, the arcs are short-circuited', () => {
    const failed: StarterFault = {
      kind: 'auxiliaryContact',
      contactor: 'forward',
      contact: 'interlock',
      stuck: 'closed',
    };
    const quick = (scenario: Scenario): Scenario => ({
      ...scenario,
      starter: { ...scenario.starter, closingTime: 0.011, openingTime: 0.009 },
    });
    const trajectory = run(
      { scheme: 'direct' },
      [...press('forward', 0), ...press('reverse', 1)],
      [failed, { kind: 'mechanicalInterlockMissing' }],
      quick,
    );
    expect(trajectory.status.code).toBe('lineToLineShortCircuit');
    expect(trajectory.shortCircuit?.t).toBeCloseTo(1.011, 9);
  });

  it('the change-over timer keeps both contactors out for its time', () => {
    const trajectory = run({ scheme: 'direct', changeoverTimer: 0.2 }, [
      ...press('forward', 0),
      ...press('reverse', 1, 0.5),
    ]);
    // 1.009: the forward contactor is out and the timer starts.
    expect(coils(trajectory)).toEqual(['0.000 forward on', '1.000 forward off', '1.209 reverse on']);
  });

  it('a plain plug-stop circuit brakes by itself when the supply comes back; one with a memory relay stays dead', () => {
    const lost: StarterFault = { kind: 'supplyLost', from: 1.05, until: 1.15 };
    const plain = simulate(controlScenario({}, startAndStop, [lost]));
    expect(coils(plain.trajectory).slice(3)).toEqual([
      '1.050 reverse off',
      '1.150 reverse on',
      expect.stringContaining('reverse off'),
    ]);
    expect(plain.controlFindings[0]?.kind).toBe('startsByItself');
    const improved = simulate(controlScenario({ memoryRelay: true }, startAndStop, [lost]));
    expect(coils(improved.trajectory).slice(3)).toEqual(['1.050 reverse off']);
    expect(improved.controlFindings).toEqual([]);
    expect(improved.trajectory.at(1.15).speed).toBeGreaterThan(60);
  });

  it('a lost phase A or B takes the control voltage with it, phase C does not', () => {
    const lose = (phase: 'A' | 'B' | 'C') =>
      coils(run({ scheme: 'throughStop' }, press('forward', 0), [{ kind: 'lostPhase', phase, from: 0.8 }]));
    expect(lose('A')).toEqual(['0.000 forward on', '0.800 forward off']);
    expect(lose('B')).toEqual(['0.000 forward on', '0.800 forward off']);
    expect(lose('C')).toEqual(['0.000 forward on']);
  });
});

describe('the zero-speed switch', () => {
  it('has speeds of its own for reverse rotation', () => {
    const apart = (scenario: Scenario): Scenario => ({
      ...scenario,
      starter: {
        ...scenario.starter,
        zeroSpeedSwitch: {
          dropOutSpeed: 6,
          pickUpSpeed: 12,
          delay: 0,
          reverse: { dropOutSpeed: 20, pickUpSpeed: 40 },
        },
      },
    });
    const both = run(
      { scheme: 'plugStopBoth', memoryRelay: true },
      [...press('reverse', 0, 0.3), ...press('stop', 1)],
      [],
      apart,
    );
    expect(first(both, 'switchCloses')?.speed).toBeCloseTo(-40, 6);
    expect(first(both, 'switchOpens')?.speed).toBeCloseTo(-20, 6);
  });

  it('with a lockout is actuated only once a contactor has been in', () => {
    const locked = (scenario: Scenario): Scenario => ({
      ...scenario,
      starter: {
        ...scenario.starter,
        zeroSpeedSwitch: { ...scenario.starter.zeroSpeedSwitch!, lockout: true },
      },
    });
    // A load that drives the shaft by itself, as a hand or an overhauling load does.
    const driven = (scenario: Scenario): Scenario => ({
      ...scenario,
      load: { ...scenario.load, torques: [{ kind: 'gravity', torque: -3 }] },
      solver: { ...scenario.solver, endTime: 0.6 },
    });
    const nothing = hold('stop', 0);
    const plain = run({}, [nothing], [], driven);
    expect(coils(plain)[0]).toMatch(/reverse on$/);
    expect(coils(run({}, [nothing], [], (s) => locked(driven(s))))).toEqual([]);
    expect(coils(run({ memoryRelay: true }, [nothing], [], driven))).toEqual([]);
    expect(coils(run({}, startAndStop, [], locked)).slice(0, 3)).toEqual([
      '0.000 forward on',
      '1.000 forward off',
      '1.009 reverse on',
    ]);
  });
});

describe('a programmed control', () => {
  it('answers between one and two scans after a button, and misses one that is shorter than a scan', () => {
    const scanTime = 0.02;
    for (const at of [0.0, 0.001, 0.0131, 0.0199, 0.02]) {
      const trajectory = run({ scheme: 'throughStop', scanTime }, press('forward', at));
      const wait = first(trajectory, 'coilEnergised')!.t - at;
      expect(wait).toBeGreaterThanOrEqual(scanTime - 1e-12);
      expect(wait).toBeLessThanOrEqual(2 * scanTime);
    }
    const missed = run({ scheme: 'throughStop', scanTime }, press('forward', 0.003, 0.01));
    expect(first(missed, 'coilEnergised')).toBeUndefined();
  });
});
