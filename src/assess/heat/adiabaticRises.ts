import { brakingHeat, type HeatPulse, type OperationHeat, reversalHeat, sumOfPulses } from './heat.ts';
import { heatPerNode } from './thermalModes.ts';
import type { PerNode, ThermalModel } from './thermalNetwork.ts';

/** Rises without any cooling, K, in the order of the model's nodes. */
export interface AdiabaticRises {
  readonly start: PerNode;
  /** From the stopping command to rest. */
  readonly stop: PerNode;
  /** Start and stop. */
  readonly operation: PerNode;
  readonly reversal: PerNode;
}

/** What each part of an operation would heat each body by if nothing flowed away: heat over heat capacity. */
export function adiabaticRises(model: ThermalModel, heat: OperationHeat): AdiabaticRises {
  const of = (pulse: HeatPulse) =>
    heatPerNode(model, pulse).map((joules, i) => joules / model.nodes[i]!.heatCapacity);
  return {
    start: of(heat.start),
    stop: of(brakingHeat(heat)),
    operation: of(sumOfPulses(heat.start, brakingHeat(heat))),
    reversal: of(reversalHeat(heat)),
  };
}
