/**
 * A mechanical brake and direct current in two leads, beside closed forms. That a direct current I in two leads of a star
 * magnetises like an alternating current of √(2/3)·I is elementary (the space vector of i_B = −i_C = I is 2·I/√3 long) and
 * stands in the textbooks on braking.
 */
import { describe, expect, it } from 'vitest';
import { quadratureOf } from '../../../src/measure/quadrature.ts';
import { simulate } from '../../../src/measure/simulate.ts';
import { stopCommand, stopFigures } from '../../../src/measure/stopFigures.ts';
import type { Scenario, StarterData } from '../../../src/scenario/scenario.ts';
import { runTrajectory } from '../../../src/simulate/run.ts';
import { isSuccessful } from '../../../src/simulate/status.ts';
import { controlScenario, press } from '../../support/controlScenario.ts';
import { ARCING_STARTER, scenarioOf, type Variation } from '../../support/scenarios.ts';
import { KRAUSE } from '../../support/textbookMachines.ts';
import { expectWithin } from '../../support/tolerance.ts';

const HP3 = KRAUSE.hp3;
const SWITCH = { dropOutSpeed: 5, pickUpSpeed: 10, delay: 0 };
const BRAKE = { torque: 20, delay: 0.05, sets: 'onCommand' } as const;
const DIRECT = { voltage: 30, resistance: 0.1, delay: 0.4, closingTime: 0.02, duration: null };
const COMMAND = 0.1;

function running(starter: Partial<StarterData>, action: 'brake' | 'injectDc' | 'plug', more: Variation = {}) {
  return scenarioOf(HP3, {
    initial: 'runningForward',
    actions: [{ at: COMMAND, do: action }],
    ...more,
    starter: { ...ARCING_STARTER, ...starter },
  });
}

function eventAt(result: ReturnType<typeof simulate>, kind: string): number {
  const event = result.trajectory.events.find((candidate) => candidate.kind === kind);
  if (event === undefined) throw new Error(`no event ${kind}`);
  return event.t;
}

describe('a mechanical brake', () => {
  const result = simulate(running({ brake: BRAKE }, 'brake'));
  const { trajectory, ledger } = result;

  it('sets its delay after the command and stops the coasting shaft in J·ω/T', () => {
    const sets = eventAt(result, 'brakeSets');
    expectWithin(sets, COMMAND + BRAKE.delay, { absolute: 1e-12 }, 'setting');
    // Once the poles are open no torque but the brake's acts.
    const speed = trajectory.at(sets).speed;
    expectWithin(
      eventAt(result, 'zeroSpeed') - sets,
      (HP3.machine.inertia * speed) / BRAKE.torque,
      { relative: 1e-7 },
      'stop',
    );
  });

  it('holds the shaft and says so, and its work stands in the energy balance', () => {
    const text = trajectory.events.find(({ kind }) => kind === 'shaftHeld')?.text;
    expect(text).toBe('the brake holds the shaft at rest');
    expect(ledger.residual).toBeLessThan(1e-7);
    const sets = eventAt(result, 'brakeSets');
    const kinetic = 0.5 * HP3.machine.inertia * trajectory.at(sets).speed ** 2;
    expectWithin(ledger.frictionLoss, kinetic, { relative: 1e-6 }, 'work of the brake');
  });

  it('lets go when a contactor is energised again, and the machine starts as from rest', () => {
    const twice = simulate(
      running({ brake: BRAKE }, 'brake', {
        actions: [
          { at: COMMAND, do: 'brake' },
          { at: 2, do: 'startForward' },
        ],
      }),
    );
    expectWithin(eventAt(twice, 'brakeReleases'), 2, { absolute: 1e-12 }, 'release');
    const { speed } = twice.trajectory.at(twice.trajectory.tEnd);
    expect(speed).toBeGreaterThan(0.98 * HP3.synchronousSpeed);
  });

  it('holds a load that gravity would set in motion after plugging, when it is meant to', () => {
    const load = { inertia: 0, torques: [{ kind: 'gravity' as const, torque: 5 }] };
    const run = (sets: 'onCommand' | 'afterPlugging') =>
      simulate(
        running({ zeroSpeedSwitch: SWITCH, brake: { ...BRAKE, sets } }, 'plug', {
          load,
          solver: { endTime: 1.2 },
        }),
      );
    const held = run('afterPlugging').trajectory;
    expect(held.at(held.tEnd).speed).toBe(0);
    const notHeld = run('onCommand').trajectory;
    expect(notHeld.at(notHeld.tEnd).speed).toBeLessThan(-10);
    // Its coil is released with the reversing contactor's.
    const released = held.events.find((e) => e.kind === 'coilReleased' && e.contactor === 'reverse')!.t;
    const sets = held.events.find((e) => e.kind === 'brakeSets')!.t;
    expectWithin(sets - released, BRAKE.delay, { absolute: 1e-12 }, 'delay');
  });

  it('holds the load after a stop from push buttons too', () => {
    const pull = (scenario: Scenario): Scenario => ({
      ...scenario,
      load: { inertia: 0.05, torques: [{ kind: 'gravity', torque: 8 }] },
      starter: { ...scenario.starter, brake: { torque: 60, delay: 0.04, sets: 'afterPlugging' } },
    });
    const buttons = [...press('forward', 0), ...press('stop', 1)];
    const { trajectory } = simulate(controlScenario({ memoryRelay: true }, buttons, [], pull));
    const released = trajectory.events.findLast(
      (e) => e.kind === 'coilReleased' && e.contactor === 'reverse',
    )!.t;
    const sets = trajectory.events.filter((e) => e.kind === 'brakeSets');
    expect(sets.length).toBe(1);
    expectWithin(sets[0]!.t - released, 0.04, { absolute: 1e-12 }, 'delay');
    expect(trajectory.at(trajectory.tEnd).speed).toBe(0);
  });
});

describe('direct current in two leads', () => {
  it('gives in the steady state the torque of the alternating-current circuit at √(2/3) of it', () => {
    // A heavy flywheel keeps its speed while the currents settle.
    for (const share of [0.9, 0.5, 0.15]) {
      const scenario = running({ injection: { ...DIRECT, duration: 60, delay: 1 } }, 'injectDc', {
        inertia: 1e6,
        load: { inertia: 0, torques: [] },
        solver: { endTime: 4 },
      });
      const point = steadyPoint(scenario, share);
      const alternating = Math.sqrt(2 / 3) * Math.abs(point.iB);
      const torque = brakingTorque(alternating, share);
      expectWithin(-point.torque, torque, { relative: 2e-5 }, `torque at ${share} of synchronous speed`);
      expectWithin(
        point.iB,
        DIRECT.voltage / (2 * HP3.machine.Rs + DIRECT.resistance),
        { relative: 2e-5 },
        'current',
      );
      expect(Math.abs(point.iA)).toBe(0);
      expectWithin(point.iC, -point.iB, { relative: 1e-12 }, 'return current');
    }
  });

  it('waits its delay, ends with the zero-speed switch, and leaves no current behind', () => {
    const result = simulate(
      running({ zeroSpeedSwitch: SWITCH, injection: DIRECT }, 'injectDc', {
        load: { inertia: 0, torques: [{ kind: 'friction', torque: 1, breakaway: 1 }] },
      }),
    );
    expect(isSuccessful(result.status)).toBe(true);
    expectWithin(
      eventAt(result, 'injectionBegins'),
      COMMAND + DIRECT.delay + DIRECT.closingTime,
      { absolute: 1e-12 },
      'begin',
    );
    expect(eventAt(result, 'injectionEnds')).toBe(eventAt(result, 'switchOpens'));
    expect(eventAt(result, 'injectionIsGone')).toBeGreaterThan(eventAt(result, 'injectionEnds'));
    const end = result.trajectory.at(result.trajectory.tEnd);
    expect([end.iB, end.speed]).toEqual([0, 0]);
    expect(result.ledger.residual).toBeLessThan(1e-7);
  });

  it('heats the rotor by the kinetic energy it had, not three times that as plugging does', () => {
    const result = simulate(
      running({ zeroSpeedSwitch: { ...SWITCH, dropOutSpeed: 0.5 }, injection: DIRECT }, 'injectDc', {
        solver: { endTime: 8 },
      }),
    );
    const q = quadratureOf(result.trajectory);
    const begin = eventAt(result, 'injectionBegins');
    const kinetic = 0.5 * HP3.machine.inertia * result.trajectory.at(begin).speed ** 2;
    const heat = stopFigures(q, COMMAND).rotorHeat;
    // The decaying flux before, and the flux that builds up, add a little.
    expectWithin(heat / kinetic, 1, { absolute: 0.03 }, 'rotor heat over kinetic energy');
  });

  it('does not come while a contactor still conducts, and bars contactors while it is on', () => {
    const early = simulate(
      running(
        { zeroSpeedSwitch: SWITCH, injection: { ...DIRECT, delay: 0, closingTime: 0.001 } },
        'injectDc',
        {
          solver: { endTime: 0.3 },
        },
      ),
    );
    const refused = early.trajectory.events.find(({ kind }) => kind === 'injectionRefused');
    expect(refused?.text).toBe('direct current stays off: a contactor still conducts');
    const barred = simulate(
      running({ zeroSpeedSwitch: SWITCH, injection: DIRECT }, 'injectDc', {
        actions: [
          { at: COMMAND, do: 'injectDc' },
          { at: 0.7, do: 'startForward' },
        ],
        solver: { endTime: 1 },
      }),
    );
    expect(barred.trajectory.events.filter(({ kind }) => kind === 'coilEnergised')).toEqual([]);
    expect(barred.trajectory.events.some(({ kind, t }) => kind === 'injectionRefused' && t === 0.7)).toBe(
      true,
    );
  });

  it('stays off where the switch that shall end it is open already', () => {
    // 20 N·m stop the shaft in 0.84 s, before the direct current's turn.
    const late = simulate(
      running({ zeroSpeedSwitch: SWITCH, injection: { ...DIRECT, delay: 1.5 } }, 'injectDc', {
        load: { inertia: 0, torques: [{ kind: 'friction', torque: 20, breakaway: 20 }] },
        solver: { endTime: 2.5 },
      }),
    );
    const refused = late.trajectory.events.find(({ kind }) => kind === 'injectionRefused');
    expect(refused?.text).toBe('direct current stays off: the zero-speed switch is open');
    expect(late.trajectory.at(2.4).iB).toBe(0);
  });

  it('ends on the command to coast', () => {
    const result = simulate(
      running({ injection: { ...DIRECT, duration: 5 } }, 'injectDc', {
        actions: [
          { at: COMMAND, do: 'injectDc' },
          { at: 0.7, do: 'coast' },
        ],
        solver: { endTime: 2 },
      }),
    );
    expect(eventAt(result, 'injectionEnds')).toBe(0.7);
    expect(result.trajectory.at(2).iB).toBe(0);
  });
});

describe('figures of a stop', () => {
  it('count from the command that stops, whatever it is', () => {
    const scenario = running({ brake: BRAKE }, 'brake');
    const { trajectory } = simulate(scenario);
    expect(stopCommand(trajectory)).toBe(COMMAND);
    const figures = stopFigures(quadratureOf(trajectory), COMMAND);
    const sets = trajectory.events.find(({ kind }) => kind === 'brakeSets')!.t;
    const speed = trajectory.at(sets).speed;
    const braking = (HP3.machine.inertia * speed) / BRAKE.torque;
    expectWithin(figures.time!, BRAKE.delay + braking, { relative: 1e-6 }, 'time');
    // Turning on at full speed, then evenly slower.
    expectWithin(figures.angle!, speed * (BRAKE.delay + braking / 2), { relative: 1e-3 }, 'angle');
    expect(figures.peakTorque).toBe(BRAKE.torque);
    expect(figures.peakCurrent).toBe(0);
    expect(figures.couplingTorque).toBe(null);
  });

  it('take 1 % of synchronous speed for rest where friction never brings the shaft to zero', () => {
    const coefficient = 0.05;
    const result = simulate(
      scenarioOf(HP3, {
        initial: 'runningForward',
        starter: ARCING_STARTER,
        load: { inertia: 0, torques: [{ kind: 'viscous', coefficient }] },
        actions: [{ at: COMMAND, do: 'coast' }],
      }),
    );
    const figures = stopFigures(quadratureOf(result.trajectory), COMMAND);
    expect(figures.reachesZero).toBe(false);
    const open = result.trajectory.segments.find(({ kind }) => kind === 'none')!.t0;
    const from = result.trajectory.at(open).speed;
    const decay = (HP3.machine.inertia / coefficient) * Math.log(from / (0.01 * HP3.synchronousSpeed));
    expectWithin(figures.time!, open - COMMAND + decay, { relative: 1e-4 }, 'time to 1 %');
  });
});

/** The run's values after the currents have settled, at a share of synchronous speed that the flywheel keeps. */
function steadyPoint(scenario: Scenario, share: number) {
  // The steady start is at no-load speed; gravity-free flywheels of other speeds come from another number of poles' supply:
  // the same machine started at a lower frequency runs at that share of speed.
  const supply = {
    ...scenario.supply,
    frequency: share * scenario.supply.frequency,
    lineVoltage: share * scenario.supply.lineVoltage,
  };
  return runTrajectory({ ...scenario, supply }).at(3.9);
}

/** T = 3·I'²·Xm²·(Rr/S)/((Rr/S)² + (Xm + Xlr)²)/ω_s, S: speed over synchronous speed; I' alternating current, A r.m.s. */
function brakingTorque(current: number, S: number): number {
  const { Lm, cages } = HP3.machine;
  const [cage] = cages;
  const omega = 2 * Math.PI * HP3.supply.frequency;
  const Xm = omega * Lm;
  const r = cage!.Rr / S;
  const x = Xm + omega * cage!.Llr;
  return (3 * current ** 2 * Xm ** 2 * r) / (r ** 2 + x ** 2) / HP3.synchronousSpeed;
}
