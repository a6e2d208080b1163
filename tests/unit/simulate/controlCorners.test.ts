/** Corners of the control in the loop: what is rare on a bench and must still be right. */
import { describe, expect, it } from 'vitest';
import { simulate } from '../../../src/measure/simulate.ts';
import type { Scenario, StarterFault } from '../../../src/scenario/scenario.ts';
import { runTrajectory } from '../../../src/simulate/run.ts';
import type { RunEvent, Trajectory } from '../../../src/simulate/trajectory.ts';
import { controlScenario, hold, press } from '../../support/controlScenario.ts';

const first = ({ events }: Trajectory, kind: RunEvent['kind'], device?: string) =>
  events.find((event) => event.kind === kind && (device === undefined || event.device === device));
const interlockFails: StarterFault = {
  kind: 'auxiliaryContact',
  contactor: 'forward',
  contact: 'interlock',
  stuck: 'closed',
};

it('a relay whose contact asks for it waits until the voltage is enough to pick up, while what is in stays in', () => {
  const weak = (scenario: Scenario): Scenario => ({
    ...scenario,
    supply: { ...scenario.supply, sourceResistance: 0.4, sourceInductance: 2.4e-3 },
    load: { ...scenario.load, inertia: 0.5 },
  });
  const trajectory = runTrajectory(
    controlScenario(
      { memoryRelay: true, coilVoltage: { pickUp: 0.9, dropOut: 0.4 } },
      press('forward', 0),
      [],
      weak,
    ),
  );
  const shown = first(trajectory, 'switchCloses')!.t;
  const picked = first(trajectory, 'relayPicksUp', 'forwardMemory')!.t;
  // The inrush lasts most of the start.
  expect(picked - shown).toBeGreaterThan(0.2);
  expect(trajectory.events.some(({ kind }) => kind === 'coilReleased')).toBe(false);
});

it('after the limit of category 1 has run out a programmed control starts again once the emergency stop is released', () => {
  const trajectory = runTrajectory(
    controlScenario({ memoryRelay: true, scanTime: 0.02, emergencyStop: { category: 1, limit: 0.1 } }, [
      ...press('forward', 0),
      hold('emergencyStop', 1),
      { at: 2, do: 'release', button: 'emergencyStop' },
      ...press('forward', 2.2),
    ]),
  );
  expect(first(trajectory, 'timerElapses')?.t).toBeCloseTo(1.1, 9);
  expect(trajectory.commands.at(-1)).toEqual({ at: 2.2, do: 'startForward' });
});

it('poles touch with their scatter under a control circuit too', () => {
  const scattered = (scenario: Scenario): Scenario => ({
    ...scenario,
    starter: { ...scenario.starter, closingScatter: [0, 0.001, 0.002] },
  });
  const { events } = runTrajectory(
    controlScenario({ scheme: 'throughStop' }, press('forward', 0), [], scattered),
  );
  expect(events.filter(({ kind }) => kind === 'poleTouches').map(({ t }) => Number(t.toFixed(6)))).toEqual([
    0.018, 0.019, 0.02,
  ]);
});

it('of two armatures that set off together the mechanical interlock lets one in, the other coil staying energised in vain', () => {
  const trajectory = runTrajectory(
    controlScenario(
      { scheme: 'throughStop' },
      [...press('forward', 0), ...press('reverse', 0)],
      [interlockFails],
    ),
  );
  expect(trajectory.shortCircuit).toBeNull();
  expect(first(trajectory, 'interlockBlocks')).toMatchObject({ contactor: 'reverse', t: 0.018 });
  expect(
    trajectory.events.filter(({ kind }) => kind === 'poleTouches').map(({ contactor }) => contactor),
  ).toEqual(['forward', 'forward', 'forward']);
});

it('without a mechanical interlock two armatures that set off together arrive together, and short-circuit two phases', () => {
  const trajectory = runTrajectory(
    controlScenario({ scheme: 'throughStop', mechanicalInterlock: false }, [
      ...press('forward', 0),
      ...press('reverse', 0),
    ]),
  );
  expect(trajectory.status.code).toBe('lineToLineShortCircuit');
  expect(trajectory.shortCircuit?.t).toBeCloseTo(0.018, 12);
  expect(trajectory.status.message).toContain('both contactors are closed on terminal B');
});

it('a short circuit at t = 0, before anything is integrated, is a status and no crash', () => {
  const quick = (scenario: Scenario): Scenario => ({
    ...scenario,
    starter: { ...scenario.starter, closingTime: 0 },
  });
  const result = simulate(
    controlScenario(
      { scheme: 'throughStop', mechanicalInterlock: false },
      [...press('forward', 0), ...press('reverse', 0)],
      [],
      quick,
    ),
  );
  expect(result.status).toMatchObject({ code: 'lineToLineShortCircuit', time: 0 });
  expect(result.usable).toBe(false);
});

it('contactors without operating times that a dip drops at the instant they close end the run, and do not hang it', () => {
  const instant = (scenario: Scenario): Scenario => ({
    ...scenario,
    supply: { ...scenario.supply, sourceResistance: 0.2, sourceInductance: 5e-3 },
    starter: { ...scenario.starter, closingTime: 0, openingTime: 0, poles: 'ideal' },
  });
  const coilVoltage = { pickUp: 0.85, dropOut: 0.75 };
  const { status } = simulate(
    controlScenario({ scheme: 'throughStop', coilVoltage }, [hold('forward', 0)], [], instant),
  );
  expect(status).toMatchObject({ code: 'stepLimit', time: 0 });
  expect(status.message).toContain('at one instant');
});

it('a program does not start the machine when the supply returns, though it had seen a button before the loss took effect', () => {
  const lost: StarterFault = { kind: 'supplyLost', from: 0.5, until: 1.02 };
  const { events } = runTrajectory(
    controlScenario(
      { scheme: 'direct', scanTime: 0.1 },
      [...press('forward', 0), ...press('forward', 0.85, 0.1)],
      [lost],
    ),
  );
  expect(events.filter(({ kind, t }) => kind === 'coilEnergised' && t > 0.5)).toEqual([]);
});

it('a machine that a welded contactor keeps running is followed until it runs steadily', () => {
  const trajectory = runTrajectory(
    controlScenario(
      { memoryRelay: true },
      [...press('forward', 0), hold('stop', 1)],
      [{ kind: 'weldedContactor', contactor: 'forward' }],
    ),
  );
  expect(trajectory.tEnd).toBeLessThan(2);
  expect(trajectory.at(trajectory.tEnd).speed).toBeGreaterThan(150);
});

it('a program names the cause once, however many scans it takes', () => {
  const { events } = runTrajectory(
    controlScenario({ scheme: 'plugStopBoth', memoryRelay: true, scanTime: 0.02 }, [
      ...press('forward', 0, 0.3),
      ...press('stop', 1),
    ]),
  );
  const texts = events
    .filter(({ kind }) => kind === 'coilEnergised' || kind === 'coilReleased')
    .map(({ text }) => text);
  expect(texts[0]).toMatch(/^forward coil energised: the program has seen this: [^:]+$/);
  for (const text of texts) expect(text.split('the program has seen this').length).toBeLessThanOrEqual(2);
});

it('a lockout that picks up while the shaft already turns lets the switch close', () => {
  const trajectory = runTrajectory(
    controlScenario({}, [hold('forward', 0.3)], [], (scenario) => ({
      ...scenario,
      starter: {
        ...scenario.starter,
        zeroSpeedSwitch: { ...scenario.starter.zeroSpeedSwitch!, lockout: true },
      },
      load: { ...scenario.load, torques: [{ kind: 'gravity', torque: -6 }] },
      solver: { ...scenario.solver, endTime: 0.5 },
    })),
  );
  expect(trajectory.at(0.29).speed).toBeGreaterThan(15);
  const free = first(trajectory, 'relayPicksUp', 'lockout')!.t;
  expect(first(trajectory, 'switchCloses')?.t).toBeCloseTo(free + 0.005, 9);
});

it('a button pressed again while it is down does nothing new', () => {
  const { events } = runTrajectory(
    controlScenario({ scheme: 'throughStop' }, [hold('forward', 0), hold('forward', 0.2)]),
  );
  expect(events.filter(({ kind }) => kind === 'buttonPressed')).toHaveLength(1);
});

it('a hold-in contact stuck closed starts the machine with the voltage, from rest and not by magic', () => {
  const fault: StarterFault = {
    kind: 'auxiliaryContact',
    contactor: 'forward',
    contact: 'holdIn',
    stuck: 'closed',
  };
  const trajectory = runTrajectory(controlScenario({ scheme: 'throughStop' }, press('stop', 0.6), [fault]));
  expect(first(trajectory, 'coilEnergised')).toMatchObject({
    t: 0,
    text: 'forward coil energised: the control voltage is on',
  });
  expect(first(trajectory, 'poleTouches')?.t).toBeCloseTo(0.018, 9);
});

it('a switch that does not pick up shows nothing, and its break contacts bar nothing', () => {
  const blind: StarterFault = { kind: 'zeroSpeedSwitch', mode: 'doesNotPickUp' };
  const stop = runTrajectory(controlScenario({}, [...press('forward', 0), ...press('stop', 1)], [blind]));
  expect(first(stop, 'switchCloses')).toBeUndefined();
  expect(stop.events.filter(({ kind }) => kind === 'coilEnergised')).toHaveLength(1);
  const barred = runTrajectory(
    controlScenario({ scheme: 'antiPlugging' }, [...press('forward', 0), ...press('reverse', 1)], [blind]),
  );
  expect(barred.commands.at(-1)).toEqual({ at: 1, do: 'startReverse' });
});

describe('without a control circuit', () => {
  it('the coils drop with the supply and stay out when it returns', () => {
    const { starter, ...rest } = controlScenario({}, []);
    const { control: _, ...plain } = starter;
    const trajectory = runTrajectory({
      ...rest,
      starter: { ...plain, faults: [{ kind: 'supplyLost', from: 0.8, until: 0.9 }] },
      actions: [{ at: 0, do: 'startForward' }],
    });
    const coils = trajectory.events.filter(({ kind }) => kind === 'coilEnergised' || kind === 'coilReleased');
    expect(coils.map(({ t, kind }) => [t, kind])).toEqual([
      [0, 'coilEnergised'],
      [0.8, 'coilReleased'],
    ]);
  });

  it('a contactor that is welded holds the machine in through a lost and returned supply', () => {
    const { starter, ...rest } = controlScenario({}, []);
    const { control: _, ...plain } = starter;
    const trajectory = runTrajectory({
      ...rest,
      starter: {
        ...plain,
        faults: [
          { kind: 'weldedContactor', contactor: 'forward' },
          { kind: 'supplyLost', from: 0.8, until: 0.9 },
        ],
      },
      actions: [{ at: 0, do: 'startForward' }],
      solver: { ...rest.solver, endTime: 1.5 },
    });
    expect(trajectory.segments.findLast(({ t0 }) => t0 < 0.85)?.kind).toBe('none');
    expect(trajectory.segments.at(-1)?.kind).toBe('three');
  });
});
