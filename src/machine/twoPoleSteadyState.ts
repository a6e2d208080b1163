import { add, type Complex, magnitude } from '../numeric/complex.ts';
import { squared } from '../numeric/raised.ts';
import { contradiction } from '../scenario/contradiction.ts';
import type { MachineData, Supply } from '../scenario/scenario.ts';
import { circuitOf } from './circuit.ts';
import { type SteadySupply, steadyState } from './steadyState.ts';

/**
 * Steady state with two terminals connected at constant speed: the positive- and negative-sequence circuits in series
 * across the line voltage, I = V_LL/|Z(s) + Z(2 − s)|; the sequence currents are I/√3 each. Source: symmetrical components
 * (single phasing in the textbooks).
 *
 * @param slip against the sequence of the supply before a terminal was opened: 1 at rest, 0 at synchronous speed
 * @returns line `current`, A r.m.s., and mean `torque`, N·m
 * @throws ScenarioError for a machine that saturates: its sequences cannot be superposed
 */
export function twoPoleSteadyState(
  machine: MachineData,
  supply: SteadySupply,
  slip: number,
): { current: number; torque: number } {
  if (circuitOf(machine, supply).saturation !== null)
    throw contradiction(
      'machine',
      'saturation',
      'the steady state with two terminals connected is known for linear circuits only',
      'a machine without saturation',
    );
  const forward = steadyState(machine, supply, slip);
  const backward = steadyState(machine, supply, 2 - slip);
  const impedance = add(
    impedanceOf(supply, forward.statorCurrent),
    impedanceOf(supply, backward.statorCurrent),
  );
  const current = supply.lineVoltage / magnitude(impedance);
  const sequenceCurrent = current / Math.sqrt(3);
  const torqueOf = (state: { torque: number; current: number }) =>
    state.torque * squared(sequenceCurrent / state.current);
  return { current, torque: torqueOf(forward) - torqueOf(backward) };
}

function impedanceOf(supply: Pick<Supply, 'lineVoltage'>, current: Complex): Complex {
  const voltage = supply.lineVoltage / Math.sqrt(3);
  const norm = squared(current[0]) + squared(current[1]);
  return [(voltage * current[0]) / norm, (-voltage * current[1]) / norm];
}
