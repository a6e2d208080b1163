import { type ParseOptions, readScenario } from '../scenario/readScenario.ts';
import type { ScenarioWithOrigins } from '../scenario/resolveScenario.ts';
import { circuitEstimator } from './estimator.ts';

/**
 * Reads a scenario and says of every value whether it was given, a default, an assumption, taken from a standard, computed
 * from others or estimated.
 *
 * @param source YAML or JSON text, or the same as a plain object (problems then have no line numbers)
 * @param options name of the file for the messages
 * @returns the scenario in SI with everything filled in, the origins, and how well an estimated circuit fits
 * @throws ScenarioError with every problem found
 */
export function parseScenarioWithOrigins(source: unknown, options: ParseOptions = {}): ScenarioWithOrigins {
  return readScenario(source, options, circuitEstimator);
}
