import { describe, expect, it } from 'vitest';
import type { LoadTorque } from '../../../src/scenario/scenario.ts';
import { afterShaftEvent } from '../../../src/shaft/afterShaftEvent.ts';
import { holdsUnpowered, longestTimeToRest, slowsDown } from '../../../src/shaft/coasting.ts';
import { initialShaft } from '../../../src/shaft/initialShaft.ts';
import { newShaftObservation, observeShaft } from '../../../src/shaft/observeShaft.ts';
import { reviewShaft } from '../../../src/shaft/reviewShaft.ts';
import { shaftSize } from '../../../src/shaft/shaft.ts';
import { shaftEventFunctions } from '../../../src/shaft/shaftEvents.ts';
import { shaftRates } from '../../../src/shaft/shaftRates.ts';
import { expectWithin } from '../../support/tolerance.ts';
import { driveShaft, shaftWith } from './driveShaft.ts';

const LOADS: readonly LoadTorque[] = [
  { kind: 'friction', torque: 2, breakaway: 3 },
  { kind: 'friction', torque: 1, breakaway: 1.5 },
  { kind: 'viscous', coefficient: 0.1 },
  { kind: 'fan', coefficient: 0.02 },
  { kind: 'gravity', torque: 7 },
  { kind: 'gravity', torque: -2 },
];
/** Rounding of sums of numbers of order one. */
const ROUNDING = { relative: 1e-13, absolute: 1e-13 };
const friction = (torque: number, breakaway = torque) => ({ kind: 'friction', torque, breakaway }) as const;

describe('shaftOf', () => {
  it('adds inertias and sums the loads by kind', () => {
    const shaft = shaftWith({ inertia: 0.4, torques: LOADS });
    expect(shaft).toMatchObject({
      inertia: 0.1 + 0.4,
      motorInertia: 0.1,
      loadInertia: 0.4,
      ratio: 1,
      gear: null,
      coupling: null,
      motor: { friction: 0, windage: 0 },
      friction: 3,
      breakaway: 4.5,
      viscous: 0.1,
      fan: 0.02,
      gravity: 5,
      pieces: [],
    });
    expect(shaftSize(shaft)).toBe(2);
  });

  it('refers inertia by the square of the ratio, torques by the ratio, coefficients by the power of speed', () => {
    const shaft = shaftWith({
      inertia: 50,
      gear: { ratio: 5, efficiency: 1, backwardEfficiency: 1 },
      torques: LOADS,
    });
    const { inertia, viscous, fan, gravity, friction: dry, breakaway } = shaft;
    expect({ inertia, gravity, dry, breakaway, gear: shaft.gear }).toEqual({
      inertia: 0.1 + 2,
      gravity: 7 / 5 - 2 / 5,
      dry: 2 / 5 + 1 / 5,
      breakaway: 3 / 5 + 1.5 / 5,
      gear: null,
    });
    expectWithin(viscous, 0.1 / 25, ROUNDING, 'viscous');
    expectWithin(fan, 0.02 / 125, ROUNDING, 'fan');
  });

  it('has four states with a coupling', () => {
    const coupling = { stiffness: 1e4, damping: 1, backlash: 0 };
    expect(shaftSize(shaftWith({ inertia: 1, coupling }))).toBe(4);
  });
});

describe('the plain shaft', () => {
  const shaft = shaftWith({ inertia: 0.37, torques: LOADS });

  it.each([
    [13.7, 91.3],
    [-44.1, 17.77],
    [21.9, -133.3],
    [0, 1e-9],
  ])('computes (T − smooth − dry)/J to the last bit: %d N·m at %d rad/s', (torque, omega) => {
    const direction = omega > 0 ? 1 : -1;
    const dydt = [0, 0, 0];
    shaftRates(shaft, initialShaft(shaft, omega).mode)([99, omega, 0], 1, torque, dydt);
    const smooth = 5 + omega * (0.1 + 0.02 * Math.abs(omega));
    expect(dydt).toEqual([0, (torque - smooth - 3 * direction) / (0.1 + 0.37), omega]);
  });

  it('is observed with load torque smooth + dry and the two powers, to the last bit', () => {
    const out = newShaftObservation();
    const omega = -83.21;
    observeShaft(shaft, initialShaft(shaft, omega).mode, [omega, 0], 0, 12.3, out);
    const smooth = 5 + omega * (0.1 + 0.02 * Math.abs(omega));
    expect(out).toEqual({
      loadTorque: smooth - 3,
      couplingTorque: 0,
      frictionPower: -3 * omega,
      lossPower: out.lossPower,
      loadPower: smooth * omega,
      gearPower: out.gearPower,
      couplingPower: 0,
      kinetic: 0.5 * 0.47 * omega ** 2,
      twistEnergy: 0,
    });
    // Nothing, of either sign.
    expect(Math.abs(out.lossPower) + Math.abs(out.gearPower)).toBe(0);
  });

  it.each([
    [4.5, true],
    [4.51, false],
    [-4.5, true],
    [-4.51, false],
    [0, true],
  ])('come to rest with %d N·m more than gravity is held: %s', (drive, held) => {
    const { mode } = initialShaft(shaft, 10);
    const event = { kind: 'zeroSpeed', mass: 0 } as const;
    const after = afterShaftEvent(shaft, mode, event, [1e-14, 3], 5 + drive);
    expect(after.mode.masses).toEqual([
      held ? { direction: 0, held: true } : { direction: Math.sign(drive), held: false },
    ]);
    expect(after.state).toEqual([0, 3]);
    expect(after.notes.map(({ kind }) => kind)).toEqual(held ? ['zeroSpeed', 'shaftHeld'] : ['zeroSpeed']);
  });

  it('without dry friction is never held, not even by no torque', () => {
    const free = shaftWith({});
    expect(initialShaft(free, 0).mode.masses).toEqual([{ direction: 1, held: false }]);
    expect(shaftEventFunctions(free, initialShaft(free, 0).mode).map(({ kind }) => kind)).toEqual([
      'zeroSpeed',
    ]);
  });

  it('breaks away where |T − gravity| exceeds the breakaway torque', () => {
    const held = initialShaft(shaftWith({ torques: [friction(3, 8), ...LOADS.slice(4)] }), 0);
    const [event] = shaftEventFunctions(
      shaftWith({ torques: [friction(3, 8), ...LOADS.slice(4)] }),
      held.mode,
    );
    expect(held.mode.masses[0]!.held).toBe(true);
    for (const torque of [-20, -3.5, 0, 12.9, 13.1, 31])
      expect(event!.g([0, 0], 0, torque)).toBe(Math.abs(torque - 5) - 8);
  });
});

describe('an event function at its own root', () => {
  it('is on the side the state comes from, so that only a motion through the root fires it', () => {
    const shaft = shaftWith({ torques: [friction(3, 8)] });
    const resting = initialShaft(shaft, 0).mode;
    const [breakaway] = shaftEventFunctions(shaft, resting);
    expect(breakaway!.g([0, 0], 0, 8)).toBeLessThan(0);
    const [zero] = shaftEventFunctions(shaft, { ...resting, masses: [{ direction: -1, held: false }] });
    expect(zero!.g([0, 0], 0, -8)).toBeGreaterThan(0);
    expect(zero!.g([1e-300, 0], 0, -8)).toBeLessThan(0);
  });

  it('does not make a torque that touches the breakaway torque and falls back push the shaft round', () => {
    // Exactly at the limit the shaft is let go; the torque falls at once, friction as large as the breakaway torque stops it.
    const shaft = shaftWith({ torques: [friction(8)] });
    const run = driveShaft(shaft, (t) => 8.001 * Math.sin(100 * t), 0.2, 1e-4);
    for (const { y } of run.moments) expect(Math.abs(y[0]!)).toBeLessThan(1e-4);
    expect(run.events.length).toBeLessThan(20);
  });
});

describe('a jump of the torque', () => {
  const shaft = shaftWith({ torques: [friction(3, 8), LOADS[4]!] });
  const { mode, state } = initialShaft(shaft, 0);

  it('releases a held shaft that it overpowers, and no other', () => {
    expect(reviewShaft(shaft, mode, state, 15)).toEqual({ mode, notes: [] });
    for (const [torque, direction] of [
      [15.01, 1],
      [-1.01, -1],
    ] as const)
      expect(reviewShaft(shaft, mode, state, torque)).toEqual({
        mode: { ...mode, masses: [{ direction, held: false }] },
        notes: [{ kind: 'shaftBreaksAway', text: 'torque overcomes the breakaway torque' }],
      });
  });

  it('turns the friction of a shaft that was about to leave zero speed the other way, but not of a turning one', () => {
    const leaving = { ...mode, masses: [{ direction: 1, held: false } as const] };
    expect(reviewShaft(shaft, leaving, [0, 0], -30).mode.masses[0]!.direction).toBe(-1);
    expect(reviewShaft(shaft, leaving, [1e-9, 0], -30).mode.masses[0]!.direction).toBe(1);
  });
});

describe('losses of the motor itself', () => {
  const J = 0.1;

  it('bearing friction slows a coasting shaft by T/J and holds it at rest', () => {
    const shaft = shaftWith({}, { loss: { friction: 0.5, windage: 0 } });
    const run = driveShaft(shaft, () => 0, 25, 0.5, initialShaft(shaft, 100));
    expectWithin(run.events[0]!.t, (J * 100) / 0.5, { relative: 1e-10 }, 'time to rest');
    expect(run.end.y[0]).toBe(0);
    expect(run.notes.map(({ kind }) => kind)).toEqual(['zeroSpeed', 'shaftHeld']);
  });

  it('windage slows it hyperbolically, alike in reverse', () => {
    const shaft = shaftWith({}, { loss: { friction: 0, windage: 2e-4 } });
    for (const omega of [100, -100]) {
      const run = driveShaft(shaft, () => 0, 10, 0.02, initialShaft(shaft, omega));
      expectWithin(
        run.end.y[0],
        omega / (1 + (2e-4 * 100 * 10) / J),
        { relative: 1e-10 },
        'speed after 10 s',
      );
    }
  });
});

describe('coming to rest without power', () => {
  it('takes J·ω/(friction − gravity), bearings included, and never where gravity is the stronger', () => {
    const torques = [friction(5, 6), { kind: 'gravity', torque: -2 }] as const;
    const shaft = shaftWith({ inertia: 0.3, torques }, { loss: { friction: 1, windage: 0 } });
    expectWithin(longestTimeToRest(shaft, -100), (0.4 * 100) / (5 + 1 - 2), ROUNDING, 'time');
    expect(longestTimeToRest(shaftWith({ torques: [friction(1), torques[1]] }), 1)).toBe(
      Number.POSITIVE_INFINITY,
    );
  });

  it('holds while gravity is no more than friction, bearings and the loss of the gear', () => {
    const hoist = { kind: 'gravity', torque: 50 } as const;
    const gear = (backwardEfficiency: number) => ({ ratio: 5, efficiency: 0.8, backwardEfficiency });
    expect(holdsUnpowered(shaftWith({ torques: [hoist, friction(49)] }))).toBe(false);
    expect(holdsUnpowered(shaftWith({ torques: [hoist, friction(50)] }))).toBe(true);
    // 50/5 · 0.8 = 8 N·m arrive at the motor.
    const held = (bearing: number) =>
      holdsUnpowered(
        shaftWith({ torques: [hoist], gear: gear(0.8) }, { loss: { friction: bearing, windage: 0 } }),
      );
    expect([held(7.99), held(8.01)]).toEqual([false, true]);
  });

  it('is a slowing down for viscous, fan and windage alone', () => {
    expect(slowsDown(shaftWith({ torques: [{ kind: 'viscous', coefficient: 1 }] }))).toBe(true);
    expect(slowsDown(shaftWith({}, { loss: { friction: 0, windage: 1e-4 } }))).toBe(true);
    expect(slowsDown(shaftWith({}))).toBe(false);
    expect(slowsDown(shaftWith({ torques: [LOADS[2]!, LOADS[4]!] }))).toBe(false);
  });
});
