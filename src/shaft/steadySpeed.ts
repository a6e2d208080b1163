import { breakdown } from '../machine/breakdown.ts';
import { steadyState } from '../machine/steadyState.ts';
import { bisect } from '../numeric/bisect.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { frictionTorque, shaftOf, smoothLoadTorque } from './shaft.ts';

/**
 * Speed at which machine and load balance on the stable branch of the torque–speed curve, between breakdown as a
 * motor and breakdown as a generator (an overhauling load runs above synchronous speed).
 *
 * @param direction +1 with the forward sequence, −1 with the reverse one
 * @returns rad/s, signed; null when the load is more than the machine can drive
 */
export function steadySpeed(scenario: Scenario, direction: 1 | -1): number | null {
  const { machine, supply } = scenario;
  const shaft = shaftOf(scenario);
  const synchronous = (2 * Math.PI * supply.frequency) / machine.polePairs;
  // Mirrored for the reverse sequence: torque and speed counted in the direction of the sequence.
  const surplus = (slip: number) => {
    const speed = direction * (1 - slip) * synchronous;
    const load = smoothLoadTorque(shaft, speed) + frictionTorque(shaft, direction);
    return steadyState(machine, supply, slip).torque - direction * load;
  };
  const limit = breakdown(machine, supply).slip;
  if (surplus(0) === 0) return direction * synchronous;
  if (limit > 1 || surplus(limit) <= 0 || surplus(-limit) >= 0) return null;
  return direction * (1 - bisect(surplus, -limit, limit)) * synchronous;
}
