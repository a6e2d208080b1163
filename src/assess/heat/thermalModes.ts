import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { exponential, exponentialLessOne } from '../../numeric/exponential.ts';
import { type ExponentialSum, zerosOfExponentialSum } from '../../numeric/exponentialSum.ts';
import type { HeatPulse } from './heat.ts';
import type { Cooling, NodeName, PerNode, ThermalLink, ThermalModel } from './thermalNetwork.ts';

/**
 * The modes of a thermal model. With C·dθ/dt = P − K·θ and x = C^(1/2)·θ the matrix C^(−1/2)·K·C^(−1/2) is symmetric: its
 * eigenvalues λ are real and not negative, its eigenvectors V orthogonal, so that every rise is a sum of decaying exponentials.
 */
export interface ThermalModes {
  /** λ, 1/s */
  readonly rates: readonly number[];
  /** √C of each node, √(J/K). */
  readonly rootCapacities: PerNode;
  /** The eigenvectors: one per mode, one number per node. */
  readonly vectors: readonly PerNode[];
}

/** K of C·dθ/dt = P − K·θ, W/K. */
export function conductanceMatrix(
  names: readonly NodeName[],
  links: readonly ThermalLink[],
  cooling: Cooling,
): Matrix {
  const K = Matrix.zeros(names.length, names.length);
  for (const link of links) {
    const value = link[cooling];
    const i = names.indexOf(link.from);
    K.set(i, i, K.get(i, i) + value);
    if (link.to === 'ambient') continue;
    const j = names.indexOf(link.to);
    K.set(j, j, K.get(j, j) + value);
    K.set(i, j, K.get(i, j) - value);
    K.set(j, i, K.get(j, i) - value);
  }
  return K;
}

/** Decomposes a model for one kind of cooling. */
export function thermalModes(model: ThermalModel, cooling: Cooling): ThermalModes {
  const rootCapacities = model.nodes.map(({ heatCapacity }) => Math.sqrt(heatCapacity));
  const K = conductanceMatrix(
    model.nodes.map(({ name }) => name),
    model.links,
    cooling,
  );
  const symmetric = K.apply((i, j) => {
    K.set(i, j, K.get(i, j) / (rootCapacities[i]! * rootCapacities[j]!));
  });
  const decomposition = new EigenvalueDecomposition(symmetric, { assumeSymmetric: true });
  // Rounding may leave a mode that does not decay (a motor that cannot cool at rest) slightly below zero.
  const rates = decomposition.realEigenvalues.map((rate) => Math.max(0, rate));
  return { rates, rootCapacities, vectors: decomposition.eigenvectorMatrix.transpose().to2DArray() };
}

/** Heat of a pulse per node of a model, J. */
export function heatPerNode(model: ThermalModel, pulse: HeatPulse): PerNode {
  return model.nodes.map(({ name }) => pulse[name]);
}

/**
 * Rises after a stretch of constant losses, K.
 *
 * @param rises at its start, K
 * @param heat of the whole stretch per node, J
 * @param duration s; 0: all of the heat at once
 */
export function risesAfter(modes: ThermalModes, rises: PerNode, heat: PerNode, duration: number): PerNode {
  const { begin, inflow } = inModes(modes, rises, heat);
  const end = modes.rates.map((rate, k) => {
    const x = rate * duration;
    // (1 − e^−x)/x: the share of the heat that is left when it flows in evenly
    const left = x === 0 ? 1 : -exponentialLessOne(-x) / x;
    return begin[k]! * exponential(-x) + inflow[k]! * left;
  });
  return rises.map(
    (_, i) => end.reduce((sum, x, k) => sum + modes.vectors[k]![i]! * x, 0) / modes.rootCapacities[i]!,
  );
}

/**
 * Highest rise of each node during a stretch of constant losses, K: at an end, or where the rate of rise, a sum of
 * exponentials, passes zero.
 */
export function highestRises(modes: ThermalModes, rises: PerNode, heat: PerNode, duration: number): PerNode {
  const end = risesAfter(modes, rises, heat, duration);
  const highest = rises.map((rise, i) => Math.max(rise, end[i]!));
  if (duration === 0) return highest;
  const { begin, inflow } = inModes(modes, rises, heat);
  return highest.map((value, i) => {
    const slope: ExponentialSum = {
      rates: modes.rates,
      factors: modes.rates.map(
        (rate, k) =>
          (modes.vectors[k]![i]! * (inflow[k]! / duration - rate * begin[k]!)) / modes.rootCapacities[i]!,
      ),
    };
    const inside = zerosOfExponentialSum(slope, 0, duration).map((t) => {
      const share = t / duration;
      const part = heat.map((joules) => joules * share);
      return risesAfter(modes, rises, part, t)[i]!;
    });
    return Math.max(value, ...inside);
  });
}

/** Rises and heat in the coordinates of the modes. */
function inModes(
  { rates, rootCapacities, vectors }: ThermalModes,
  rises: PerNode,
  heat: PerNode,
): { begin: number[]; inflow: number[] } {
  const project = (perNode: (i: number) => number) =>
    rates.map((_, k) => rises.reduce((sum, _rise, i) => sum + vectors[k]![i]! * perNode(i), 0));
  return {
    begin: project((i) => rootCapacities[i]! * rises[i]!),
    inflow: project((i) => heat[i]! / rootCapacities[i]!),
  };
}
