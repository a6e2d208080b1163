import { stringify } from 'yaml';
import { renderScenario } from './renderScenario.ts';
import type { Scenario } from './scenario.ts';

/**
 * Renders a scenario as YAML text that parses back to the same scenario, to the last bit.
 *
 * @param scenario in SI
 * @returns text that ends with a line break
 */
export function scenarioToYaml(scenario: Scenario): string {
  return stringify(renderScenario(scenario), { lineWidth: 0 });
}
