/** Coasting against closed forms, against sums of small steps, and against runs of the simulation. */
import { describe, expect, it } from 'vitest';
import { coastDown } from '../../../../src/assess/stop/coastDown.ts';
import { simulate } from '../../../../src/measure/simulate.ts';
import type { LoadData, LoadTorque } from '../../../../src/scenario/scenario.ts';
import { shaftOf } from '../../../../src/shaft/shaft.ts';
import { scenarioOf } from '../../../support/scenarios.ts';
import { KRAUSE } from '../../../support/textbookMachines.ts';
import { expectWithin } from '../../../support/tolerance.ts';

const ROTOR = KRAUSE.hp3.machine.inertia;
const LOAD = 0.411;
const J = ROTOR + LOAD;
const W = 180;
/** Five Gauss points in cells whose ends are 0.8 apart: the error of 1/ω and of rational functions is far below this. */
const EXACT = { relative: 1e-8 };

const shaft = (torques: readonly LoadTorque[], load: Partial<LoadData> = {}) =>
  shaftOf(scenarioOf(KRAUSE.hp3, { load: { inertia: LOAD, torques, ...load } }));
const dry = (torque: number): LoadTorque => ({ kind: 'friction', torque, breakaway: torque });

describe('coasting against closed forms', () => {
  it('dry friction: t = Jω/T and θ = Jω²/2T', () => {
    const found = coastDown(shaft([dry(3)]), W);
    expect(found.outcome).toBe('rest');
    expectWithin(found.time, (J * W) / 3, EXACT, 'time');
    expectWithin(found.angle, (J * W ** 2) / 6, EXACT, 'angle');
  });

  it('a viscous load only slows it: to one per cent in (J/B)·ln 100 and J·0.99ω/B', () => {
    const found = coastDown(shaft([{ kind: 'viscous', coefficient: 0.04 }]), W);
    expect(found.outcome).toBe('slows');
    expectWithin(found.to, 1.8, EXACT, 'speed at the end');
    expectWithin(found.time, (J / 0.04) * Math.log(100), EXACT, 'time');
    expectWithin(found.angle, (J / 0.04) * 0.99 * W, EXACT, 'angle');
  });

  it('a fan only slows it: to one per cent in (J/k)·99/ω and (J/k)·ln 100', () => {
    const k = 3e-4;
    const found = coastDown(shaft([{ kind: 'fan', coefficient: k }]), W);
    expect(found.outcome).toBe('slows');
    expectWithin(found.time, ((J / k) * 99) / W, EXACT, 'time');
    expectWithin(found.angle, (J / k) * Math.log(100), EXACT, 'angle');
  });

  it('a fan with dry friction comes to rest: t = J/√(Tk)·atan(ω√(k/T)), θ = J/2k·ln(1 + kω²/T)', () => {
    const [T, k] = [0.05, 3e-4];
    const found = coastDown(shaft([dry(T), { kind: 'fan', coefficient: k }]), -W);
    expect(found.outcome).toBe('rest');
    expectWithin(found.time, (J / Math.sqrt(T * k)) * Math.atan(W * Math.sqrt(k / T)), EXACT, 'time');
    expectWithin(found.angle, (J / (2 * k)) * Math.log(1 + (k * W ** 2) / T), EXACT, 'angle');
  });

  it('constant power: J(ω² − ω_b²)/2P above the base speed, Jω_b²/P below', () => {
    const [power, baseSpeed] = [900, 50];
    const found = coastDown(shaft([{ kind: 'constantPower', power, baseSpeed }]), W);
    expect(found.outcome).toBe('rest');
    expectWithin(
      found.time,
      (J * (W ** 2 - baseSpeed ** 2)) / (2 * power) + (J * baseSpeed ** 2) / power,
      EXACT,
      'time',
    );
  });

  it('gravity adds to friction upwards and takes from it downwards', () => {
    const hoist = shaft([dry(5), { kind: 'gravity', torque: 2 }]);
    expectWithin(coastDown(hoist, W).time, (J * W) / 7, EXACT, 'upwards');
    expectWithin(coastDown(hoist, -W).time, (J * W) / 3, EXACT, 'downwards');
  });

  it('through a gear with loss the rotor drives the friction: t = ω(J_M + J_L/i²η)/(T/iη)', () => {
    const [ratio, efficiency] = [5, 0.8];
    const geared = shaft([dry(20)], { gear: { ratio, efficiency, backwardEfficiency: 0.7 } });
    const inertia = ROTOR + LOAD / ratio ** 2 / efficiency;
    expectWithin(coastDown(geared, W).time, (W * inertia) / (20 / ratio / efficiency), EXACT, 'time');
  });
});

describe('coasting that does not end', () => {
  it('a load that overhauls drives the shaft', () => {
    const lowering = shaft([dry(2), { kind: 'gravity', torque: 5 }]);
    expect(coastDown(lowering, -W)).toEqual({
      outcome: 'driven',
      from: W,
      to: 0.01 * W,
      time: null,
      angle: null,
    });
    expect(coastDown(lowering, W).outcome).toBe('rest');
  });

  it('a load that overhauls less than the fan at high speed settles at a speed of its own', () => {
    expect(
      coastDown(
        shaft([
          { kind: 'fan', coefficient: 1e-3 },
          { kind: 'gravity', torque: -10 },
        ]),
        W,
      ).outcome,
    ).toBe('driven');
    // Balanced at √(5e-4/1e-3) = 0.7 rad/s, below one per cent of the first speed.
    expect(
      coastDown(
        shaft([
          { kind: 'fan', coefficient: 1e-3 },
          { kind: 'gravity', torque: -5e-4 },
        ]),
        W,
      ).outcome,
    ).toBe('driven');
  });

  it('without any torque the shaft goes on', () => {
    expect(coastDown(shaft([]), W)).toMatchObject({ outcome: 'goesOn', time: null, angle: null });
  });

  it('a shaft at rest is at rest', () => {
    expect(coastDown(shaft([]), 0)).toMatchObject({ outcome: 'rest', time: 0, angle: 0 });
  });
});

describe('coasting against the simulation', () => {
  it.each<[string, LoadData]>([
    [
      'friction, fan and a viscous load',
      {
        inertia: LOAD,
        torques: [dry(6), { kind: 'fan', coefficient: 2e-4 }, { kind: 'viscous', coefficient: 0.02 }],
      },
    ],
    [
      'a table through a gear with loss',
      {
        inertia: 6,
        gear: { ratio: 4, efficiency: 0.85, backwardEfficiency: 0.75 },
        torques: [
          dry(10),
          {
            kind: 'table',
            mirrored: true,
            points: [
              { speed: 0, torque: 15 },
              { speed: 20, torque: 4 },
              { speed: 47, torque: 25 },
            ],
          },
        ],
      },
    ],
  ])('%s', (_name, load) => {
    const { trajectory } = simulate(
      scenarioOf(KRAUSE.hp3, { load, initial: 'runningForward', actions: [{ at: 0, do: 'coast' }] }),
    );
    const rest = trajectory.events.find(({ kind }) => kind === 'zeroSpeed');
    const found = coastDown(trajectory.shaft, trajectory.at(0).speed);
    // The poles are ideal and open at t = 0. Relative tolerance of the run 1e-9; a gear turns its power once, at no torque.
    const tolerance = { relative: 1e-6 };
    expectWithin(found.time, rest?.t ?? Number.NaN, tolerance, 'time');
    expectWithin(found.angle, trajectory.at(rest?.t ?? Number.NaN).position, tolerance, 'angle');
  });
});
