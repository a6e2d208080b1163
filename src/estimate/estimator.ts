import type { CircuitEstimator } from '../scenario/nameplate.ts';
import { circuitFromTests } from './circuitFromTests.ts';
import { estimateCircuit } from './estimateCircuit.ts';

/** Finds the circuit for a scenario that has a nameplate or test readings in its place. */
export const circuitEstimator: CircuitEstimator = {
  fromNameplate: estimateCircuit,
  fromTests: circuitFromTests,
};
