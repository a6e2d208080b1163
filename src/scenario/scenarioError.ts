import type { Problem, ProblemCode } from './problem.ts';
import { formatProblem } from './problem.ts';

/** A scenario that cannot be used, with every problem that was found in it. */
export class ScenarioError extends Error {
  override readonly name = 'ScenarioError';
  /** The code of the first problem. */
  readonly code: ProblemCode;
  readonly problems: readonly Problem[];

  /**
   * @param problems at least one, in the order in which they are to be read
   */
  constructor(problems: readonly [Problem, ...Problem[]]) {
    super(problems.map(formatProblem).join('\n'));
    this.code = problems[0].code;
    this.problems = problems;
  }
}
