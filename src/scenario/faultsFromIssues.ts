import type { core } from 'zod';
import { closestWord } from './closestWord.ts';
import { unpackFault } from './fault.ts';
import type { Path } from './place.ts';
import type { Fault } from './problem.ts';

/** A fault with the path of the value it is about. */
export interface PathedFault extends Fault {
  readonly path: Path;
}

type Issue = core.$ZodIssue;

/**
 * Turns the issues of the scenario definition into faults with their paths. Of a union, only the alternative that was
 * evidently meant is heard.
 *
 * @param issues as zod reports them, their messages packed by `packFault`
 * @param around path of the value that was validated
 */
export function faultsFromIssues(issues: readonly Issue[], around: Path = []): PathedFault[] {
  return issues.flatMap((issue): PathedFault[] => {
    const path: Path = [
      ...around,
      ...issue.path.map((step) => (typeof step === 'number' ? step : String(step))),
    ];
    if (issue.code === 'unrecognized_keys') {
      const known = unpackFault(issue.message);
      return issue.keys.map((key) => ({
        ...known,
        expected: suggestKey(key, known.expected),
        path: [...path, key],
      }));
    }
    if (issue.code === 'invalid_union' && issue.errors.length > 0) {
      const meant = issue.errors.find((branch) => !branch.some(isOtherType)) ?? issue.errors[0];
      return faultsFromIssues(meant ?? [], path);
    }
    return [{ ...unpackFault(issue.message), path }];
  });
}

/** True where the alternative failed as a whole: the value is not of its type at all. */
function isOtherType(issue: Issue): boolean {
  return issue.path.length === 0 && (issue.code === 'invalid_type' || issue.code === 'invalid_value');
}

function suggestKey(key: string, known: string): string {
  const keys = known.split(', ');
  const close = closestWord(key, keys);
  return close === undefined ? `one of ${known}` : `\`${close}\` (did you mean that?) or another of ${known}`;
}
