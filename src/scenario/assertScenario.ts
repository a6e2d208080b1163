import type { Problem } from './problem.ts';
import type { Scenario } from './scenario.ts';
import { ScenarioError } from './scenarioError.ts';

type Demand = 'positive' | 'notNegative' | 'finite';

const WORDS: Readonly<Record<Demand, string>> = {
  positive: 'a finite number above 0',
  notNegative: 'a finite number, 0 or above',
  finite: 'a finite number',
};

/**
 * Refuses a scenario object that a program has put together or changed and that no run could be made of: numbers that are
 * no numbers, signs that cannot be, actions out of order. What a file says is checked far more closely by `parseScenario`.
 *
 * @throws ScenarioError with every problem found; values in SI, no line numbers
 */
export function assertScenario(scenario: Scenario): void {
  const problems: Problem[] = [];
  const report = (path: string, found: unknown, expected: string) => {
    const message = found === undefined ? 'is missing' : `cannot be ${String(found)}`;
    const place = { file: 'scenario', line: null, column: null };
    problems.push({
      ...place,
      code: found === undefined ? 'missingKey' : 'outOfRange',
      path,
      found: String(found),
      message,
      expected,
    });
  };
  const group = (path: string, object: unknown, demands: Readonly<Record<string, Demand>>) => {
    if (typeof object !== 'object' || object === null) return report(path, undefined, 'a group of values');
    for (const [key, demand] of Object.entries(demands)) {
      const value: unknown = Reflect.get(object, key);
      const ok =
        typeof value === 'number' &&
        Number.isFinite(value) &&
        (demand === 'finite' || value > 0 || (demand === 'notNegative' && value === 0));
      if (!ok) report(`${path}.${key}`, value, WORDS[demand]);
    }
  };
  const { supply, machine, load, starter, actions, solver } = scenario;
  group('supply', supply, {
    lineVoltage: 'positive',
    frequency: 'positive',
    angle: 'finite',
    sourceResistance: 'notNegative',
    sourceInductance: 'notNegative',
  });
  group('machine', machine, {
    polePairs: 'positive',
    Rs: 'positive',
    Lls: 'positive',
    Lm: 'positive',
    inertia: 'notNegative',
  });
  const cages = machine?.cages ?? [];
  for (const [j, cage] of cages.entries())
    group(`machine.cages.${j}`, cage, { Rr: 'positive', Llr: 'positive' });
  if (cages.length < 1 || cages.length > 2)
    report('machine.cages', `${cages.length} cages`, 'one cage or two');
  group('load', load, { inertia: 'notNegative' });
  for (const [j, torque] of (load?.torques ?? []).entries()) {
    const path = `load.torques.${j}`;
    if (torque.kind === 'friction') group(path, torque, { torque: 'notNegative', breakaway: 'notNegative' });
    else if (torque.kind === 'gravity') group(path, torque, { torque: 'finite' });
    else group(path, torque, { coefficient: 'notNegative' });
  }
  if (machine?.inertia === 0 && load?.inertia === 0)
    report('machine.inertia', 0, 'some inertia, of the rotor or of the load');
  group('starter', starter, {
    closingTime: 'notNegative',
    openingTime: 'notNegative',
    changeoverDelay: 'notNegative',
    minimumArcingTime: 'notNegative',
  });
  if (starter?.zeroSpeedSwitch)
    group('starter.zeroSpeedSwitch', starter.zeroSpeedSwitch, {
      dropOutSpeed: 'notNegative',
      pickUpSpeed: 'positive',
      delay: 'notNegative',
    });
  if (actions === undefined) report('actions', undefined, 'a list of actions');
  for (const [j, action] of (actions ?? []).entries()) {
    group(`actions.${j}`, action, { at: 'notNegative' });
    if (j > 0 && !(action.at > actions[j - 1]!.at))
      report(`actions.${j}.at`, action.at, 'a time after the action before');
  }
  group('solver', solver, { relativeTolerance: 'positive', maxSteps: 'positive' });
  if (solver?.endTime !== 'auto') group('solver', solver, { endTime: 'positive' });
  const [first, ...rest] = problems;
  if (first !== undefined) throw new ScenarioError([first, ...rest]);
}
