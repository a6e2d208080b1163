import type { MotorPoint, MotorPointKind, MotorSheet } from '../../../src/report/motorSheet.ts';
import { fakeRun } from './fakeRun.ts';

/** rad/s, of four poles at 60 Hz. */
const SYNCHRONOUS = 60 * Math.PI;

/** A made-up motor: round multiples of rated at the named points and smooth curves through none of them. */
export function fakeMotor(): MotorSheet {
  const { scenario, rated } = fakeRun();
  const point = (
    kind: MotorPointKind,
    slip: number,
    torque: number,
    current: number,
    powerFactor: number,
  ): MotorPoint => ({
    kind,
    slip,
    speed: (1 - slip) * SYNCHRONOUS,
    torque: torque * rated.torque,
    current: current * rated.current,
    powerFactor,
  });
  const speed = Float64Array.from({ length: 201 }, (_, i) => (i / 100 - 1) * SYNCHRONOUS);
  const slip = speed.map((value) => 1 - value / SYNCHRONOUS);
  return {
    title: scenario.title,
    machine: scenario.machine,
    lineVoltage: scenario.supply.lineVoltage,
    frequency: scenario.supply.frequency,
    rated,
    points: [
      point('noLoad', 0.001, 0.02, 0.35, 0.05),
      point('rated', 0.0528, 1, 1, 0.86),
      point('breakdown', 0.15, 3, 4, 0.7),
      point('pullUp', 0.8, 1.2, 5.8, 0.42),
      point('lockedRotor', 1, 1.5, 6, 0.4),
      point('plugging', 2, 2, 7, 0.3),
    ],
    curve: {
      speed,
      torque: slip.map((s) => (6 * rated.torque) / (s / 0.15 + 0.15 / Math.max(s, 1e-6))),
      current: slip.map((s) => 7 * rated.current * Math.sqrt(s / (s + 0.3))),
    },
    load: null,
    estimation: null,
  };
}
