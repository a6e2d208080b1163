/** The same load stopped otherwise: each way beside a closed form or what its setting promises. */
import { describe, expect, it } from 'vitest';
import { heatOfRun } from '../../../src/assess/heat/heatOfRun.ts';
import { thermalModel } from '../../../src/assess/heat/thermalModel.ts';
import { openCircuitTime } from '../../../src/machine/openCircuitTime.ts';
import { steadyState } from '../../../src/machine/steadyState.ts';
import { quadratureOf } from '../../../src/measure/quadrature.ts';
import { simulate } from '../../../src/measure/simulate.ts';
import { stopFigures } from '../../../src/measure/stopFigures.ts';
import type { ContactorData, LimitsData, Scenario } from '../../../src/scenario/scenario.ts';
import type { Alternative, StopName } from '../../../src/survey/alternatives/alternative.ts';
import { alternatives } from '../../../src/survey/alternatives/alternatives.ts';
import { commandedRun, stoppedBy } from '../../../src/survey/alternatives/commandedRun.ts';
import { openingInstants } from '../../../src/survey/openingInstants.ts';
import { BARE_CONTACTOR, PLUGGING_DUTY, pairOf } from '../../support/contactors.ts';
import { NO_LIMITS } from '../../support/judgedRun.ts';
import { ARCING_STARTER, PLAIN_CONTROL, scenarioOf } from '../../support/scenarios.ts';
import { KRAUSE } from '../../support/textbookMachines.ts';
import { NO_THERMAL } from '../../support/thermalModels.ts';
import { expectWithin } from '../../support/tolerance.ts';

const HP3 = KRAUSE.hp3;
const FRICTION = 6;
const BRAKE = { torque: 30, delay: 0.08 };
const SWITCH = { dropOutSpeed: 5, pickUpSpeed: 10, delay: 0 };
const COMMAND = 1;

const DEVICE: ContactorData = {
  ...BARE_CONTACTOR,
  ratedCurrentAc3: 18,
  ratedCurrentAc4: 9,
  lifeAc3: 1.2e6,
  lifeAc4: 5e4,
};

function base(changes: Partial<Scenario> = {}): Scenario {
  return {
    ...scenarioOf(HP3, {
      starter: { ...ARCING_STARTER, zeroSpeedSwitch: SWITCH },
      load: { inertia: 0, torques: [{ kind: 'friction', torque: FRICTION, breakaway: FRICTION }] },
      actions: [
        { at: 0, do: 'startForward' },
        { at: COMMAND, do: 'plug' },
      ],
      solver: { relativeTolerance: 1e-7 },
    }),
    thermal: { ...NO_THERMAL, insulationClass: '155' },
    duty: { ...PLUGGING_DUTY, operationsPerHour: 10, runningTime: 1 },
    contactors: pairOf(DEVICE),
    alternatives: {
      mechanicalBrake: BRAKE,
      injectionCurrent: null,
      injectionDelay: null,
      lineResistance: null,
      deadTime: null,
    },
    ...changes,
  };
}

function all(scenario: Scenario): Record<StopName, Alternative> {
  const result = simulate(scenario);
  const model = thermalModel(scenario, result.rated);
  const heat = heatOfRun(result);
  if (typeof model === 'string' || typeof heat === 'string') throw new Error(`${model} ${heat}`);
  const found = alternatives(result, { model, heat, cageIsFitted: false, means: null, failing: [] });
  return Object.fromEntries(found.map((one) => [one.name, one])) as Record<StopName, Alternative>;
}

function heatOfStart() {
  const heat = heatOfRun(simulate(base()));
  if (typeof heat === 'string') throw new Error(heat);
  return heat.start;
}

const ways = all(base());
const figuresOf = (name: StopName) => {
  const { figures, missing } = ways[name];
  if (figures === null) throw new Error(`${name}: ${missing}`);
  return figures;
};

describe('the load stopped otherwise', () => {
  it('plugs as the scenario itself does', () => {
    const own = simulate(base());
    expect(figuresOf('plug')).toEqual(stopFigures(quadratureOf(own.trajectory), COMMAND));
  });

  it('coasts to rest in J·ω/T once the poles are open', () => {
    const { time } = figuresOf('coast');
    const trajectory = ways.coast.result!.trajectory;
    const open = trajectory.segments.find(({ kind, t0 }) => kind === 'none' && t0 > COMMAND)!.t0;
    const coasting = (HP3.machine.inertia * trajectory.at(open).speed) / FRICTION;
    expectWithin(time!, open - COMMAND + coasting, { relative: 1e-6 }, 'coasting');
    expect(figuresOf('coast').peakCurrent).toBe(0);
  });

  it('is stopped by a mechanical brake with its torque beside the friction, from its delay on', () => {
    const { time, peakTorque } = figuresOf('mechanicalBrake');
    const trajectory = ways.mechanicalBrake.result!.trajectory;
    const sets = COMMAND + BRAKE.delay;
    const braking = (HP3.machine.inertia * trajectory.at(sets).speed) / (BRAKE.torque + FRICTION);
    expectWithin(time!, BRAKE.delay + braking, { relative: 1e-6 }, 'time');
    expect(peakTorque).toBe(BRAKE.torque);
  });

  it('takes the smallest direct current that stops it within three times the time of plugging', () => {
    const wanted = 3 * figuresOf('plug').time!;
    expect(figuresOf('directCurrent').time).toBeLessThanOrEqual(wanted);
    const { scenario } = ways.directCurrent.result!;
    const injection = scenario.starter.injection!;
    // Two per cent less is too little: the current is known to one.
    const weaker = simulate({
      ...scenario,
      starter: { ...scenario.starter, injection: { ...injection, voltage: 0.98 * injection.voltage } },
    });
    const { time } = stopFigures(quadratureOf(weaker.trajectory), COMMAND);
    expect(time).toBeGreaterThan(wanted);
    expectWithin(
      injection.delay - scenario.starter.openingTime,
      1.5 * openCircuitTime(HP3.machine),
      { relative: 1e-12 },
      'wait for the flux',
    );
  });

  it('tells what was chosen, in numbers', () => {
    const { lineResistors, injection } = {
      ...ways.lineResistors.result!.scenario.starter,
      injection: ways.directCurrent.result!.scenario.starter.injection!,
    };
    expect(ways.lineResistors.chosen).toEqual({ value: lineResistors!.resistance, unit: 'Ω' });
    const current = injection.voltage / (2 * HP3.machine.Rs + injection.resistance);
    expectWithin(ways.directCurrent.chosen!.value, current, { relative: 1e-12 }, 'direct current');
    expect(ways.longerDeadTime.chosen).toEqual({ value: 1.5 * openCircuitTime(HP3.machine), unit: 's' });
    expect([ways.plug.chosen, ways.coast.chosen]).toEqual([null, null]);
  });

  it('does not count ways that never act: the load stands before their turn', () => {
    // 0.02 kg·m² at 180 rad/s under 40 N·m stand after 0.09 s; 1.5 open-circuit time constants are 0.13 s.
    const scenario = base({
      load: { inertia: 0, torques: [{ kind: 'friction', torque: 40, breakaway: 40 }] },
    });
    const quick = all({ ...scenario, machine: { ...scenario.machine, inertia: 0.02 } });
    expect(quick.directCurrent).toMatchObject({
      figures: null,
      missing: 'the load has come to rest by itself before the direct current begins',
    });
    expect(quick.longerDeadTime).toMatchObject({
      figures: null,
      missing: "the load has come to rest by itself before the other contactor's turn",
    });
    expect(quick.plug.figures).not.toBe(null);
  });

  it('says of a load that turns the standing shaft that nothing holds it', () => {
    const pulled = all(base({ load: { inertia: 0, torques: [{ kind: 'gravity', torque: 5 }] } }));
    expect(pulled.plug.remark).toMatch(/^nothing holds this load at rest: it goes on turning by itself/u);
    expect(ways.plug.remark).toBe('');
  });

  it('goes with a scenario that has used its brake before the stop', () => {
    const scenario = base();
    const before = all({
      ...scenario,
      starter: { ...scenario.starter, brake: { torque: 9, delay: 0.01, sets: 'onCommand' } },
      actions: [
        { at: 0, do: 'brake' },
        { at: 0.2, do: 'startForward' },
        { at: 1.2, do: 'plug' },
      ],
    });
    expect(before.plug.missing).toBe(null);
    expectWithin(before.coast.figures!.time!, figuresOf('coast').time!, { relative: 0.01 }, 'coasting');
  });

  it('takes a stated direct current as it is', () => {
    const stated = { ...base().alternatives!, injectionCurrent: 14, injectionDelay: 0.2 };
    const { result, setting } = all(base({ alternatives: stated })).directCurrent;
    const { voltage, resistance, delay } = result!.scenario.starter.injection!;
    expectWithin(voltage / (2 * HP3.machine.Rs + resistance), 14, { relative: 1e-12 }, 'current');
    expectWithin(delay, 0.2 + ARCING_STARTER.openingTime, { relative: 1e-12 }, 'delay');
    expect(setting).toBe('current given; delay given');
  });

  it('plugs through the line resistor with which plugging draws the current of a start', () => {
    const lineResistance = ways.lineResistors.result!.scenario.starter.lineResistors!.resistance;
    const inserted = { lineResistance, rotorResistance: 0, star: false };
    const plugging = steadyState(HP3.machine, HP3.supply, 2, inserted).current;
    expectWithin(plugging, steadyState(HP3.machine, HP3.supply, 1).current, { relative: 1e-9 }, 'current');
    expect(figuresOf('lineResistors').peakCurrent).toBeLessThan(figuresOf('plug').peakCurrent);
    expect(figuresOf('lineResistors').lineResistorHeat).toBeGreaterThan(0);
  });

  it('plugs after a dead time of 1.5 open-circuit time constants', () => {
    const { result } = ways.longerDeadTime;
    expectWithin(
      result!.metrics.partingToTouch.value!,
      1.5 * openCircuitTime(HP3.machine),
      { relative: 1e-9 },
      'dead time',
    );
    // The residual voltage falls with the rotor flux and with the speed of the coasting shaft.
    const short = ways.plug.result!;
    const read = ({ metrics, trajectory, operations }: typeof short) => ({
      wait: metrics.partingToTouch.value!,
      voltage: metrics.residualVoltage.value!,
      speed: trajectory.at(operations.reversal!.touch!).speed,
    });
    const [before, after] = [read(short), read(result!)];
    const tau = openCircuitTime(HP3.machine);
    const decay = Math.exp(-(after.wait - before.wait) / tau);
    const rate = (speed: number) => Math.hypot(1 / tau, HP3.machine.polePairs * speed);
    expectWithin(
      after.voltage / before.voltage,
      (decay * rate(after.speed)) / rate(before.speed),
      { relative: 1e-6 },
      'residual voltage',
    );
  });

  it('is reversed through a stop only after it stands', () => {
    const { reversalTime, result } = ways.throughStop;
    const start = result!.trajectory.events.findLast(({ kind }) => kind === 'coilEnergised')!;
    expect(result!.trajectory.at(start.t).speed).toBe(0);
    expect(reversalTime).toBeGreaterThan(figuresOf('coast').time!);
  });

  it('is plugged in star where the machine is built in delta', () => {
    expect(ways.starPlugging.missing).toContain('connected in star');
    const delta = base();
    const star = all({ ...delta, machine: { ...delta.machine, connection: 'delta' } }).starPlugging;
    expect(star.result!.scenario.starter.plugConnection).toBe('star');
    // A third of the torque makes the stop longer.
    expect(star.figures!.time).toBeGreaterThan(figuresOf('plug').time!);
  });

  it('has no line resistors to add where the starter plugs through some', () => {
    const { starter } = base();
    const lineResistors = { resistance: 1, closingTime: 0.02, openingTime: 0.01, bypassAfter: null };
    const found = all(base({ starter: { ...starter, lineResistors } }));
    expect(found.lineResistors).toMatchObject({
      figures: null,
      missing: 'the starter as it stands plugs through line resistors',
    });
    expect(found.plug.figures!.lineResistorHeat).toBeGreaterThan(0);
  });

  it('lacks a brake where none is stated, and says so', () => {
    const { alternatives: stated } = base();
    const without = all(base({ alternatives: { ...stated!, mechanicalBrake: null } })).mechanicalBrake;
    expect(without).toMatchObject({ figures: null, missing: expect.stringContaining('brake is missing') });
  });
});

describe('limits that a way does not keep', () => {
  const remarks = (limits: Partial<LimitsData>) => {
    const found = all(base({ limits: { ...NO_LIMITS, ...limits } }));
    return (name: StopName) => found[name].remark;
  };

  it('are told of coasting, a brake and direct current by the figures of the stop', () => {
    const { time, angle } = figuresOf('mechanicalBrake');
    const late = remarks({ stopTime: 0.99 * time!, stopAngle: 1.01 * angle!, brakeTorque: 29 });
    expect(late('mechanicalBrake')).toBe(
      'does not keep: time from the command to zero speed, torque of the brake',
    );
    expect(late('coast')).toContain('time from the command to zero speed, angle turned until zero speed');
    const inTime = remarks({ stopTime: 1.01 * time!, stopAngle: 1.01 * angle!, brakeTorque: 31 });
    expect(inTime('mechanicalBrake')).toBe('');
  });

  it('are told of other ways to plug by all criteria, at the worst of the closing angles', () => {
    const crest = Math.max(figuresOf('longerDeadTime').peakCurrent, figuresOf('coast').peakCurrent);
    const tight = remarks({ instantaneousTrip: (0.9 * crest) / Math.SQRT2 });
    for (const name of ['plug', 'lineResistors', 'longerDeadTime'] as const)
      expect([name, tight(name)]).toEqual([
        name,
        expect.stringContaining('crest of the current against the instantaneous trip'),
      ]);
    expect(tight('coast')).toBe('');
  });

  it('are told of the plugging of the scenario as they were found for it', () => {
    const result = simulate(base());
    const [plug] = alternatives(result, {
      model: null,
      heat: null,
      cageIsFitted: false,
      means: openingInstants(result.scenario, 4).means,
      failing: ['one', 'another'],
    });
    expect(plug!.remark).toBe('does not keep: one, another');
  });
});

describe('what stopping costs', () => {
  it('leaves the contacts of the reversing contactor alone unless it plugs', () => {
    expect(ways.plug.cost.wearsFirst).toBe('reverse');
    for (const name of ['coast', 'mechanicalBrake', 'directCurrent'] as const)
      expect([name, ways[name].cost.wearsFirst]).toEqual([name, 'forward']);
    expect(ways.coast.cost.contactLife!).toBeGreaterThan(20 * ways.plug.cost.contactLife!);
  });

  it('permits more operations per hour by coasting than by direct current, and more by that than by plugging', () => {
    const perHour = (name: StopName) => ways[name].cost.operationsPerHour!;
    // Rotor heat of an operation without load: 1, 2 and 4 times the kinetic energy.
    expect(perHour('coast')).toBeGreaterThan(perHour('directCurrent'));
    expect(perHour('directCurrent')).toBeGreaterThan(perHour('plug'));
    expect(ways.plug.cost.binding).not.toBe('time');
  });

  it('leaves coasting its time: the next start comes after the load has stopped', () => {
    const { figures, cost } = ways.coast;
    const busy = heatOfStart().duration + 1 + figures!.time!;
    expect(cost.operationsPerHour!).toBeLessThanOrEqual((3600 / busy) * (1 + 1e-9));
    // A motor that hardly warms at rated load: only time binds.
    const cool = { ...base().thermal!, ratedRise: 1, cageRatedTemperature: 42 };
    const idle = all(
      base({ thermal: { ...cool, cageHeatCapacity: 1e5, windingHeatCapacity: 1e5, frameHeatCapacity: 1e6 } }),
    );
    expectWithin(idle.coast.cost.operationsPerHour!, 3600 / busy, { relative: 1e-6 }, 'operations per hour');
    expect(idle.coast.cost.binding).toBe('time');
    // A hundred long coastings; on a busy machine a minute.
  }, 180_000);

  it('is not judged without the sections it needs', () => {
    const { thermal: _t, contactors: _c, ...bare } = base();
    const result = simulate(bare);
    for (const { cost } of alternatives(result, {
      model: null,
      heat: null,
      cageIsFitted: false,
      means: null,
      failing: [],
    }))
      expect(cost).toEqual({ operationsPerHour: null, binding: null, contactLife: null, wearsFirst: null });
  });
});

describe('a run as commands', () => {
  it('has what the control circuit made of the buttons, and the dead time that came out', () => {
    const { changeoverDelay: _, ...starter } = ARCING_STARTER;
    const scenario = base({
      starter: {
        ...starter,
        changeoverDelay: 0,
        changeoverGivenAs: 'default',
        zeroSpeedSwitch: SWITCH,
        control: { ...PLAIN_CONTROL, scheme: 'plugStop', memoryRelay: true, changeoverTimer: 0.05 },
      },
      actions: [
        { at: 0, do: 'press', button: 'forward' },
        { at: 0.2, do: 'release', button: 'forward' },
        { at: COMMAND, do: 'press', button: 'stop' },
        { at: COMMAND + 0.2, do: 'release', button: 'stop' },
      ],
    });
    const result = simulate(scenario);
    const run = commandedRun(result)!;
    expect(run.scenario.starter.control).toBe(undefined);
    expect(run.direction).toBe(1);
    const again = simulate(stoppedBy(run, 'plug'));
    expectWithin(
      again.metrics.partingToTouch.value!,
      result.metrics.partingToTouch.value!,
      { absolute: 1e-9 },
      'dead time',
    );
    expectWithin(
      again.metrics.stopTimeFromTouch.value!,
      result.metrics.stopTimeFromTouch.value!,
      { relative: 0.02 },
      'stop',
    );
  });
});
