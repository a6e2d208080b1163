import { add, type Complex, multiply, subtract, turn } from '../numeric/complex.ts';
import { polarAngle } from '../numeric/polarAngle.ts';
import type { MachineData, Supply } from '../scenario/scenario.ts';
import { circuitOf } from './circuit.ts';
import type { FluxVector } from './electricalModel.ts';
import { type Inserted, NOTHING_INSERTED } from './inserted.ts';
import { steadyInductances } from './steadyInductances.ts';
import { steadyState } from './steadyState.ts';
import type { SupplyVector } from './supplyVector.ts';

/**
 * Stator, rotor and core flux linkages at t = 0 of a machine that has been running at constant slip, in stationary axes.
 *
 * @param applied supply vector of the closed contactor (a pure sequence)
 * @param slip against that sequence
 */
export function steadyFlux(
  machine: MachineData,
  supply: Supply,
  applied: SupplyVector,
  slip: number,
  inserted: Inserted = NOTHING_INSERTED,
): FluxVector {
  const circuit = circuitOf(machine, supply, inserted);
  const crest = Math.SQRT2 * (supply.lineVoltage / Math.sqrt(3));
  const inductances = steadyInductances(circuit, crest, applied.omega, slip);
  const state = steadyState(machine, supply, slip, inserted);
  const vector = applied.sequence === 1 ? applied.positive : applied.negative;
  // r.m.s. phasor of the circuit → space vector: √2 times, turned to the supply vector, mirrored for reverse sequence
  const angle = polarAngle(vector[1], vector[0]);
  const place = (phasor: Complex): Complex =>
    turn([Math.SQRT2 * phasor[0], Math.SQRT2 * (applied.sequence === 1 ? phasor[1] : -phasor[1])], angle);
  const stator = place(state.statorCurrent);
  const rotors = state.rotorCurrents.map((i) => place(multiply([-1, 0], i)));
  const core = state.coreCurrent && place(multiply([-1, 0], state.coreCurrent));
  let magnetising = stator;
  for (const i of rotors) magnetising = add(magnetising, i);
  if (core) magnetising = add(magnetising, core);
  const main = multiply([inductances.Lm, 0], magnetising);
  const flux = [...add(multiply([inductances.L, 0], stator), main)];
  for (const [j, i] of rotors.entries())
    flux.push(...subtract(main, multiply([-1 / inductances.gr[j]!, 0], i)));
  if (core && circuit.core) flux.push(...add(main, multiply([circuit.core.L, 0], core)));
  return flux;
}
