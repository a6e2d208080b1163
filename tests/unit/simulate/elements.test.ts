/**
 * What stands around the machine, each element switched on in whole runs, with what it has to change worked out from the
 * equivalent circuit: with three poles conducting, with two, and with none. An inertia of 10⁹ kg·m² keeps the speed.
 */
import { describe, expect, it } from 'vitest';
import { steadyState } from '../../../src/machine/steadyState.ts';
import { twoPoleSteadyState } from '../../../src/machine/twoPoleSteadyState.ts';
import { simulate } from '../../../src/measure/simulate.ts';
import type { MachineData, Supply } from '../../../src/scenario/scenario.ts';
import { steadySpeed } from '../../../src/shaft/steadySpeed.ts';
import { run } from '../../support/readings.ts';
import { IDEAL_STARTER, scenarioOf, type Variation } from '../../support/scenarios.ts';
import { DOUBLE_CAGE, KRAUSE, type TextbookMachine } from '../../support/textbookMachines.ts';
import { expectWithin } from '../../support/tolerance.ts';

/** Slowest decay at standstill 4.0/s (3 hp): e^{−4·3.5} is 8e-7. */
const SETTLED = 3.5;
const CLOSE = { relative: 3e-6 };
const INERTIA = 1e9;
const deadB = { kind: 'deadPole', pole: 'B' } as const;

interface Case {
  readonly textbook: TextbookMachine;
  readonly machine?: Partial<MachineData>;
  readonly variation: Variation;
}

/** Effective current of phase A over the last period of a run, A. */
function current({ textbook, machine, variation }: Case, endTime = SETTLED): number {
  const scenario = scenarioOf(textbook, {
    inertia: INERTIA,
    ...variation,
    solver: { endTime, relativeTolerance: 1e-7 },
  });
  const period = 1 / scenario.supply.frequency;
  const whole = { ...scenario, machine: { ...scenario.machine, ...machine } };
  // At constant speed the switch never opens.
  const readings = run(whole, ['endTimeReached', 'switchNeverOpened']);
  return Math.sqrt(readings.integral('iA2', endTime - period, endTime) / period);
}

const start: Variation = { actions: [{ at: 0, do: 'startForward' }] };
/** Plugging at constant speed: the switch never opens, slip 2 − s. */
const plug: Variation = {
  initial: 'runningForward',
  actions: [{ at: 0, do: 'plug' }],
  starter: { zeroSpeedSwitch: { dropOutSpeed: 1, pickUpSpeed: 2, delay: 0 } },
};
const withStarter = (variation: Variation, starter: Variation['starter']): Variation => ({
  ...variation,
  starter: { ...variation.starter, ...starter },
});

const machines = [
  ['one cage', KRAUSE.hp3],
  ['two cages', DOUBLE_CAGE],
] as const;

describe.each(machines)('line resistors, %s', (_name, textbook) => {
  const { machine, supply } = textbook;
  const R = 3 * machine.Rs;
  const lineResistors = { resistance: R, closingTime: 1000, openingTime: 0, bypassAfter: null };
  const added = { ...machine, Rs: machine.Rs + R };

  it('carry the current of a circuit with that much more stator resistance, three poles', () => {
    const variation = withStarter(start, { lineResistors });
    const expected = steadyState(added, supply, 1).current;
    expectWithin(current({ textbook, variation }), expected, CLOSE, 'locked rotor');
    expect(expected).toBeLessThan(0.9 * steadyState(machine, supply, 1).current);
  });

  it('do so with two poles', () => {
    const variation = withStarter(start, {
      lineResistors,
      faults: [{ ...deadB, contactor: 'forward' }],
    });
    const expected = twoPoleSteadyState(added, supply, 1).current;
    expectWithin(current({ textbook, variation }), expected, CLOSE, 'locked rotor');
  });

  it('come into the lines for plugging, out of a start in which they are bypassed', () => {
    const bypassed = { ...lineResistors, closingTime: 0 };
    expectWithin(
      current({ textbook, variation: withStarter(start, { lineResistors: bypassed }) }),
      steadyState(machine, supply, 1).current,
      CLOSE,
      'start',
    );
    const expected = steadyState(added, supply, 2).current;
    const plugged = current({ textbook, variation: withStarter(plug, { lineResistors: bypassed }) });
    expectWithin(plugged, expected, CLOSE, 'plugging at slip 2');
  });

  it('change nothing while no pole conducts', () => {
    const coast: Variation = { initial: 'runningForward', actions: [{ at: 0, do: 'coast' }] };
    expectWithin(
      residual(textbook, withStarter(coast, { lineResistors }), 0.1),
      residual(textbook, coast, 0.1),
      { relative: 1e-9 },
      'residual voltage',
    );
  });
});

/** Residual voltage at time t of a run that coasts from t = 0, V. */
function residual(
  textbook: TextbookMachine,
  variation: Variation,
  t: number,
  machine: Partial<MachineData> = {},
): number {
  const scenario = scenarioOf(textbook, { inertia: INERTIA, ...variation, solver: { endTime: t } });
  const { trajectory } = run({ ...scenario, machine: { ...scenario.machine, ...machine } });
  const { uAlpha, uBeta } = trajectory.at(t);
  return Math.hypot(uAlpha, uBeta);
}

describe('line resistors that come too late', () => {
  it('bring a warning: the peaks are those without', () => {
    const of = (openingTime: number) =>
      simulate(
        scenarioOf(KRAUSE.hp3, {
          ...withStarter(plug, {
            changeoverDelay: 0.03,
            lineResistors: { resistance: 2, closingTime: 0, openingTime, bypassAfter: null },
          }),
          solver: { endTime: 0.1 },
        }),
      ).warnings.filter((text) => text.includes('line resistors are not in the lines'));
    expect(of(0.05)).toHaveLength(1);
    expect(of(0.02)).toHaveLength(0);
  });
});

describe('line resistors that stay in after a full reversal', () => {
  it('decide to which speed the machine runs up, and when it counts as reversed and settled', () => {
    const textbook = KRAUSE.hp3;
    const { machine } = textbook;
    const R = 6 * machine.Rs;
    const load = { inertia: 0.02, torques: [{ kind: 'viscous', coefficient: 0.1 }] } as const;
    const scenario = scenarioOf(textbook, {
      initial: 'runningForward',
      load,
      starter: { lineResistors: { resistance: R, closingTime: 0, openingTime: 0, bypassAfter: null } },
      actions: [{ at: 0.01, do: 'startReverse' }],
    });
    // The balance of torque and load in a circuit with that much more stator resistance.
    const added = { ...machine, Rs: machine.Rs + R };
    const speed = -steadySpeed({ ...scenario, machine: { ...added, inertia: 0.089 } }, 1)!;
    const plain = -steadySpeed(scenario, 1)!;
    expect(Math.abs(speed / plain)).toBeLessThan(0.97);
    const { trajectory, metrics, status } = simulate(scenario);
    expect(status.code).toBe('finished');
    // Settled within 0.2 % of synchronous speed, and 0.2 s more.
    expectWithin(trajectory.at(trajectory.tEnd).speed, speed, { relative: 2e-3 }, 'speed in the end');
    expectWithin(trajectory.at(metrics.reversalTime.time!).speed, 0.95 * speed, { relative: 1e-7 }, '95 %');
  });
});

describe('resistors at the slip rings', () => {
  const textbook = KRAUSE.hp3;
  const { machine, supply } = textbook;
  const external = 2 * machine.cages[0]!.Rr;
  const rotorResistors = { starting: [{ resistance: external, duration: 1000 }], plugging: 2 * external };
  const withRotor = (extra: number): MachineData => ({
    ...machine,
    cages: [{ ...machine.cages[0]!, Rr: machine.cages[0]!.Rr + extra }],
  });

  it('carry the current of a circuit with that much more rotor resistance, three poles', () => {
    const locked = current({ textbook, machine: { rotorResistors }, variation: start });
    expectWithin(locked, steadyState(withRotor(external), supply, 1).current, CLOSE, 'start');
    const plugged = current({ textbook, machine: { rotorResistors }, variation: plug });
    expectWithin(plugged, steadyState(withRotor(2 * external), supply, 2).current, CLOSE, 'plugging');
  });

  it('do so with two poles', () => {
    const variation = withStarter(start, { faults: [{ ...deadB, contactor: 'forward' }] });
    const expected = twoPoleSteadyState(withRotor(external), supply, 1).current;
    expectWithin(
      current({ textbook, machine: { rotorResistors }, variation }),
      expected,
      CLOSE,
      'locked rotor',
    );
  });

  it('let the residual voltage decay that much faster with no pole', () => {
    const variation: Variation = {
      actions: [
        { at: 0, do: 'startForward' },
        { at: 0.2, do: 'coast' },
      ],
    };
    const scenario = scenarioOf(textbook, { inertia: INERTIA, ...variation, solver: { endTime: 0.3 } });
    const { trajectory } = run({ ...scenario, machine: { ...scenario.machine, rotorResistors } });
    const size = (t: number) => Math.hypot(trajectory.at(t).uAlpha, trajectory.at(t).uBeta);
    const [cage] = withRotor(external).cages;
    const T = (cage!.Llr + machine.Lm) / cage!.Rr;
    expectWithin(size(0.27) / size(0.22), Math.exp(-0.05 / T), CLOSE, 'decay');
  });

  it('take their share of the rotor heat, in proportion to the resistances', () => {
    const scenario = scenarioOf(textbook, { inertia: INERTIA, ...start, solver: { endTime: 0.2 } });
    const { ledger } = simulate({ ...scenario, machine: { ...machine, inertia: INERTIA, rotorResistors } });
    expectWithin(ledger.rotorResistorLoss / ledger.rotorLoss[0]!, 2, { relative: 1e-12 }, 'ratio');
    expect(ledger.residual).toBeLessThan(1e-8);
  });
});

describe.each(machines)('a delta machine that plugs in star, %s', (_name, star) => {
  const textbook: TextbookMachine = { ...star, machine: { ...star.machine, connection: 'delta' } };
  const { machine, supply } = textbook;
  const inStar = withStarter(plug, { plugConnection: 'star' });

  it('draws a third of the line current, three poles', () => {
    const expected = steadyState(machine, supply, 2).current / 3;
    expectWithin(current({ textbook, variation: inStar }), expected, CLOSE, 'plugging in star');
  });

  it('draws a third with two poles', () => {
    const faults = [{ ...deadB, contactor: 'reverse' }] as const;
    const expected = twoPoleSteadyState(machine, supply, 2).current / 3;
    expectWithin(
      current({ textbook, variation: withStarter(inStar, { faults }) }),
      expected,
      CLOSE,
      'two poles in star',
    );
  });

  it.each([
    ['AB', 1],
    ['AC', -1],
  ] as const)(
    'shows √3 times the residual voltage, turned by 30°, with no pole (windings %s)',
    (windingOrder, sense) => {
      const delayed = withStarter(plug, { changeoverDelay: 0.05 });
      const at = (starter: Variation['starter']) => {
        const scenario = scenarioOf(textbook, {
          inertia: INERTIA,
          ...withStarter(delayed, starter),
          solver: { endTime: 0.06 },
        });
        return simulate(scenario).metrics;
      };
      const delta = at({});
      const reconnected = at({ plugConnection: 'star', windingOrder });
      expectWithin(
        reconnected.residualVoltage.value! / delta.residualVoltage.value!,
        Math.sqrt(3),
        { relative: 1e-7 },
        'residual voltage',
      );
      // The residual voltage runs ahead by 30° (AB): the supply vector leads it by that much less.
      const turned = reconnected.residualAngle.value! - delta.residualAngle.value! + (sense * Math.PI) / 6;
      expectWithin(Math.sin(turned / 2), 0, { absolute: 1e-7 }, 'half the angle left over');
    },
  );
});

describe('ideal poles that chop a delta machine over to star', () => {
  it('lose the energy of the chopped current, once, whether there is a dead time or not', () => {
    const delta: TextbookMachine = {
      ...KRAUSE.hp3,
      machine: { ...KRAUSE.hp3.machine, connection: 'delta' },
    };
    const of = (changeoverDelay: number, star: boolean, at = 0.01) =>
      simulate(
        scenarioOf(delta, {
          ...withStarter(plug, { changeoverDelay, ...(star && { plugConnection: 'star' }) }),
          actions: [{ at, do: 'plug' }],
          supply: { sourceInductance: 1e-3, angle: 0.7 },
          solver: { endTime: 0.1 },
        }),
      ).ledger;
    const chopped = of(0.01, false).interruptionLoss;
    expect(chopped).toBeGreaterThan(0.1);
    for (const delay of [0, 0.01]) {
      const ledger = of(delay, true);
      expectWithin(ledger.interruptionLoss, chopped, { relative: 1e-9 }, `delay ${delay} s`);
      expect(ledger.residual).toBeLessThan(1e-8);
      // What is chopped before the run begins is no part of it.
      const atOnce = of(delay, true, 0);
      expect(atOnce.interruptionLoss).toBe(0);
      expect(atOnce.residual).toBeLessThan(1e-8);
    }
  });
});

describe('a cable', () => {
  const textbook = KRAUSE.hp3;
  const { machine } = textbook;
  const cable = { resistance: 0.3, inductance: 1e-3 };
  const supply: Supply = { ...textbook.supply, cable };
  const longer: MachineData = {
    ...machine,
    Rs: machine.Rs + cable.resistance,
    Lls: machine.Lls + cable.inductance,
  };

  it('adds its impedance to the stator’s, three poles, and dips the terminal voltage', () => {
    const scenario = scenarioOf(textbook, {
      ...start,
      inertia: INERTIA,
      supply,
      solver: { endTime: SETTLED },
    });
    const readings = run(scenario);
    const expected = steadyState(longer, textbook.supply, 1);
    const period = 1 / 60;
    const effective = Math.sqrt(readings.integral('iA2', SETTLED - period, SETTLED) / period);
    expectWithin(effective, expected.current, CLOSE, 'locked rotor');
    const { uAlpha, uBeta } = readings.trajectory.at(SETTLED);
    const line = Math.sqrt(1.5) * Math.hypot(uAlpha, uBeta);
    const alone = steadyState(machine, textbook.supply, 1);
    const ratio = expected.current / alone.current;
    expectWithin(line, ratio * textbook.supply.lineVoltage, CLOSE, 'terminal voltage');
    const { metrics, ledger } = simulate({ ...scenario, solver: { ...scenario.solver, endTime: 0.1 } });
    expect(metrics.startVoltageDip.value!).toBeGreaterThan(1 - ratio - 1e-3);
    expectWithin(
      ledger.cableLoss / ledger.statorLoss,
      cable.resistance / machine.Rs,
      { relative: 1e-9 },
      'loss',
    );
    expect(ledger.residual).toBeLessThan(1e-8);
  });

  it('adds its impedance with two poles', () => {
    const variation = {
      ...withStarter(start, { faults: [{ ...deadB, contactor: 'forward' }] }),
      supply,
    };
    const expected = twoPoleSteadyState(longer, textbook.supply, 1).current;
    expectWithin(current({ textbook, variation }), expected, CLOSE, 'locked rotor');
  });

  it('changes nothing while no pole conducts, but for the flux it starts from', () => {
    const coast: Variation = { initial: 'runningForward', actions: [{ at: 0, do: 'coast' }], supply };
    const decay = (variation: Variation) =>
      residual(textbook, variation, 0.1) / residual(textbook, variation, 0.05);
    expectWithin(decay(coast), decay({ ...coast, supply: {} }), { relative: 1e-9 }, 'decay');
  });
});

describe('a lost supply phase', () => {
  const textbook = KRAUSE.hp3;
  const { machine, supply } = textbook;

  it('leaves the current of two terminals, at rest and while plugging', () => {
    const faults = [{ kind: 'lostPhase', phase: 'B', from: 0 }] as const;
    const atRest = current({ textbook, variation: withStarter(start, { faults }) });
    expectWithin(atRest, twoPoleSteadyState(machine, supply, 1).current, CLOSE, 'at rest');
    const plugging = withStarter(plug, { faults: [{ ...faults[0], from: 1 }] });
    const expected = twoPoleSteadyState(machine, supply, 2).current;
    expectWithin(current({ textbook, variation: plugging }), expected, CLOSE, 'plugging');
  });

  it('ends at the next zero of its own current, before which nothing changes', () => {
    const at = 0.3037;
    const faults = [{ kind: 'lostPhase', phase: 'C', from: at }] as const;
    const arcing = { ...IDEAL_STARTER, poles: 'arcing' } as const;
    const scenario = scenarioOf(textbook, {
      ...start,
      inertia: INERTIA,
      starter: { ...arcing, faults },
      solver: { endTime: 0.4 },
    });
    const { trajectory } = run(scenario);
    const cleared = trajectory.events.find(({ kind }) => kind === 'phaseClears')!;
    const healthy = run({ ...scenario, starter: arcing }).trajectory;
    expect(cleared.t).toBeGreaterThan(at);
    expect(cleared.t).toBeLessThan(at + 1 / 120);
    expectWithin(healthy.at(cleared.t).iC, 0, { absolute: 1e-6 }, 'current of the healthy run there');
    expectWithin(
      trajectory.at(cleared.t - 1e-4).iC,
      healthy.at(cleared.t - 1e-4).iC,
      { relative: 1e-9 },
      'before',
    );
    expectWithin(trajectory.at(cleared.t + 1e-3).iC, 0, { absolute: 1e-9 }, 'after');
  });
});

describe('a welded pole', () => {
  const textbook = KRAUSE.hp3;
  const plugged = withStarter(plug, { poles: 'arcing', changeoverDelay: 0.03 });
  const of = (pole: 'A' | 'C') =>
    simulate(
      scenarioOf(textbook, {
        ...withStarter(plugged, { faults: [{ kind: 'weldedPole', contactor: 'forward', pole }] }),
        supply: { sourceResistance: 0.05 },
        solver: { endTime: 0.6 },
      }),
    );

  it('of an exchanged phase ends plugging in a short circuit that names the weld', () => {
    const { status, trajectory, metrics } = of('C');
    expect(status.code).toBe('lineToLineShortCircuit');
    expect(status.message).toMatch(/welded/);
    expect(trajectory.shortCircuit).toMatchObject({ t: 0.03, phase: 'C', welded: true });
    expectWithin(trajectory.shortCircuit!.prospectiveCurrent, 220 / 0.1, { relative: 1e-12 }, 'current');
    expect(metrics.arcMargin.value).toBeNull();
  });

  it('of the common phase does no harm to the plugging', () => {
    const { status, trajectory } = of('A');
    expect(status.code).not.toBe('lineToLineShortCircuit');
    const healthy = simulate(
      scenarioOf(textbook, {
        ...plugged,
        supply: { sourceResistance: 0.05 },
        solver: { endTime: 0.6 },
      }),
    ).trajectory;
    expectWithin(trajectory.at(0.1).iA, healthy.at(0.1).iA, CLOSE, 'current');
  });
});
