import { holdLimits } from './holdLimits.ts';
import { settledMass } from './reviewShaft.ts';
import type { Shaft } from './shaft.ts';
import { driveOf } from './shaftEvents.ts';
import { type MassMode, type ShaftMode, speedOffset } from './shaftMode.ts';

/** A shaft with a mechanical brake on the motor: dry friction, as much at rest. */
export function brakedShaft(shaft: Shaft, torque: number): Shaft {
  return { ...shaft, motor: { ...shaft.motor, friction: shaft.motor.friction + torque }, isBraked: true };
}

/**
 * The mode after the brake has set or let go: friction opposes the motion there is, and what is at rest stays there if
 * anything holds it now.
 *
 * @param shaft as it is from now on
 * @param state the shaft's states
 * @param airGapTorque N·m
 */
export function modeWithBrake(
  shaft: Shaft,
  mode: ShaftMode,
  state: readonly number[],
  airGapTorque: number,
): ShaftMode {
  const masses = mode.masses.map((_, index): MassMode => {
    const speed = state[speedOffset(index)]!;
    if (speed !== 0) return { direction: speed > 0 ? 1 : -1, held: false };
    const limits = holdLimits(shaft, index);
    return settledMass(limits, driveOf(shaft, mode, index, limits)(state, 0, airGapTorque));
  });
  return { ...mode, masses };
}
