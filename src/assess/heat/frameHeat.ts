import { CholeskyDecomposition, Matrix, solve } from 'ml-matrix';
import type { ThermalData } from '../../scenario/scenario.ts';
import { conductanceMatrix } from './thermalModes.ts';
import type { ThermalLink, ThermalNode, ThermalParameter } from './thermalNetwork.ts';
import { derivedParameter, givenOr } from './thermalParameter.ts';

/**
 * Heat capacity of core and frame: stated, or such that the slowest of the model's time constants while running is T. For that
 * mode (K − C/T)·θ = 0; with the other bodies eliminated, C_f = T·(K_ff − K_fo·(K_oo − C_o/T)⁻¹·K_of).
 */
export function frameHeatCapacity(
  thermal: ThermalData | undefined,
  others: readonly ThermalNode[],
  links: readonly ThermalLink[],
  T: number,
): ThermalParameter | string {
  const name = 'heat capacity of core and frame';
  const words = `from the slowest time constant, ${T} s`;
  const stated = thermal?.frameHeatCapacity ?? null;
  if (stated !== null) return givenOr(name, stated, { value: stated, unit: 'J/K', source: words });
  const K = conductanceMatrix([...others.map((node) => node.name), 'frame'], links, 'running');
  const n = others.length;
  const inner = Matrix.sub(
    K.subMatrix(0, n - 1, 0, n - 1),
    Matrix.diag(others.map((node) => node.heatCapacity / T)),
  );
  // Where the other bodies alone cool more slowly than T, it would be the time constant of another mode.
  if (!new CholeskyDecomposition(inner).isPositiveDefinite()) return TOO_SHORT;
  const column = K.subMatrix(0, n - 1, n, n);
  const value = T * (K.get(n, n) - column.transpose().mmul(solve(inner, column)).get(0, 0));
  return value > 0 ? derivedParameter(name, value, 'J/K', words) : TOO_SHORT;
}

const TOO_SHORT =
  'the time constant of the whole motor is too short for the heat capacities of winding and cage; ' +
  'thermal.coolingTimeConstant or thermal.frameHeatCapacity would help';
