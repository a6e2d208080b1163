/** Two masses on an elastic coupling, against closed forms; the air-gap torque is given. */
import { describe, expect, it } from 'vitest';
import type { CouplingData, LoadData, MechanicalLossData } from '../../../src/scenario/scenario.ts';
import { afterShaftEvent } from '../../../src/shaft/afterShaftEvent.ts';
import { couplingTorque } from '../../../src/shaft/coupling.ts';
import { initialShaft } from '../../../src/shaft/initialShaft.ts';
import { newShaftObservation, observeShaft } from '../../../src/shaft/observeShaft.ts';
import { reviewShaft } from '../../../src/shaft/reviewShaft.ts';
import { shaftEventFunctions } from '../../../src/shaft/shaftEvents.ts';
import { shaftRates } from '../../../src/shaft/shaftRates.ts';
import { torsionalFrequency } from '../../../src/shaft/torsionalFrequency.ts';
import { expectAllWithin, expectWithin } from '../../support/tolerance.ts';
import { type Drive, driveShaft, shaftWith } from './driveShaft.ts';

const friction = (torque: number, breakaway = torque) => ({ kind: 'friction', torque, breakaway }) as const;
/** Fixed steps of 1/500 of a torsional period: the fourth-order error over a few periods is below 1e-8. */
const STEP = (2 * Math.PI) / 346.9 / 500;

interface Pair {
  readonly coupling?: Partial<CouplingData>;
  readonly load?: Partial<LoadData>;
  readonly inertia?: readonly [number, number];
  readonly loss?: MechanicalLossData;
}

function pair({ coupling = {}, load = {}, inertia = [1.662, 1.662], loss }: Pair = {}) {
  return shaftWith(
    { inertia: inertia[1], coupling: { stiffness: 1e5, damping: 0, backlash: 0, ...coupling }, ...load },
    { inertia: inertia[0], ...(loss && { loss }) },
  );
}

const torques = (shaft: ReturnType<typeof pair>, run: Drive) =>
  run.moments.map(({ y, mode }) => couplingTorque(shaft, mode.flank, y, 0));

describe('two masses', () => {
  it('have the natural frequency √(k·(1/J_m + 1/J_L))', () => {
    // Check value computed from the formula: 346.896 rad/s.
    expectWithin(torsionalFrequency(pair()), 346.896, { absolute: 5e-4 }, 'natural frequency');
    expect(torsionalFrequency(shaftWith({ inertia: 1 }))).toBe(null);
  });

  it('see a peak of 2·T·J_L/(J_m + J_L) half a period after a step of torque', () => {
    const shaft = pair();
    const run = driveShaft(shaft, () => 200, 0.02, STEP);
    const carried = torques(shaft, run);
    const peak = Math.max(...carried);
    // 200.0 N·m; the nearest of 500 points a period lies within 2e-5 of the crest.
    expectWithin(peak, 200, { relative: 2e-5 }, 'peak');
    const t = run.moments[carried.indexOf(peak)]!.t;
    expectWithin(t, Math.PI / 346.896, { absolute: STEP }, 'time of the peak');
  });

  it('share a step of torque by inertia, the load taking the larger part when it is the heavier', () => {
    const shaft = pair({ inertia: [1, 3] });
    const run = driveShaft(shaft, () => 100, 0.05, STEP);
    expectWithin(Math.max(...torques(shaft, run)), (2 * 100 * 3) / 4, { relative: 2e-5 }, 'peak');
    // Together they gain T·t.
    const [omegaM, , omegaG] = run.end.y;
    expectWithin(omegaM! + 3 * omegaG!, 100 * 0.05, { relative: 1e-10 }, 'angular momentum');
  });

  it('swing out as e^(−δ·t), δ = c/2·(1/J_m + 1/J_L)', () => {
    const c = 60;
    const shaft = pair({ coupling: { damping: c } });
    const delta = c / 1.662;
    const omega = Math.sqrt(1e5 * (2 / 1.662) - delta ** 2);
    const start = initialShaft(shaft, 0);
    const run = driveShaft(shaft, () => 0, 0.06, STEP, { ...start, state: [10, 0, 10, 1e-3] });
    for (const { t, y } of run.moments) {
      const twist =
        1e-3 * Math.exp(-delta * t) * (Math.cos(omega * t) + (delta / omega) * Math.sin(omega * t));
      expectWithin(y[3], twist, { absolute: 1e-11 }, `twist at ${t}`);
    }
  });

  it('running start twisted by what the coupling carries, so that nothing swings', () => {
    const shaft = pair({
      load: {
        torques: [{ kind: 'gravity', torque: 60 }, friction(20)],
        gear: { ratio: 2, efficiency: 0.9, backwardEfficiency: 0.8 },
      },
      loss: { friction: 1, windage: 1e-3 },
      coupling: { damping: 5, backlash: 0.01 },
    });
    for (const [omega, carried, twist] of [
      [120, 80 / 2 / 0.9, 0.005 + 80 / 2 / 0.9 / 1e5],
      [-120, (40 / 2) * 0.8, 0.005 + ((40 / 2) * 0.8) / 1e5],
    ] as const) {
      const { state, mode } = initialShaft(shaft, omega);
      expectAllWithin(state, [omega, 0, omega, twist], { relative: 1e-12 }, 'state');
      const air = carried + Math.sign(omega) * (1 + 1e-3 * omega ** 2);
      const dydt = [0, 0, 0, 0];
      shaftRates(shaft, mode)(state, 0, air, dydt);
      expectAllWithin(dydt, [0, omega, 0, 0], { absolute: 1e-9 }, 'rates');
    }
  });

  it('at rest start in equilibrium where bearing and coupling together hold the load', () => {
    const shaft = pair({
      load: { torques: [{ kind: 'gravity', torque: 30 }, friction(5, 10)] },
      loss: { friction: 25, windage: 0 },
    });
    const { state, mode } = initialShaft(shaft, 0);
    expect(mode.masses.map(({ held }) => held)).toEqual([true, true]);
    // The load's friction carries 10 of the 30 N·m.
    expectWithin(couplingTorque(shaft, mode.flank, state, 0), 20, { relative: 1e-6 }, 'coupling torque');
  });
});

describe('dry friction on either mass', () => {
  it('lets the load stick while the motor swings on the twisting shaft', () => {
    const shaft = pair({ load: { torques: [friction(100, 120)] } });
    const run = driveShaft(shaft, () => 50, 0.05, STEP);
    const omega = Math.sqrt(1e5 / 1.662);
    expect(run.events.every(({ kind, mass }) => kind === 'zeroSpeed' && mass === 0)).toBe(true);
    for (const { t, y } of run.moments) {
      expect(y[2]).toBe(0);
      expectWithin(y[3], (50 / 1e5) * (1 - Math.cos(omega * t)), { absolute: 1e-11 }, `twist at ${t}`);
    }
  });

  it('lets the load go when the coupling carries its breakaway torque', () => {
    const shaft = pair({ load: { torques: [friction(60, 80)] } });
    const run = driveShaft(shaft, () => 50, 0.02, STEP);
    const [first] = run.events;
    expect(first).toMatchObject({ kind: 'breakaway', mass: 1 });
    expectWithin(
      first!.t,
      Math.acos(1 - 80 / 50) / Math.sqrt(1e5 / 1.662),
      { relative: 1e-9 },
      'time of breaking away',
    );
  });

  it('holds the motor by its bearings until the air-gap torque exceeds them, the load feeling nothing', () => {
    const shaft = pair({ loss: { friction: 4, windage: 0 } });
    const run = driveShaft(shaft, (t) => 400 * t, 0.012, STEP);
    expect(run.events[0]).toMatchObject({ kind: 'breakaway', mass: 0 });
    expectWithin(run.events[0]!.t, 0.01, { absolute: 1e-12 }, 'time of breaking away');
    for (const { t, y } of run.moments.filter(({ t }) => t <= 0.01))
      expectAllWithin(y, [0, 0, 0, 0], { absolute: 0 }, `states at ${t}`);
  });

  it('stops both masses when they reach zero within the width to which events are located', () => {
    const shaft = pair({ load: { torques: [friction(30)] }, loss: { friction: 20, windage: 0 } });
    const { mode } = initialShaft(shaft, 10);
    const event = { kind: 'zeroSpeed', mass: 0 } as const;
    const after = afterShaftEvent(shaft, mode, event, [-1e-13, 4, -2e-13, 1e-4], 0);
    expect(after.state).toEqual([0, 4, 0, 1e-4]);
    expect(after.mode.masses.map(({ held }) => held)).toEqual([true, true]);
  });

  it('on motor and load brings both to rest, and each is held once', () => {
    const shaft = pair({
      load: { torques: [friction(30)] },
      loss: { friction: 20, windage: 0 },
      coupling: { damping: 100 },
    });
    const run = driveShaft(shaft, () => 0, 1, STEP, initialShaft(shaft, 10));
    // Together (J_m + J_L)·ω/(T_m + T_L); the mean of both keeps to it whatever swings at the end.
    const stop = (2 * 1.662 * 10) / 50;
    expectWithin(run.events[0]!.t, stop, { relative: 5e-3 }, 'time to rest');
    expect(run.end.mode.masses.map(({ held }) => held)).toEqual([true, true]);
    expect(run.end.y[0]).toBe(0);
    expect(run.end.y[2]).toBe(0);
    expect(run.notes.filter(({ kind }) => kind === 'shaftHeld').length).toBe(1);
    expect(run.events.length).toBeLessThan(12);
  });
});

describe('backlash', () => {
  const b = 0.02;
  const k = 1e5;
  const inertia = [1, 3] as const;
  const reduced = 3 / 4;
  const omega = Math.sqrt(k / reduced);
  const shaft = pair({ coupling: { backlash: b }, inertia });
  const middle = (v: number) => ({ ...initialShaft(shaft, 0), state: [v, 0, 0, 0] });

  it.each([1, -1])('is crossed freely and answered by a peak v·√(k·J_red), to either side: %d', (side) => {
    const v = 2 * side;
    const run = driveShaft(shaft, () => 0, 0.03, 1e-5, middle(v));
    const [touch, part, again] = run.events.filter(({ kind }) => kind === 'flank');
    expectWithin(touch!.t, b / 2 / 2, { relative: 1e-10 }, 'time of touching');
    expectWithin(part!.t - touch!.t, Math.PI / omega, { relative: 1e-8 }, 'time of contact');
    // Elastic: the masses part with the speed they met with, and cross the whole play.
    expectWithin(again!.t - part!.t, b / 2, { relative: 1e-8 }, 'time of flight');
    const carried = torques(shaft, run).slice(
      0,
      run.moments.findIndex(({ t }) => t >= part!.t),
    );
    const peak = Math.max(...carried.map((torque) => torque * side));
    expectWithin(peak, 2 * Math.sqrt(k * reduced), { relative: 1e-5 }, 'peak');
  });

  it('carries nothing in the gap, where the motor alone is accelerated', () => {
    const T = 50;
    const run = driveShaft(shaft, () => T, 0.05, 1e-5, middle(0));
    const [touch] = run.events;
    // b/2 = T/(2·J_m)·t²
    expectWithin(touch!.t, Math.sqrt(b / T), { relative: 1e-9 }, 'time of touching');
    const impact = run.moments.find(({ t }) => t === touch!.t)!;
    expectWithin(impact.y[0], Math.sqrt((2 * T * b) / 2), { relative: 1e-9 }, 'speed of impact');
    expect(impact.y[2]).toBe(0);
    expect(impact.y[3]).toBe(b / 2);
    // ½·J_red·v² + work of T on the way = ½·k·x²: peak = T_s + √(T_s² + v²·k·J_red), T_s = T·J_L/(J_m + J_L).
    const share = (T * 3) / 4;
    const peak = share + Math.sqrt(share ** 2 + T * b * k * reduced);
    expectWithin(Math.max(...torques(shaft, run)), peak, { relative: 1e-5 }, 'peak');
  });

  it('changes the flanks exactly where they touch, on the side the motion goes to', () => {
    const start = initialShaft(shaft, 0).mode;
    const event = shaftEventFunctions(shaft, start).find(({ kind }) => kind === 'flank')!;
    const touching = afterShaftEvent(shaft, start, event, [1, 0, 0, b / 2 + 1e-14], 0);
    expect(touching.mode.flank).toBe(1);
    expect(touching.state[3]).toBe(b / 2);
    const back = shaftEventFunctions(shaft, touching.mode).find(({ kind }) => kind === 'flank')!;
    const parted = afterShaftEvent(shaft, touching.mode, back, [-1, 0, 0, b / 2 - 1e-14], 0);
    expect(parted.mode.flank).toBe(0);
    expect(parted.state[3]).toBe(b / 2);
    // Neither fires where it starts, either fires when the twist goes on to the other side.
    expect(back.g(touching.state, 0, 0)).toBeGreaterThan(0);
    expect(back.g([0, 0, 0, b / 2 - 1e-12], 0, 0)).toBeLessThan(0);
    const gap = shaftEventFunctions(shaft, parted.mode).filter(({ kind }) => kind === 'flank');
    for (const { g } of gap) expect(g(parted.state, 0, 0)).toBeGreaterThan(0);
    expect(gap.some(({ g }) => g([0, 0, 0, b / 2 + 1e-12], 0, 0) < 0)).toBe(true);
  });

  it('with a damper loses what the damper takes and nothing else', () => {
    const damped = pair({ coupling: { backlash: b, damping: 20 }, inertia });
    const run = driveShaft(damped, () => 0, 0.1, 2e-6, {
      ...initialShaft(damped, 0),
      state: [2, 0, 0, 0],
    });
    const out = newShaftObservation();
    const seen = run.moments.map(({ t, y, mode }) => {
      observeShaft(damped, mode, y, 0, 0, out);
      return { t, stored: out.kinetic + out.twistEnergy, loss: out.couplingPower, mode };
    });
    let lost = 0;
    for (let i = 1; i < seen.length; i++) {
      const [a, z] = [seen[i - 1]!, seen[i]!];
      // At an event the left value of the power belongs to the mode before: the trapezium takes the mode that held.
      observeShaft(damped, a.mode, run.moments[i]!.y, 0, 0, out);
      lost += ((a.loss + out.couplingPower) / 2) * (z.t - a.t);
    }
    expect(run.events.length).toBeGreaterThan(3);
    // Error of the trapezium rule with 2e-6 s steps on a half-wave of 9 ms: about (π·2e-6/9e-3)²/12.
    expectWithin(seen[0]!.stored - seen.at(-1)!.stored, lost, { relative: 1e-6 }, 'energy lost');
  });

  it('comes to lie on the flank that the load presses, in finitely many bounces', () => {
    const pressed = pair({
      coupling: { backlash: b, damping: 60 },
      inertia,
      load: { torques: [{ kind: 'gravity', torque: 40 }] },
    });
    const start = { ...initialShaft(pressed, 0), state: [0, 0, 0, 0] };
    const run = driveShaft(pressed, () => 40, 2, 5e-5, {
      ...start,
      mode: { ...start.mode, flank: 0 },
    });
    expect(run.end.mode.flank).toBe(1);
    const [lastFlank] = run.events.filter(({ kind }) => kind === 'flank').slice(-1);
    expect(lastFlank!.t).toBeLessThan(1.5);
    expectWithin(torques(pressed, run).at(-1), 40, { relative: 1e-2 }, 'coupling torque at the end');
  });
});

describe('a coupling before a gear with loss', () => {
  const gear = { ratio: 4, efficiency: 0.9, backwardEfficiency: 0.7 };
  const shaft = pair({ load: { gear, inertia: 16 * 1.662 } });

  it('passes η of the coupling torque while driving, 1/η_back of it while driven', () => {
    const dydt = [0, 0, 0, 0];
    for (const [omega, twist, factor] of [
      [50, 1e-3, 0.9],
      [50, -1e-3, 1 / 0.7],
      [-50, -1e-3, 0.9],
      [-50, 1e-3, 1 / 0.7],
    ] as const) {
      const start = initialShaft(shaft, omega);
      const state = [omega, 0, omega, twist];
      const power = twist * omega > 0 ? 1 : -1;
      shaftRates(shaft, { ...start.mode, power })(state, 0, 0, dydt);
      expectWithin(dydt[2], (factor * 1e5 * twist) / 1.662, { relative: 1e-12 }, 'acceleration of the load');
      expect(reviewShaft(shaft, start.mode, state, 0).mode.power).toBe(power);
    }
  });

  it('swings with power turning at every zero of the coupling torque, and loses energy only in the gear', () => {
    const start = initialShaft(shaft, 50);
    const run = driveShaft(shaft, () => 0, 0.05, STEP, { ...start, state: [50, 0, 50, 1e-3] });
    const turns = run.events.filter(({ kind }) => kind === 'powerTurns');
    expect(turns.length).toBe(run.events.length);
    // Half periods alternate between the frequencies of J_L/η and J_L·η_back.
    const half = (factor: number) => Math.PI / Math.sqrt(1e5 * (1 / 1.662 + factor / 1.662));
    expectWithin(turns[1]!.t - turns[0]!.t, half(1 / 0.7), { relative: 1e-5 }, 'half period driven');
    expectWithin(turns[2]!.t - turns[1]!.t, half(0.9), { relative: 1e-5 }, 'half period driving');
    const out = newShaftObservation();
    const stored = run.moments.map(({ y, mode }) => {
      observeShaft(shaft, mode, y, 0, 0, out);
      expect(out.gearPower).toBeGreaterThan(-1e-4);
      return out.kinetic + out.twistEnergy;
    });
    expect(stored.at(-1)!).toBeLessThan(stored[0]!);
  });
});
