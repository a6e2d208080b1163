/** Overload relay and coils in the loop: what heats and what dips. */
import { describe, expect, it } from 'vitest';
import { newObservation } from '../../../src/machine/electricalModel.ts';
import { controlFindings } from '../../../src/measure/controlFindings.ts';
import type { ControlData, Scenario, StarterFault } from '../../../src/scenario/scenario.ts';
import { controlVoltage } from '../../../src/simulate/controlVoltage.ts';
import { runTrajectory } from '../../../src/simulate/run.ts';
import { stepOf } from '../../../src/simulate/step.ts';
import { thermalMemory } from '../../../src/simulate/thermalMemory.ts';
import { conduction } from '../../../src/starter/conduction.ts';
import { overloadConstants, tripTimeCold, tripTimeHot } from '../../../src/starter/overloadRelay.ts';
import { initialStarter, type StarterState } from '../../../src/starter/starter.ts';
import { controlScenario, hold, press } from '../../support/controlScenario.ts';

const SETTING = 14.6;
const CLASS_10: ControlData['overload'] = {
  setting: SETTING,
  tripClass: '10',
  start: 'cold',
  memory: 'kept',
};

const locked =
  (endTime: number | 'auto') =>
  (scenario: Scenario): Scenario => ({
    ...scenario,
    load: { ...scenario.load, torques: [{ kind: 'friction', torque: 500, breakaway: 500 }] },
    solver: { ...scenario.solver, endTime },
  });

/** Impedances per phase of the belt's motor at standstill and of a source, Ω. */
function lockedRotor(scenario: Scenario) {
  const { machine, supply } = scenario;
  const w = 2 * Math.PI * supply.frequency;
  const [cage] = machine.cages;
  const rotor = { r: cage!.Rr, x: w * cage!.Llr };
  const xm = w * machine.Lm;
  // jXm in parallel with Rr + jXr
  const d = rotor.r ** 2 + (rotor.x + xm) ** 2;
  const r = machine.Rs + (xm ** 2 * rotor.r) / d;
  const x = w * machine.Lls + (xm * (rotor.r ** 2 + rotor.x * (rotor.x + xm))) / d;
  return { r, x, rs: supply.sourceResistance, xs: w * supply.sourceInductance };
}

describe('the overload relay', () => {
  it.each(['5', '10A', '10', '20'] as const)(
    'class %s trips on a locked rotor after the time of its curve',
    (tripClass) => {
      const scenario = controlScenario(
        { scheme: 'throughStop', overload: { ...CLASS_10!, tripClass } },
        press('forward', 0),
        [],
        locked('auto'),
      );
      const { r, x } = lockedRotor(scenario);
      const multiple = scenario.supply.lineVoltage / Math.sqrt(3) / Math.hypot(r, x) / SETTING;
      const trajectory = runTrajectory(scenario);
      const trip = trajectory.events.find(({ kind }) => kind === 'overloadTrips')!;
      const touch = scenario.starter.closingTime;
      // The offset of the first periods heats a little more than the steady current: less than a period's worth of it.
      expect(trip.t - touch - tripTimeCold(multiple, overloadConstants(tripClass))).toBeLessThan(1e-4);
      expect(trip.t - touch - tripTimeCold(multiple, overloadConstants(tripClass))).toBeGreaterThan(-0.02);
      expect(trajectory.events.find(({ kind }) => kind === 'coilReleased')?.t).toBe(trip.t);
    },
  );

  it('trips sooner from the warm state, by the hot form of the curve', () => {
    const scenario = controlScenario(
      { scheme: 'throughStop', overload: { ...CLASS_10!, start: 'warm' } },
      press('forward', 0),
      [],
      locked('auto'),
    );
    const { r, x } = lockedRotor(scenario);
    const multiple = scenario.supply.lineVoltage / Math.sqrt(3) / Math.hypot(r, x) / SETTING;
    const trip = runTrajectory(scenario).events.find(({ kind }) => kind === 'overloadTrips')!;
    const expected = tripTimeHot(multiple, 1, overloadConstants('10'));
    expect(Math.abs(trip.t - scenario.starter.closingTime - expected)).toBeLessThan(0.02);
  });

  it('heats in long steady running as a constant r.m.s. current would, however long the steps of the integration', () => {
    const overload = { ...CLASS_10!, setting: 4 };
    const scenario = controlScenario({ scheme: 'throughStop', overload }, press('forward', 0), [], (s) => ({
      ...s,
      solver: { ...s.solver, endTime: 12 },
    }));
    const { thermal, sample } = runTrajectory(scenario);
    const { k, tau } = overloadConstants('10');
    const columns = sample(11, 11.02, 2001);
    // One period of 20 ms; the two ends are the same instant of it.
    const squares = Math.max(
      ...(['iA', 'iB', 'iC'] as const).map(
        (name) => columns[name].subarray(1).reduce((sum, i) => sum + i * i, 0) / 2000,
      ),
    );
    const level = squares / (k * overload.setting) ** 2;
    const heatAt = (t: number) => {
      const j = thermal!.t.findLastIndex((time) => time <= t);
      return { t: thermal!.t[j]!, heat: thermal!.value[j]! };
    };
    const before = heatAt(2);
    const after = heatAt(12);
    const expected = level + (before.heat - level) * Math.exp(-(after.t - before.t) / tau);
    // The ripple of i² within a half period, 5 ms of 420 s, is all that may differ.
    expect(Math.abs(after.heat - expected)).toBeLessThan(2e-5);
    expect(after.heat - before.heat).toBeGreaterThan(0.01);
  });

  it('follows currents that swing many times within one step of the integration', () => {
    const { k, tau } = overloadConstants('10');
    const omega = 100 * Math.PI;
    const crest = 40;
    const memory = thermalMemory(
      CLASS_10!,
      [0, 0, 0],
      (_, t, out) => {
        for (const phase of [0, 1, 2] as const)
          out[phase] = (crest * Math.cos(omega * t - (2 * Math.PI * phase) / 3)) ** 2;
      },
      0.02,
    );
    const step = stepOf(0, 1, () => 0);
    // ∫ e^(−(1−s)/τ)·cos² over whole half periods: that of one half, to the ripple's 1/(2ωτ).
    const expected = (crest ** 2 / 2 / (k * SETTING) ** 2) * (1 - Math.exp(-1 / tau));
    for (const heat of memory.advance(step, 1)) expect(Math.abs(heat / expected - 1)).toBeLessThan(1e-5);
  });

  it('cannot be reset while it is hot, and can once it has cooled', () => {
    const overload = { ...CLASS_10!, tripClass: '5' as const };
    const scenario = controlScenario(
      { scheme: 'throughStop', overload },
      [hold('forward', 0), hold('overloadReset', 6), hold('overloadReset', 60)],
      [],
      locked(61),
    );
    const kinds = runTrajectory(scenario)
      .events.filter(({ device }) => device === 'overload')
      .map(({ kind }) => kind);
    expect(kinds).toEqual(['overloadTrips', 'resetRefused', 'overloadResets']);
  });

  it.each([
    ['kept', true],
    ['lost', false],
  ] as const)('a memory %s with the supply is so', (memory, remembers) => {
    const lost: StarterFault = { kind: 'supplyLost', from: 2, until: 2.1 };
    const scenario = controlScenario(
      { scheme: 'throughStop', overload: { ...CLASS_10!, memory } },
      press('forward', 0),
      [lost],
      locked(3),
    );
    const { thermal } = runTrajectory(scenario);
    expect(thermal!.value[thermal!.t.findLastIndex((t) => t < 2)]).toBeGreaterThan(0.1);
    expect(thermal!.value.at(-1)! > 0.1).toBe(remembers);
  });
});

const weak =
  (change: (scenario: Scenario) => Scenario = (s) => s) =>
  (scenario: Scenario): Scenario =>
    change({ ...scenario, supply: { ...scenario.supply, sourceResistance: 0.4, sourceInductance: 2.4e-3 } });

describe('coils that feel the control voltage', () => {
  const share = (() => {
    const { r, x, rs, xs } = lockedRotor(controlScenario({}, [hold('forward', 0)], [], weak()));
    return Math.hypot(r, x) / Math.hypot(r + rs, x + xs);
  })();

  it('hold in while the dip stays above drop-out and drop below it', () => {
    const dropped = (dropOut: number) =>
      runTrajectory(
        controlScenario(
          { scheme: 'throughStop', coilVoltage: { pickUp: 0.85, dropOut } },
          press('forward', 0),
          [],
          weak(locked(0.6)),
        ),
      ).events.some(({ kind }) => kind === 'coilReleased');
    // Locked rotor: the steady dip is a division of impedances; the first periods swing about it by a few per cent.
    expect(share).toBeGreaterThan(0.6);
    expect(dropped(0.93 * share)).toBe(false);
    expect(dropped(1.02 * share)).toBe(true);
  });

  it('chatter while the button is held, and drop for good once it is not', () => {
    const run = (held: number) =>
      runTrajectory(
        controlScenario(
          { scheme: 'throughStop', coilVoltage: { pickUp: 0.95, dropOut: 1.03 * share } },
          press('forward', 0, held),
          [],
          weak(locked(0.8)),
        ),
      );
    const held = controlFindings(run(0.7)).find(({ kind }) => kind === 'voltageDrops');
    expect(held).toMatchObject({ contactor: 'forward' });
    expect(held?.kind === 'voltageDrops' && held.times).toBeGreaterThan(5);
    const tapped = controlFindings(run(0.02)).find(({ kind }) => kind === 'voltageDrops');
    expect(tapped).toMatchObject({ times: 1 });
  });

  it('are held in by the motor’s residual voltage for a while when the supply is lost', () => {
    const dropOut = 0.5;
    const lost: StarterFault = { kind: 'supplyLost', from: 1, until: null };
    const trajectory = runTrajectory(
      controlScenario({ scheme: 'throughStop', coilVoltage: { pickUp: 0.8, dropOut } }, press('forward', 0), [
        lost,
      ]),
    );
    const released = trajectory.events.find(({ kind }) => kind === 'coilReleased')!;
    expect(released.t).toBeGreaterThan(1.05);
    const { uAlpha, uBeta } = trajectory.at(released.t, 'left');
    const crest = Math.sqrt(2 / 3) * trajectory.scenario.supply.lineVoltage;
    expect(Math.hypot(uAlpha, uBeta) / crest).toBeCloseTo(dropOut, 6);
  });
});

describe('the control voltage', () => {
  it.each(['three', 'two'] as const)(
    'with %s poles is the source less what its impedance drops, by differences of the currents',
    (kind) => {
      const scenario = controlScenario(
        { scheme: 'throughStop' },
        press('forward', 0),
        [],
        weak((s) => ({
          ...s,
          starter: {
            ...s.starter,
            ...(kind === 'two' ? { faults: [{ kind: 'deadPole', contactor: 'forward', pole: 'B' }] } : {}),
          },
          solver: { ...s.solver, endTime: 0.3 },
        })),
      );
      const trajectory = runTrajectory(scenario);
      const { supply } = scenario;
      const omega = 2 * Math.PI * supply.frequency;
      const crest = Math.sqrt(2 / 3) * supply.lineVoltage;
      const starter: StarterState = {
        ...initialStarter(scenario.starter, [], 'rest'),
        poles: {
          forward: ['closed', kind === 'two' ? 'open' : 'closed', 'closed'],
          reverse: ['open', 'open', 'open'],
        },
      };
      expect(conduction(starter).kind).toBe(kind);
      for (const t of [0.031, 0.0553, 0.1217, 0.2001]) {
        const h = 1e-6;
        const [before, now, after] = [trajectory.at(t - h), trajectory.at(t), trajectory.at(t + h)];
        let alpha = 0;
        let beta = 0;
        for (const [k, name] of (['iA', 'iB', 'iC'] as const).entries()) {
          const source = crest * Math.cos(omega * t + supply.angle - (2 * Math.PI * k) / 3);
          const slope = (after[name] - before[name]) / (2 * h);
          const bus = source - supply.sourceResistance * now[name] - supply.sourceInductance * slope;
          alpha += (2 / 3) * bus * Math.cos((2 * Math.PI * k) / 3);
          beta += (2 / 3) * bus * Math.sin((2 * Math.PI * k) / 3);
        }
        const segment = trajectory.segments.find(({ t0, t1 }) => t0 <= t && t <= t1)!;
        expect(segment.kind).toBe(kind);
        const observation = newObservation();
        const step = segment.steps.find(({ t0, t1 }) => t0 <= t && t <= t1)!;
        const y = Array.from({ length: segment.model.size }, (_, c) => step.value(c, t));
        segment.model.observe(t, y, now.speed, now.position - segment.position0, observation);
        // Central differences of microseconds: good to 1e-6.
        expect(controlVoltage(scenario, starter, observation)).toBeCloseTo(
          Math.hypot(alpha, beta) / crest,
          5,
        );
      }
    },
  );
});

describe('the control voltage ahead of line resistors', () => {
  it('is that of the motor and the drop across the resistors that are in the lines', () => {
    const scenario = controlScenario({ scheme: 'direct' }, press('forward', 0), [], (s) => ({
      ...s,
      starter: {
        ...s.starter,
        lineResistors: { resistance: 3, closingTime: 0.02, openingTime: 0.01, bypassAfter: null },
      },
    }));
    const crest = Math.sqrt(2 / 3) * scenario.supply.lineVoltage;
    const closed = ['closed', 'closed', 'closed'] as const;
    const rest = initialStarter(scenario.starter, [], 'rest');
    const starter: StarterState = { ...rest, poles: { ...rest.poles, reverse: closed } };
    const at = { ...newObservation(), uAlpha: 100, uBeta: 50, iAlpha: 20, iBeta: -10 };
    expect(controlVoltage(scenario, starter, at)).toBeCloseTo(Math.hypot(160, 20) / crest, 12);
    const bypassed = { ...starter, bypass: { coil: true, closed: true } };
    expect(controlVoltage(scenario, bypassed, at)).toBeCloseTo(Math.hypot(100, 50) / crest, 12);
  });
});

describe('a programmed control with emergency stop category 1', () => {
  it.each([false, true])(
    'drops the driving contactor by wire, not by a scan (ready relay: %s)',
    (readyRelay) => {
      const trajectory = runTrajectory(
        controlScenario(
          {
            scheme: 'plugStop',
            memoryRelay: true,
            readyRelay,
            scanTime: 0.1,
            emergencyStop: { category: 1, limit: 1 },
          },
          [...press('reset', 0, 0.25), ...press('forward', 0.6, 0.4), hold('emergencyStop', 2.01)],
        ),
      );
      const released = trajectory.events.find(({ kind }) => kind === 'coilReleased')!;
      // A ready relay takes its own 10 ms.
      expect(released.t).toBeCloseTo(readyRelay ? 2.02 : 2.01, 9);
      expect(
        trajectory.events.some(({ kind, contactor }) => kind === 'coilEnergised' && contactor === 'reverse'),
      ).toBe(true);
    },
  );
});
