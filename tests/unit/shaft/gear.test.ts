/** A rigid shaft with a gear, against closed forms; the air-gap torque is given. */
import { describe, expect, it } from 'vitest';
import { initialShaft } from '../../../src/shaft/initialShaft.ts';
import { newShaftObservation, observeShaft } from '../../../src/shaft/observeShaft.ts';
import { reviewShaft } from '../../../src/shaft/reviewShaft.ts';
import { shaftRates } from '../../../src/shaft/shaftRates.ts';
import { expectWithin } from '../../support/tolerance.ts';
import { driveShaft, shaftWith } from './driveShaft.ts';

const ratio = 5;
const efficiency = 0.9;
const backwardEfficiency = 0.8;
const gear = { ratio, efficiency, backwardEfficiency };
const Jm = 0.1;
/** At the load's own shaft, and referred. */
const JL = 4;
const JLm = JL / ratio ** 2;
const ROUNDING = { relative: 1e-12 };
const gravity = (torque: number) => ({ kind: 'gravity', torque }) as const;
const friction = (torque: number, breakaway = torque) => ({ kind: 'friction', torque, breakaway }) as const;

/** Acceleration at a speed under a torque, the direction of power chosen by the shaft itself. */
function acceleration(shaft: ReturnType<typeof shaftWith>, omega: number, torque: number): number {
  const { state, mode } = initialShaft(shaft, omega);
  const dydt = [0, 0];
  shaftRates(shaft, reviewShaft(shaft, mode, state, torque).mode)(state, 0, torque, dydt);
  return dydt[0]!;
}

describe('a gear with loss', () => {
  const shaft = shaftWith({ inertia: JL, gear, torques: [friction(20)] });

  it.each([
    [100, 1],
    [-100, -1],
  ])('while the motor accelerates the load takes load and inertia torque over η: %d rad/s', (omega, sign) => {
    const expected = (10 - 20 / (ratio * efficiency)) / (Jm + JLm / efficiency);
    expectWithin(acceleration(shaft, omega, 10 * sign), sign * expected, ROUNDING, 'acceleration');
  });

  it.each([
    [100, 1],
    [-100, -1],
  ])('while the motor brakes gives back load and inertia torque times η_back: %d rad/s', (omega, sign) => {
    // The load's own friction brakes it more slowly than the motor does: its inertia drives the gear.
    const expected = (-30 - (20 / ratio) * backwardEfficiency) / (Jm + JLm * backwardEfficiency);
    expectWithin(acceleration(shaft, omega, -30 * sign), sign * expected, ROUNDING, 'acceleration');
  });

  it('drives the load while a friction slows it faster than the coasting motor', () => {
    const expected = -(20 / (ratio * efficiency)) / (Jm + JLm / efficiency);
    expectWithin(acceleration(shaft, 50, 0), expected, ROUNDING, 'acceleration');
  });

  it('with efficiencies of 1 only refers the load', () => {
    const ideal = shaftWith({
      inertia: JL,
      gear: { ratio, efficiency: 1, backwardEfficiency: 1 },
      torques: [friction(20)],
    });
    for (const torque of [10, -30])
      expectWithin(acceleration(ideal, 60, torque), (torque - 4) / (Jm + JLm), ROUNDING, 'acceleration');
  });

  it('loses (1 − η) of what it takes, in either direction', () => {
    const out = newShaftObservation();
    const { state, mode } = initialShaft(shaft, 100);
    // Driving: taken T_m·ω with T_m = T_e − J_m·dω/dt.
    observeShaft(shaft, mode, state, 0, 10, out);
    const taken = (10 - Jm * acceleration(shaft, 100, 10)) * 100;
    expectWithin(out.gearPower, (1 - efficiency) * taken, { relative: 1e-11 }, 'loss driving');
    // Braking: what arrives is η_back of what the load gives.
    observeShaft(shaft, reviewShaft(shaft, mode, state, -30).mode, state, 0, -30, out);
    const arrives = -(-30 - Jm * acceleration(shaft, 100, -30)) * 100;
    expectWithin(out.gearPower, arrives / backwardEfficiency - arrives, { relative: 1e-11 }, 'loss braking');
  });

  it('turns the direction of power where the load slows by itself as fast as the motor would, once', () => {
    // J_m·T_l + J_L·T_e = 0 (referred): T_e = −0.1 · 4/0.16 = −2.5 N·m, reached at t = (10 + 2.5)/50.
    const run = driveShaft(shaft, (t) => 10 - 50 * t, 0.5, 1e-3, initialShaft(shaft, 100));
    expect(run.events.map(({ kind }) => kind)).toEqual(['powerTurns']);
    // The band left to either side of zero is 1e-7 of the machine's torque scale, some 1e-6 N·m · J/J_L.
    expectWithin(run.events[0]!.t, 0.25, { absolute: 1e-7 }, 'time of turning');
    expect([run.moments[0]!.mode.power, run.end.mode.power]).toEqual([1, -1]);
  });

  it('turns it twice a period of a swinging torque, without chatter', () => {
    const run = driveShaft(
      shaft,
      (t) => 30 * Math.cos(2 * Math.PI * 50 * t),
      0.2,
      1e-4,
      initialShaft(shaft, 100),
    );
    expect(run.events.length).toBe(20);
  });

  it('is not turned by a torque that has died away', () => {
    const free = shaftWith({ inertia: JL, gear });
    // Noise of the size that an integration to 1e-8 leaves, 1e-7 N·m beside some 10 N·m rated.
    const run = driveShaft(free, (t) => 1e-7 * Math.sin(1000 * t), 0.1, 1e-4, initialShaft(free, 100));
    expect(run.events).toEqual([]);
  });

  it.each([1, -1])(
    'without load starts under either sign of torque with power towards the load: %d',
    (sign) => {
      const free = shaftWith({ inertia: JL, gear });
      const run = driveShaft(free, (t) => sign * 100 * t, 0.2, 1e-3);
      const expected = (sign * 100 * 0.2 ** 2) / 2 / (Jm + JLm / efficiency);
      expectWithin(run.end.y[0], expected, { relative: 1e-7 }, 'speed');
      expect(run.end.mode.power).toBe(1);
      expect(run.notes).toEqual([]);
    },
  );
});

describe('a hoist behind a gear', () => {
  const G = 100;
  const up = G / (ratio * efficiency);
  const down = (G * backwardEfficiency) / ratio;
  const hoist = shaftWith({ inertia: JL, gear, torques: [gravity(G)] });

  it('is lifted at constant speed by T/(i·η), lowered by T·η_back/i', () => {
    const dydt = [0, 0];
    for (const [omega, torque] of [
      [80, up],
      [-80, down],
    ] as const) {
      const { state, mode } = initialShaft(hoist, omega);
      shaftRates(hoist, mode)(state, 0, torque, dydt);
      expectWithin(dydt[0], 0, { absolute: 1e-12 }, 'acceleration');
      expect(mode.power).toBe(omega > 0 ? 1 : -1);
      expect(reviewShaft(hoist, mode, state, torque).mode.power).toBe(mode.power);
    }
  });

  it('stays at rest between the two limits and leaves at either', () => {
    const torque = (t: number) => 20 + 10 * t;
    const rising = driveShaft(hoist, torque, 0.5, 1e-3, {
      state: [0, 0],
      mode: { ...initialShaft(hoist, 0).mode, masses: [{ direction: 0, held: true }] },
    });
    expect(rising.events.map(({ kind }) => kind)).toEqual(['breakaway']);
    expectWithin(rising.events[0]!.t, (up - 20) / 10, { absolute: 1e-12 }, 'time of leaving upward');
    expect(rising.end.y[0]).toBeGreaterThan(0);
    const falling = driveShaft(hoist, (t) => 20 - 10 * t, 0.5, 1e-3, {
      state: [0, 0],
      mode: { ...initialShaft(hoist, 0).mode, masses: [{ direction: 0, held: true }] },
    });
    expect(falling.events.map(({ kind }) => kind)).toEqual(['breakaway']);
    expectWithin(falling.events[0]!.t, (20 - down) / 10, { absolute: 1e-12 }, 'time of leaving downward');
    expect(falling.end.y[0]).toBeLessThan(0);
    expect(falling.notes.map(({ text }) => text)).toEqual([
      'torque overcomes what the loss of the gear holds',
    ]);
  });

  it('without torque begins to fall at once, the load driving', () => {
    const { mode } = initialShaft(hoist, 0);
    expect(mode).toMatchObject({ masses: [{ direction: -1, held: false }], power: -1 });
    const run = driveShaft(hoist, () => 0, 0.5, 1e-2);
    const fall = -down / (Jm + JLm * backwardEfficiency);
    expectWithin(run.end.y[0], fall * 0.5, { relative: 1e-12 }, 'speed');
    expect(run.events).toEqual([]);
  });

  it('thrown upward without torque turns once and comes down more slowly than it went up', () => {
    const run = driveShaft(hoist, () => 0, 1, 1e-3, initialShaft(hoist, 50));
    // Going up the load's weight brakes motor and gear: T_g = T − J_L·|a| > 0 drives the load, over η.
    const rise = up / (Jm + JLm / efficiency);
    const fall = down / (Jm + JLm * backwardEfficiency);
    expect(run.events.map(({ kind }) => kind)).toEqual(['zeroSpeed']);
    expectWithin(run.events[0]!.t, 50 / rise, { relative: 1e-10 }, 'time of turning');
    expectWithin(run.end.y[0], -fall * (1 - 50 / rise), { relative: 1e-10 }, 'speed at the end');
    expect(run.end.mode.power).toBe(-1);
  });

  it('brought to rest by a torque between the limits is held there, once', () => {
    const run = driveShaft(hoist, () => 18, 2, 1e-3, initialShaft(hoist, 20));
    expect(run.events.map(({ kind }) => kind)).toEqual(['zeroSpeed']);
    expect(run.notes.map(({ text }) => text)).toEqual([
      'speed passes through zero',
      'the loss of the gear holds the shaft at rest',
    ]);
    expect(run.end.y[0]).toBe(0);
  });

  it('with dry friction has limits of (T + friction)/(i·η) and (T − friction)·η_back/i', () => {
    const rough = shaftWith({ inertia: JL, gear, torques: [gravity(G), friction(10, 15)] });
    const limits = [115 / (ratio * efficiency), (85 * backwardEfficiency) / ratio];
    const leaves = (torque: number) =>
      reviewShaft(
        rough,
        { ...initialShaft(rough, 0).mode, masses: [{ direction: 0, held: true }] },
        [0, 0],
        torque,
      ).mode.masses[0]!.direction;
    expect([limits[0]! + 1e-9, limits[0]! - 1e-9, limits[1]! + 1e-9, limits[1]! - 1e-9].map(leaves)).toEqual([
      1, 0, 0, -1,
    ]);
  });
});
