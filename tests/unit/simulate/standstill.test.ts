/** Dry friction that holds, breaking away, gravity, and the zero-speed switch, in real runs. */
import { describe, expect, it } from 'vitest';
import { run } from '../../support/readings.ts';
import { ARCING_STARTER, scenarioOf, startAtOnce } from '../../support/scenarios.ts';
import { KRAUSE } from '../../support/textbookMachines.ts';
import { expectWithin } from '../../support/tolerance.ts';

const zeroSpeedSwitch = { dropOutSpeed: 9, pickUpSpeed: 15, delay: 0.013 };
const friction = (torque: number, breakaway: number) => [{ kind: 'friction', torque, breakaway }] as const;

describe('dry friction', () => {
  it('holds a shaft at rest, exactly, until the torque exceeds the breakaway torque', () => {
    const start = run(startAtOnce(KRAUSE.hp3, 0.3, { load: { torques: friction(10, 40) } })).trajectory;
    const away = start.events.find((event) => event.kind === 'shaftBreaksAway')!;
    for (const share of [0, 0.3, 0.99]) expect(start.at(share * away.t).speed).toBe(0);
    expectWithin(start.at(away.t).torque, 40, { absolute: 1e-5 }, 'torque at breaking away');
    expect(start.at(away.t + 0.005).speed).toBeGreaterThan(0);
    expect(start.at(away.t + 0.005).loadTorque).toBe(10);
  });

  it('brings a coasting shaft to rest in finite time, J·ω/T, and holds it', () => {
    const coast = run(
      scenarioOf(KRAUSE.hp3, {
        initial: 'runningForward',
        load: { torques: friction(12, 12) },
        actions: [{ at: 0, do: 'coast' }],
      }),
    ).trajectory;
    const stop = (0.089 * coast.at(0).speed) / 12;
    const zero = coast.events.find((event) => event.kind === 'zeroSpeed')!;
    expectWithin(zero.t, stop, { relative: 1e-9 }, 'time to rest');
    expect(coast.events.map((event) => event.kind)).toContain('shaftHeld');
    expect(coast.at(coast.tEnd).speed).toBe(0);
    expectWithin(
      coast.at(coast.tEnd).position,
      0.5 * coast.at(0).speed * stop,
      { relative: 1e-9 },
      'angle turned',
    );
    expect(coast.status.code).toBe('finished');
  });

  it('does not chatter: one passage through zero, one hold', () => {
    const stop = run(
      scenarioOf(KRAUSE.hp3, {
        starter: { ...ARCING_STARTER, zeroSpeedSwitch },
        initial: 'runningForward',
        load: { torques: friction(3, 4) },
        actions: [{ at: 0, do: 'plug' }],
      }),
    ).trajectory;
    expect(stop.events.filter((event) => event.kind === 'shaftHeld').length).toBe(1);
    expect(stop.events.filter((event) => event.kind === 'zeroSpeed').length).toBeLessThan(3);
    expect(stop.segments.length).toBeLessThan(30);
  });

  it('turns its torque round with the direction', () => {
    const back = run(
      scenarioOf(KRAUSE.hp3, {
        initial: 'runningForward',
        load: { torques: friction(5, 6) },
        actions: [{ at: 0, do: 'startReverse' }],
        solver: { endTime: 0.9 },
      }),
    ).trajectory;
    expect(back.at(0.05).loadTorque).toBe(5);
    expect(back.at(0.85).speed).toBeLessThan(0);
    expect(back.at(0.85).loadTorque).toBe(-5);
  });
});

describe('gravity', () => {
  it('drives a lowering machine above synchronous speed, where it generates', () => {
    const lowering = run(
      scenarioOf(KRAUSE.hp3, {
        initial: 'runningForward',
        load: { torques: [{ kind: 'gravity', torque: -10 }] },
        solver: { endTime: 0.2 },
      }),
    );
    const { speed, torque } = lowering.trajectory.at(0.1);
    expect(speed).toBeGreaterThan(KRAUSE.hp3.synchronousSpeed);
    expectWithin(torque, -10, { absolute: 1e-6 }, 'torque');
    expect(lowering.integral('sourcePower', 0, 0.2)).toBeLessThan(0);
  });

  it('pulls an open machine through zero speed at constant deceleration', () => {
    const hoist = run(
      scenarioOf(KRAUSE.hp3, {
        initial: 'runningForward',
        load: { torques: [{ kind: 'gravity', torque: 8 }] },
        actions: [{ at: 0, do: 'coast' }],
        solver: { endTime: 3 },
      }),
    ).trajectory;
    const omega0 = hoist.at(0).speed;
    for (const t of [0.5, 1.5, 2.9])
      expectWithin(hoist.at(t).speed, omega0 - (8 / 0.089) * t, { absolute: 1e-6 }, `speed at ${t}`);
    expect(hoist.at(2.9).speed).toBeLessThan(0);
  });

  it('is held at rest by friction that is strong enough, and not by less', () => {
    const standing = (breakaway: number) =>
      run(
        scenarioOf(KRAUSE.hp3, {
          load: { torques: [{ kind: 'gravity', torque: 8 }, ...friction(6, breakaway)] },
          solver: { endTime: 0.5 },
        }),
      ).trajectory.at(0.5).speed;
    expect(standing(8)).toBe(0);
    expectWithin(standing(7.9), (-(8 - 6) / 0.089) * 0.5, { relative: 1e-9 }, 'speed after slipping back');
  });
});

describe('coasting', () => {
  it('against viscous friction is exponential', () => {
    const coast = run(
      scenarioOf(KRAUSE.hp3, {
        initial: 'runningForward',
        load: { torques: [{ kind: 'viscous', coefficient: 0.05 }] },
        actions: [{ at: 0, do: 'coast' }],
        solver: { endTime: 4 },
      }),
    ).trajectory;
    for (const t of [1, 4])
      expectWithin(
        coast.at(t).speed,
        coast.at(0).speed * Math.exp((-0.05 * t) / 0.089),
        { absolute: 1e-6 },
        'speed',
      );
  });

  it('against a fan is hyperbolic', () => {
    const coast = run(
      scenarioOf(KRAUSE.hp3, {
        initial: 'runningForward',
        load: { torques: [{ kind: 'fan', coefficient: 5e-4 }] },
        actions: [{ at: 0, do: 'coast' }],
        solver: { endTime: 4 },
      }),
    ).trajectory;
    const omega0 = coast.at(0).speed;
    for (const t of [1, 4])
      expectWithin(
        coast.at(t).speed,
        omega0 / (1 + (5e-4 * omega0 * t) / 0.089),
        { absolute: 1e-6 },
        'speed',
      );
  });
});

describe('the zero-speed switch', () => {
  const stop = run(
    scenarioOf(KRAUSE.hp3, {
      starter: { ...ARCING_STARTER, zeroSpeedSwitch },
      load: { torques: friction(1, 2) },
      actions: [
        { at: 0, do: 'startForward' },
        { at: 0.6, do: 'plug' },
      ],
    }),
  );
  const { trajectory } = stop;
  const moment = (kind: 'switchCloses' | 'switchOpens') =>
    trajectory.events.find((event) => event.kind === kind)!.t;

  it('closes its delay after the speed has passed pick-up, and opens its delay after drop-out', () => {
    expectWithin(
      trajectory.at(moment('switchCloses') - 0.013).speed,
      15,
      { absolute: 1e-7 },
      'pick-up speed',
    );
    expectWithin(trajectory.at(moment('switchOpens') - 0.013).speed, 9, { absolute: 1e-7 }, 'drop-out speed');
  });

  it('releases the plugging contactor at once, whose poles part after the opening time', () => {
    const parts = trajectory.events.find(
      (event) => event.kind === 'poleParts' && event.contactor === 'reverse',
    )!;
    expect(parts.t).toBe(moment('switchOpens') + 0.012);
  });

  it('works alike in reverse', () => {
    const mirrored = run(
      scenarioOf(KRAUSE.hp3, {
        starter: { ...ARCING_STARTER, zeroSpeedSwitch },
        load: { torques: friction(1, 2) },
        actions: [
          { at: 0, do: 'startReverse' },
          { at: 0.6, do: 'plug' },
        ],
      }),
    ).trajectory;
    const opens = mirrored.events.find((event) => event.kind === 'switchOpens')!.t;
    expectWithin(mirrored.at(opens - 0.013).speed, -9, { absolute: 1e-7 }, 'drop-out speed');
  });
});

describe('a zero of speed at which a segment begins', () => {
  it('does not fire again: a start from rest passes zero no further time', () => {
    const start = run(startAtOnce(KRAUSE.hp3, 0.3)).trajectory;
    const zeros = start.events.filter((event) => event.kind === 'zeroSpeed');
    // The first torque swing is positive: the shaft never turns back through zero.
    expect(zeros).toEqual([]);
    expect(start.at(0.3).speed).toBeGreaterThan(100);
  });

  it('after a plug stop without switch is passed once on the way into reverse', () => {
    const back = run(
      scenarioOf(KRAUSE.hp3, {
        initial: 'runningForward',
        actions: [{ at: 0, do: 'startReverse' }],
        solver: { endTime: 0.9 },
      }),
    ).trajectory;
    expect(back.events.filter((event) => event.kind === 'zeroSpeed').length).toBe(1);
  });
});
