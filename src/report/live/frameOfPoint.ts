import type { Point, Trajectory } from '../../simulate/trajectory.ts';
import { displayUnit, type UnitSystem } from '../formatQuantity.ts';
import { lineRms } from '../traces.ts';
import type { Frame } from './frame.ts';

/** One instant of a run in displayed units. */
export function frameOfPoint(point: Point, units: UnitSystem): Frame {
  const torquePerSi = displayUnit('N·m', { system: units }).perSi;
  const speedPerSi = displayUnit('rad/s', { system: units }).perSi;
  return {
    ...point,
    torque: point.torque * torquePerSi,
    loadTorque: point.loadTorque * torquePerSi,
    couplingTorque: point.couplingTorque * torquePerSi,
    speed: point.speed * speedPerSi,
    loadSpeed: point.loadSpeed * speedPerSi,
    voltage: lineRms(point.uAlpha, point.uBeta),
  };
}

/** The instant t of a run, s, not interpolated between samples. */
export function exactFrame(trajectory: Trajectory, units: UnitSystem, t: number): Frame {
  return frameOfPoint(trajectory.at(t), units);
}
