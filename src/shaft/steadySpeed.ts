import { breakdown } from '../machine/breakdown.ts';
import { circuitOf } from '../machine/circuit.ts';
import { type Inserted, NOTHING_INSERTED } from '../machine/inserted.ts';
import { steadyStateOf } from '../machine/steadyState.ts';
import { bisect } from '../numeric/bisect.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { steadyMotorTorque } from './gear.ts';
import { loadTorqueAt, windageTorque } from './loadTorque.ts';
import { type Shaft, shaftOf } from './shaft.ts';

/**
 * Slips looked at between the two breakdown points where the load is not monotone (a table, constant power): dense enough for
 * any table that describes a machine.
 */
const SCAN_POINTS = 400;

/**
 * Speed at which machine and load balance on the stable branch of the torque–speed curve, between breakdown as a
 * motor and breakdown as a generator (an overhauling load runs above synchronous speed), through the gear and with the motor's
 * own losses. Where several speeds are stable (a load torque that falls with speed), the one nearest synchronous speed.
 *
 * @param direction +1 with the forward sequence, −1 with the reverse one
 * @param inserted resistors and winding connection during it
 * @returns rad/s, signed; null when the load is more than the machine can drive
 */
export function steadySpeed(
  scenario: Scenario,
  direction: 1 | -1,
  inserted: Inserted = NOTHING_INSERTED,
): number | null {
  const { star, lineResistance, rotorResistance } = inserted;
  const key = `${direction} ${star} ${lineResistance} ${rotorResistance}`;
  const speeds = known.get(scenario) ?? new Map<string, number | null>();
  known.set(scenario, speeds);
  const before = speeds.get(key);
  if (before !== undefined) return before;
  const speed = foundSpeed(scenario, direction, inserted);
  speeds.set(key, speed);
  return speed;
}

/** A scenario never changes, and one run asks several times. */
const known = new WeakMap<Scenario, Map<string, number | null>>();

function foundSpeed(scenario: Scenario, direction: 1 | -1, inserted: Inserted): number | null {
  const { machine, supply } = scenario;
  const shaft = shaftOf(scenario);
  const circuit = circuitOf(machine, supply, inserted);
  const synchronous = (2 * Math.PI * supply.frequency) / machine.polePairs;
  // Mirrored for the reverse sequence: torque and speed counted in the direction of the sequence.
  const surplus = (slip: number) => {
    const load = steadyTorqueAt(shaft, direction * (1 - slip) * synchronous, direction);
    return steadyStateOf(circuit, supply, slip).torque - direction * load;
  };
  if (surplus(0) === 0) return direction * synchronous;
  // A machine with its breakdown beyond standstill drives its load forward from any speed.
  const limit = Math.min(breakdown(machine, supply, inserted).slip, 1);
  const range = shaft.pieces.length > 0 ? nearestRange(surplus, limit) : { low: -limit, high: limit };
  if (range === null || surplus(range.high) <= 0 || surplus(range.low) >= 0) return null;
  return direction * (1 - bisect(surplus, range.low, range.high)) * synchronous;
}

/**
 * Air-gap torque that keeps a constant speed against load, gear and the motor's own losses, N·m, positive forward.
 *
 * @param omega rad/s at the motor
 * @param direction the direction of motion: that of ω, where it is not zero
 */
export function steadyTorqueAt(shaft: Shaft, omega: number, direction: -1 | 1): number {
  const load = steadyMotorTorque(shaft, loadTorqueAt(shaft, omega, direction), direction);
  return load + windageTorque(shaft, omega) + shaft.motor.friction * direction;
}

/** The interval of slips nearest zero in which the surplus of torque grows through zero with the slip: a stable balance. */
function nearestRange(
  surplus: (slip: number) => number,
  limit: number,
): { low: number; high: number } | null {
  const slipAt = (i: number) => (i * 2 * limit) / SCAN_POINTS - limit;
  const values = Array.from({ length: SCAN_POINTS + 1 }, (_, i) => surplus(slipAt(i)));
  const stable = values.flatMap((value, i) =>
    i > 0 && values[i - 1]! < 0 && value >= 0 ? [{ low: slipAt(i - 1), high: slipAt(i) }] : [],
  );
  const distance = ({ low, high }: { low: number; high: number }) => Math.abs(low + high);
  return stable.reduce<{ low: number; high: number } | null>(
    (best, range) => (best === null || distance(range) < distance(best) ? range : best),
    null,
  );
}
