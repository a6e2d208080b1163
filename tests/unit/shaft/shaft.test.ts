import { describe, expect, it } from 'vitest';
import { steadyState } from '../../../src/machine/steadyState.ts';
import type { LoadTorque } from '../../../src/scenario/scenario.ts';
import { frictionTorque, holds, shaftOf, smoothLoadTorque } from '../../../src/shaft/shaft.ts';
import { steadySpeed } from '../../../src/shaft/steadySpeed.ts';
import { scenarioOf } from '../../support/scenarios.ts';
import { KRAUSE } from '../../support/textbookMachines.ts';
import { expectWithin } from '../../support/tolerance.ts';

const LOADS: readonly LoadTorque[] = [
  { kind: 'friction', torque: 2, breakaway: 3 },
  { kind: 'friction', torque: 1, breakaway: 1.5 },
  { kind: 'viscous', coefficient: 0.1 },
  { kind: 'fan', coefficient: 0.02 },
  { kind: 'gravity', torque: 7 },
  { kind: 'gravity', torque: -2 },
];
/** The machine can drive these. */
const MODERATE: readonly LoadTorque[] = [
  { kind: 'friction', torque: 2, breakaway: 3 },
  { kind: 'viscous', coefficient: 0.01 },
  { kind: 'fan', coefficient: 1e-4 },
  { kind: 'gravity', torque: 3 },
];
const loaded = (torques: readonly LoadTorque[], inertia = 0) =>
  scenarioOf(KRAUSE.hp3, { load: { torques, inertia } });

describe('shaftOf', () => {
  it('adds inertias and sums the loads by kind', () => {
    expect(shaftOf(loaded(LOADS, 0.4))).toEqual({
      inertia: 0.089 + 0.4,
      friction: 3,
      breakaway: 4.5,
      viscous: 0.1,
      fan: 0.02,
      gravity: 5,
    });
  });

  it('without loads is the bare rotor', () => {
    expect(shaftOf(loaded([]))).toEqual({
      inertia: 0.089,
      friction: 0,
      breakaway: 0,
      viscous: 0,
      fan: 0,
      gravity: 0,
    });
  });
});

describe('load torques through zero and in reverse', () => {
  const shaft = shaftOf(loaded(LOADS));

  it.each([
    [10, 5 + 1 + 2],
    [0, 5],
    [-10, 5 - 1 - 2],
  ])('at %d rad/s is gravity plus viscous plus fan', (omega, torque) => {
    expectWithin(smoothLoadTorque(shaft, omega), torque, { absolute: 1e-12 }, 'load torque');
  });

  it('of dry friction opposes the direction and is nothing while the shaft is held', () => {
    expect([1, 0, -1].map((direction) => frictionTorque(shaft, direction as 1 | 0 | -1))).toEqual([3, 0, -3]);
  });

  it.each([
    [4.5, true],
    [4.51, false],
    [-4.5, true],
    [-4.51, false],
    [0, true],
  ])('dry friction against %d N·m holds: %s', (drive, held) => {
    expect(holds(shaft, drive)).toBe(held);
  });

  it('without dry friction nothing holds, not even no torque', () => {
    expect(holds(shaftOf(loaded([])), 0)).toBe(false);
  });
});

describe('steadySpeed', () => {
  it('without load is exactly synchronous speed', () => {
    expect(steadySpeed(loaded([]), 1)).toBe(KRAUSE.hp3.synchronousSpeed);
    expect(steadySpeed(loaded([]), -1)).toBe(-KRAUSE.hp3.synchronousSpeed);
  });

  it.each([
    ['every kind together, forward', MODERATE, 1],
    ['every kind together, reverse', MODERATE, -1],
    ['a lowered load, above synchronous speed', [{ kind: 'gravity', torque: -9 }], 1],
  ] as const)('is where machine and load balance: %s', (_name, torques, direction) => {
    const scenario = loaded(torques);
    const speed = steadySpeed(scenario, direction)!;
    const slip = 1 - (direction * speed) / KRAUSE.hp3.synchronousSpeed;
    const machine = direction * steadyState(scenario.machine, scenario.supply, slip).torque;
    const shaft = shaftOf(scenario);
    const load = smoothLoadTorque(shaft, speed) + frictionTorque(shaft, direction);
    expectWithin(machine, load, { absolute: 1e-9 }, 'torque');
    expect(Math.sign(speed)).toBe(direction);
  });

  it('of an overhauling load lies above synchronous speed', () => {
    expect(steadySpeed(loaded([{ kind: 'gravity', torque: -9 }]), 1)).toBeGreaterThan(
      KRAUSE.hp3.synchronousSpeed,
    );
  });

  it('is null when the load is more than the machine can drive or hold', () => {
    // pull-out torque 61.87 N·m
    expect(steadySpeed(loaded([{ kind: 'gravity', torque: 62 }]), 1)).toBe(null);
    expect(steadySpeed(loaded([{ kind: 'gravity', torque: 61.8 }]), 1)).not.toBe(null);
    expect(steadySpeed(loaded([{ kind: 'gravity', torque: -200 }]), 1)).toBe(null);
  });
});
