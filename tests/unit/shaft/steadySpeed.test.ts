import { describe, expect, it } from 'vitest';
import { breakdown } from '../../../src/machine/breakdown.ts';
import { steadyState } from '../../../src/machine/steadyState.ts';
import type { LoadData, LoadTorque, MachineData } from '../../../src/scenario/scenario.ts';
import { steadySpeed } from '../../../src/shaft/steadySpeed.ts';
import { scenarioOf } from '../../support/scenarios.ts';
import { KRAUSE } from '../../support/textbookMachines.ts';
import { expectWithin } from '../../support/tolerance.ts';

/** The machine can drive these. */
const MODERATE: readonly LoadTorque[] = [
  { kind: 'friction', torque: 2, breakaway: 3 },
  { kind: 'viscous', coefficient: 0.01 },
  { kind: 'fan', coefficient: 1e-4 },
  { kind: 'gravity', torque: 3 },
];
const moderate = (omega: number) => 3 + 0.01 * omega + 1e-4 * omega * Math.abs(omega) + 2 * Math.sign(omega);
const SYNCHRONOUS = KRAUSE.hp3.synchronousSpeed;
const gravity = (torque: number) => ({ kind: 'gravity', torque }) as const;
const loaded = (torques: readonly LoadTorque[], load: Partial<LoadData> = {}) =>
  scenarioOf(KRAUSE.hp3, { load: { torques, ...load } });

/** Torque of the machine at a speed, N·m, positive forward; the circuit is the same that the speed was found with. */
function airGapTorque(scenario: ReturnType<typeof loaded>, speed: number): number {
  const direction = Math.sign(speed);
  return (
    direction * steadyState(scenario.machine, scenario.supply, 1 - (direction * speed) / SYNCHRONOUS).torque
  );
}

describe('steadySpeed', () => {
  it('without load is exactly synchronous speed', () => {
    expect(steadySpeed(loaded([]), 1)).toBe(SYNCHRONOUS);
    expect(steadySpeed(loaded([]), -1)).toBe(-SYNCHRONOUS);
  });

  it.each([1, -1] as const)('is where machine and load balance, every kind together: %d', (direction) => {
    const scenario = loaded(MODERATE);
    const speed = steadySpeed(scenario, direction)!;
    expect(Math.sign(speed)).toBe(direction);
    expectWithin(airGapTorque(scenario, speed), moderate(speed), { absolute: 1e-9 }, 'torque');
  });

  it('of an overhauling load lies above synchronous speed', () => {
    const scenario = loaded([gravity(-9)]);
    const speed = steadySpeed(scenario, 1)!;
    expect(speed).toBeGreaterThan(SYNCHRONOUS);
    expectWithin(airGapTorque(scenario, speed), -9, { absolute: 1e-9 }, 'torque');
  });

  it('is null when the load is more than the machine can drive or hold', () => {
    // pull-out torque 61.87 N·m
    expect(steadySpeed(loaded([gravity(62)]), 1)).toBe(null);
    expect(steadySpeed(loaded([gravity(61.8)]), 1)).not.toBe(null);
    expect(steadySpeed(loaded([gravity(-200)]), 1)).toBe(null);
  });

  it.each([
    [1, 60 / (5 * 0.9)],
    [-1, (60 * 0.7) / 5],
  ] as const)(
    'of a hoist lifts with T/(i·η) and lowers with T·η_back/i: direction %d',
    (direction, torque) => {
      const gear = { ratio: 5, efficiency: 0.9, backwardEfficiency: 0.7 };
      const scenario = loaded([gravity(60)], { gear });
      const speed = steadySpeed(scenario, direction)!;
      expectWithin(airGapTorque(scenario, speed), torque, { absolute: 1e-9 }, 'torque');
      expect(Math.abs(speed) > SYNCHRONOUS).toBe(direction === -1);
      // The coupling changes nothing at constant speed.
      const coupling = { stiffness: 1e4, damping: 3, backlash: 0.01 };
      expect(steadySpeed(loaded([gravity(60)], { gear, coupling, inertia: 1 }), direction)).toBe(speed);
    },
  );

  it('carries the bearings and windage of the motor itself', () => {
    const plain = loaded([]);
    const scenario = {
      ...plain,
      machine: { ...plain.machine, mechanicalLoss: { friction: 0.5, windage: 2e-5 } },
    };
    const speed = steadySpeed(scenario, -1)!;
    expectWithin(airGapTorque(scenario, speed), -0.5 - 2e-5 * speed ** 2, { absolute: 1e-9 }, 'torque');
  });

  it('of a constant power is the balance near synchronous speed, not the one near stalling', () => {
    const power = 4000;
    const scenario = loaded([{ kind: 'constantPower', power, baseSpeed: 20 }]);
    const speed = steadySpeed(scenario, 1)!;
    expectWithin(airGapTorque(scenario, speed) * speed, power, { relative: 1e-10 }, 'power');
    expect(speed).toBeGreaterThan(0.85 * SYNCHRONOUS);
    // At 20 rad/s it asks for 200 N·m: from rest the machine would never come there.
    expect(airGapTorque(scenario, 20)).toBeLessThan(200);
  });

  it('of a table with several balances is the stable one nearest synchronous speed', () => {
    // A hump that the machine (61.9 N·m at slip 0.53) passes below the hump and above it.
    const hump = [
      [0, 5],
      [110, 10],
      [120, 90],
      [140, 90],
      [150, 12],
    ] as const;
    const points = hump.map(([speed, torque]) => ({ speed, torque }));
    const scenario = loaded([{ kind: 'table', mirrored: true, points }]);
    const speed = steadySpeed(scenario, 1)!;
    expectWithin(airGapTorque(scenario, speed), 12, { absolute: 1e-9 }, 'torque');
    expect(speed).toBeGreaterThan(150);
  });

  it('with resistance inserted at the slip rings slips in proportion to the rotor circuit', () => {
    // Same torque at the same Rr/s.
    const { machine } = KRAUSE.hp3;
    const Rr = machine.cages[0]!.Rr;
    const scenario = loaded([gravity(10)]);
    const slip = (speed: number) => 1 - speed / SYNCHRONOUS;
    const plain = slip(steadySpeed(scenario, 1)!);
    const inserted = { lineResistance: 0, rotorResistance: 2 * Rr, star: false };
    expectWithin(slip(steadySpeed(scenario, 1, inserted)!), 3 * plain, { relative: 1e-9 }, 'slip');
    // Breakdown at slip 0.527: with three times the resistance beyond standstill, and still a balance.
    expect(3 * breakdown(machine, scenario.supply).slip).toBeGreaterThan(1);
    const resistive: MachineData = { ...machine, cages: [{ ...machine.cages[0]!, Rr: 3 * Rr }] };
    expectWithin(
      slip(steadySpeed({ ...scenario, machine: resistive }, 1)!),
      3 * plain,
      { relative: 1e-9 },
      'slip of a machine built so',
    );
  });
});
