import { assertActions } from './assertActions.ts';
import { assertJudgement } from './assertJudgement.ts';
import { assertLoad } from './assertLoad.ts';
import { assertMachine } from './assertMachine.ts';
import { assertStarter } from './assertStarter.ts';
import { assertTogether } from './assertTogether.ts';
import { demandsOf } from './demands.ts';
import type { Scenario } from './scenario.ts';
import { ScenarioError } from './scenarioError.ts';

/**
 * Refuses a scenario object that a program has put together or changed and that no run could be made of: numbers that are
 * no numbers, signs that cannot be, actions out of order. What a file says is checked far more closely by `parseScenario`.
 *
 * @throws ScenarioError with every problem found; values in SI, no line numbers
 */
export function assertScenario(scenario: Scenario): void {
  const demands = demandsOf();
  const { group, report, problems } = demands;
  const { supply, machine, load, starter, actions, solver } = scenario;
  group('supply', supply, {
    lineVoltage: 'positive',
    frequency: 'positive',
    angle: 'finite',
    sourceResistance: 'notNegative',
    sourceInductance: 'notNegative',
  });
  if (supply?.cable !== undefined)
    group('supply.cable', supply.cable, { resistance: 'notNegative', inductance: 'notNegative' });
  assertMachine(machine, demands);
  assertLoad(load, machine, demands);
  const before = problems.length;
  assertStarter(starter, machine, demands);
  if (actions === undefined) report('actions', undefined, 'a list of actions');
  else assertActions(actions, starter?.control !== undefined, demands);
  if (problems.length === before) assertTogether(scenario, demands);
  group('solver', solver, { relativeTolerance: 'positive', maxSteps: 'positive' });
  if (solver?.endTime !== 'auto') group('solver', solver, { endTime: 'positive' });
  assertJudgement(scenario, demands);
  const [first, ...rest] = problems;
  if (first !== undefined) throw new ScenarioError([first, ...rest]);
}
