import type { Problem } from '../scenario/problem.ts';
import { ScenarioError } from '../scenario/scenarioError.ts';

/**
 * Reads two files; where both have something wrong, all of it is told.
 *
 * @throws ScenarioError with the problems of both
 */
export function bothOf<A, B>(one: () => A, other: () => B): readonly [A, B] {
  const problems: Problem[] = [];
  const first = collecting(one, problems);
  const second = collecting(other, problems);
  if (first === null || second === null) {
    const [problem, ...more] = problems as [Problem, ...Problem[]];
    throw new ScenarioError([problem, ...more]);
  }
  return [first.done, second.done];
}

function collecting<T>(work: () => T, problems: Problem[]): { readonly done: T } | null {
  try {
    return { done: work() };
  } catch (error) {
    if (!(error instanceof ScenarioError)) throw error;
    problems.push(...error.problems);
    return null;
  }
}
