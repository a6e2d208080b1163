import type { ContactorData } from '../../scenario/scenario.ts';

/** A contactor of which nothing but the rated current in AC-3 (A) is known: the generic curve stands for its lives. */
export function genericContactor(ratedCurrentAc3: number): ContactorData {
  return {
    ratedVoltage: null,
    ratedCurrentAc3,
    ratedCurrentAc4: null,
    lifeAc3: null,
    lifeAc4: null,
    lifeTable: null,
    mechanicalLife: null,
    makingCapacity: null,
    breakingCapacity: null,
    bounceTime: null,
    operationsPerHourAc3: null,
    operationsPerHourAc4: null,
  };
}
