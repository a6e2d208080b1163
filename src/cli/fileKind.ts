import { readYaml } from '../scenario/readYaml.ts';

/** Keys that only surveys have. */
const OF_SURVEYS = ['ask', 'vary'];
/** Keys that only scenarios have; one of them at least stands in each. */
const OF_SCENARIOS = ['machine', 'supply', 'starter', 'actions'];

/**
 * Tells the two kinds of files a person writes apart, by their keys.
 *
 * @param source YAML or JSON text
 * @returns null where the keys are of both or of neither
 */
export function fileKind(source: string): 'survey' | 'scenario' | null {
  const value = readYaml(source).data?.value;
  if (typeof value !== 'object' || value === null) return null;
  const has = (keys: readonly string[]) => keys.some((key) => Object.hasOwn(value, key));
  const [survey, scenario] = [has(OF_SURVEYS), has(OF_SCENARIOS)];
  if (survey === scenario) return null;
  return survey ? 'survey' : 'scenario';
}
