import { expect, it } from 'vitest';
import { type Group, parseScenario, problemsOf } from './minimalScenario.ts';

/** What is wrong, the scenario, the only problem that must come of it, and words of its message and of what would be right. */
export type Refusal = readonly [string, Group, string, string, string];

/** One test per row: refused with that one problem and no other, its reason and what would be right. */
export function refuses(cases: readonly Refusal[]): void {
  it.each(cases)('%s', (_, scenario, code, message, expected) => {
    const problems = problemsOf(scenario);
    expect(problems.map((problem) => `${problem.code} ${problem.path}`)).toEqual([code]);
    expect(problems[0]?.message).toContain(message);
    expect(problems[0]?.expected).toContain(expected);
  });
}

/** One test per row: read without a problem. */
export function accepts(cases: readonly (readonly [string, Group])[]): void {
  it.each(cases)('%s', (_, scenario) => {
    expect(() => parseScenario(scenario)).not.toThrow();
  });
}
