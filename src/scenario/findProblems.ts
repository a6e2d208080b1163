import { actionRules } from './actionRules.ts';
import { controlRules } from './controlRules.ts';
import { faultsFromIssues, type PathedFault } from './faultsFromIssues.ts';
import { installationRules } from './installationRules.ts';
import { judgementRules } from './judgementRules.ts';
import { loadRules } from './loadRules.ts';
import { machineElementRules } from './machineElementRules.ts';
import { machineRules } from './machineRules.ts';
import { machineWayRules } from './machineWayRules.ts';
import { nameplateRules } from './nameplateRules.ts';
import { valueAt } from './place.ts';
import { readWhatIsValid } from './readWhatIsValid.ts';
import type { Rule, RuleContext } from './rule.ts';
import { type ScenarioInput, scenarioInput } from './scenarioInput.ts';
import { starterRules } from './starterRules.ts';
import { supplyRules } from './supplyRules.ts';
import { testsRules } from './testsRules.ts';

const rules: readonly Rule[] = [
  supplyRules,
  machineWayRules,
  machineRules,
  nameplateRules,
  testsRules,
  machineElementRules,
  loadRules,
  starterRules,
  installationRules,
  controlRules,
  actionRules,
  judgementRules,
];

/**
 * Validates plain data against the scenario definition and the rules between its keys, both in one pass.
 *
 * @param data what the file says
 * @returns the valid input in SI, or everything that is wrong with it
 */
export function findProblems(
  data: unknown,
): { readonly input: ScenarioInput } | { readonly faults: readonly PathedFault[] } {
  const read = scenarioInput.safeParse(data);
  const faults = read.success ? [] : faultsFromIssues(read.error.issues);
  faults.push(...brokenRules((read.success ? read.data : readWhatIsValid(scenarioInput, data)) ?? {}, data));
  return read.success && faults.length === 0 ? { input: read.data } : { faults };
}

/**
 * Checks the rules between the keys alone.
 *
 * @param input what is valid by the definition
 * @param data the same as the file says it; only which keys stand there matters
 */
export function brokenRules(input: RuleContext['input'], data: unknown): PathedFault[] {
  const faults: PathedFault[] = [];
  const context: RuleContext = {
    input,
    isStated: (...path) => valueAt(data, path) !== undefined,
    report: (path, code, message, expected) => faults.push({ path, code, message, expected }),
  };
  for (const rule of rules) rule(context);
  return faults;
}
