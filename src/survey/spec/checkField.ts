import { findProblems } from '../../scenario/findProblems.ts';
import { type Path, valueAt } from '../../scenario/place.ts';
import type { Fault, Problem } from '../../scenario/problem.ts';
import { ScenarioError } from '../../scenario/scenarioError.ts';
import { withValues } from '../runs/withValues.ts';
import type { End, ReadSpread } from './readSpread.ts';
import type { Report } from './report.ts';
import { plainValue, valueText } from './valueText.ts';

/** What makes a value impossible and does not depend on how large it is: the other end need not be asked. */
const OF_EVERY_VALUE: readonly string[] = [
  'unknownKey',
  'wrongType',
  'missingUnit',
  'wrongUnit',
  'unknownWord',
];

/** Unit that no quantity has: what takes a number with it takes any text. */
const NO_UNIT = 'nounit';

/** The scenario a survey varies, as read. */
export interface ReadBase {
  /** Plain data. */
  readonly data: unknown;
  /** @throws ScenarioError where changed plain data are no scenario any more */
  readonly parse: (data: unknown) => unknown;
}

/** Any number: whether a scenario may have a key does not depend on what stands behind it. */
const PROBE = 1;

/**
 * Why a scenario cannot have a field, with the key that was probably meant.
 *
 * @param path of the field, in which `whyNoPlace` has found nothing wrong
 * @returns null where the field stands in the scenario or may stand there
 */
export function unknownField(path: Path, base: ReadBase): Fault | null {
  if (valueAt(base.data, path) !== undefined) return null;
  const text = path.join('.');
  const problems = problemsOf(withValues(base.data, [{ path: text, value: PROBE }]), base);
  const unknown = problems.find((problem) => isUnknownField(problem, text));
  if (unknown === undefined) return null;
  const message = `the scenario has no such field: \`${unknown.path}\` ${unknown.message}`;
  return { code: 'unknownKey', message, expected: unknown.expected };
}

/**
 * Holds the ends of a field against the scenario, each alone.
 *
 * @param path of the field, which the scenario has or may have
 * @param report paths within the field
 */
export function checkField(path: Path, read: ReadSpread, base: ReadBase, report: Report): void {
  const text = path.join('.');
  const [lower, upper] = read.ends;
  const ends = lower.number === upper.number ? [lower] : [lower, upper];
  for (const [index, end] of ends.entries()) {
    const data = withValues(base.data, [{ path: text, value: plainValue(end.number, read.unit) }]);
    const problems = problemsOf(data, base);
    const name = ends.length === 1 ? 'value' : index === 0 ? 'lower end' : 'upper end';
    for (const problem of problems) report(end.path, retold(problem, text, name, end, read));
    if (problems.some(({ code, path: at }) => at === text && OF_EVERY_VALUE.includes(code))) return;
    if (problems.length > 0) continue;
    if (index === 0 && isText(text, end, read, base)) {
      report(['field'], {
        code: 'wrongType',
        message: 'is text in the scenario, not a number',
        expected: 'a field that holds a number',
      });
      return;
    }
  }
}

function problemsOf(data: unknown, base: ReadBase): readonly Problem[] {
  try {
    base.parse(data);
    return [];
  } catch (error) {
    if (error instanceof ScenarioError) return error.problems;
    throw error;
  }
}

function isUnknownField({ code, path }: Problem, field: string): boolean {
  return code === 'unknownKey' && (path === field || field.startsWith(`${path}.`));
}

function retold(problem: Problem, field: string, name: string, end: End, { unit }: ReadSpread): Fault {
  const elsewhere = problem.path === field || problem.path === '' ? '' : `${problem.path}: `;
  const cut = end.automatic ? ' (its tail is cut there as no end is stated)' : '';
  const advice = end.automatic ? `; or state \`from\` and \`to\`` : '';
  return {
    code: problem.code,
    message: `${field} at its ${name}, ${valueText(end.number, unit)}${cut}: ${elsewhere}${problem.message}`,
    expected: `${problem.expected}${advice}`,
  };
}

function isText(field: string, end: End, { unit }: ReadSpread, base: ReadBase): boolean {
  if (unit === '') return false;
  const data = withValues(base.data, [{ path: field, value: valueText(end.number, NO_UNIT) }]);
  return 'input' in findProblems(data);
}
