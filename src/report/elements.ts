import type { MetricKey } from '../measure/metric.ts';
import type { RunResult } from '../measure/result.ts';
import type { Scenario } from '../scenario/scenario.ts';

/** What a scenario can have beyond a cage machine on a rigid shaft and a source. */
export type ElementName =
  | 'cable'
  | 'voltageDrop'
  | 'lineResistors'
  | 'rotorResistors'
  | 'core'
  | 'windage'
  | 'gear'
  | 'coupling';

/** The elements that stand in a scenario; what is not there is not reported on. */
export function elementsOf({ supply, machine, load, starter }: Scenario): ReadonlySet<ElementName> {
  const lossyGear =
    load.gear !== undefined && !(load.gear.efficiency === 1 && load.gear.backwardEfficiency === 1);
  const present: Readonly<Record<ElementName, boolean>> = {
    cable: supply.cable !== undefined,
    voltageDrop:
      supply.sourceResistance > 0 ||
      supply.sourceInductance > 0 ||
      supply.cable !== undefined ||
      starter.lineResistors !== undefined,
    lineResistors: starter.lineResistors !== undefined,
    rotorResistors: machine.rotorResistors !== undefined,
    core: machine.core !== undefined,
    windage: (machine.mechanicalLoss?.windage ?? 0) > 0,
    gear: lossyGear,
    coupling: load.coupling !== undefined,
  };
  const names = Object.keys(present) as ElementName[];
  return new Set(names.filter((name) => present[name]));
}

/** The element a metric belongs to; the others belong to every machine. */
const ELEMENT_OF: Partial<Record<MetricKey, ElementName>> = {
  startCouplingTorque: 'coupling',
  plugCouplingTorque: 'coupling',
  torsionalFrequency: 'coupling',
  startVoltageDip: 'voltageDrop',
  plugVoltageDip: 'voltageDrop',
  plugLineResistorHeat: 'lineResistors',
  plugRotorResistorHeat: 'rotorResistors',
};

/** False for a metric of an element the scenario does not have: nobody misses it. */
export function isReported(result: RunResult, key: MetricKey): boolean {
  const element = ELEMENT_OF[key];
  return element === undefined || elementsOf(result.scenario).has(element);
}
