import { checkObject } from './checkObject.ts';
import { describeValue } from './fault.ts';
import { findProblems } from './findProblems.ts';
import { maxProblems } from './limits.ts';
import type { CircuitEstimator } from './nameplate.ts';
import { type Locate, type Path, valueAt } from './place.ts';
import { placedBy } from './placeProblems.ts';
import type { Fault, Problem } from './problem.ts';
import { readYaml } from './readYaml.ts';
import { resolveScenario, type ScenarioWithOrigins } from './resolveScenario.ts';
import { ScenarioError } from './scenarioError.ts';

/** What the parser cannot see in the text. */
export interface ParseOptions {
  /** Name for the messages; `scenario` if left out. */
  readonly fileName?: string;
}

/**
 * Reads a scenario and says of every value whether it was given, a default, an assumption or computed from others.
 *
 * @param source YAML or JSON text, or the same as a plain object (problems then have no line numbers)
 * @param options name of the file for the messages
 * @param estimator finds a circuit where a nameplate or tests stand in place of one
 * @returns the scenario in SI with everything filled in, and the origins
 * @throws ScenarioError with every problem found
 */
export function readScenario(
  source: unknown,
  options: ParseOptions,
  estimator: CircuitEstimator,
): ScenarioWithOrigins {
  const file = options.fileName ?? 'scenario';
  const { data, faults } = typeof source === 'string' ? readYaml(source) : readObject(source);
  const problems: Problem[] = faults.map(({ place, ...fault }) => ({
    ...place,
    ...words(fault),
    file,
    path: '',
    found: null,
  }));
  if (data !== null) {
    const { value, locate } = data;
    const result = findProblems(value);
    if ('input' in result && problems.length === 0) {
      try {
        return resolveScenario(result.input, value, estimator);
      } catch (error) {
        if (!(error instanceof ScenarioError)) throw error;
        throw placedBy(error, locate, file);
      }
    }
    for (const { path, ...fault } of 'faults' in result ? result.faults : []) {
      const found = valueAt(value, path);
      problems.push({
        ...locate(path, fault.code === 'unknownKey' ? 'key' : 'value'),
        ...words(withCommaHint(fault, path)),
        file,
        path: shorten(path.join('.'), 120),
        found: found === undefined ? null : describeValue(found),
      });
    }
  }
  throw new ScenarioError(listed(problems));
}

/** A key that begins with a digit is what a decimal comma leaves inside braces. */
function withCommaHint(fault: Fault, path: Path): Fault {
  if (fault.code !== 'unknownKey' || !/^\d/.test(String(path.at(-1)))) return fault;
  const message =
    'is no key: inside { } a comma begins a new entry, so a decimal comma splits the number before it';
  return { ...fault, message, expected: 'a decimal point, as in `460.5 V`' };
}

function readObject(source: unknown): ReturnType<typeof readYaml> {
  const place = { line: null, column: null };
  const fault = checkObject(source);
  if (fault !== null) return { data: null, faults: [{ ...fault, place }] };
  const locate: Locate = () => place;
  return { data: { value: source, locate }, faults: [] };
}

/** In the order of the text; the list is cut where a file is so broken that nobody would read on. */
function listed(problems: readonly Problem[]): [Problem, ...Problem[]] {
  const order = (problem: Problem) => (problem.line ?? 0) * 1e6 + (problem.column ?? 0);
  const [first, ...others] = problems.toSorted((a, b) => order(a) - order(b));
  if (first === undefined) throw new Error('a scenario was refused without a reason');
  if (others.length < maxProblems) return [first, ...others];
  const left = others.length + 1 - maxProblems;
  const message = `${left} further problems are not listed`;
  const rest = {
    ...others[maxProblems - 1]!,
    message,
    expected: 'the ones above put right first',
    found: null,
  };
  return [first, ...others.slice(0, maxProblems - 1), rest];
}

function words(fault: Fault): Fault {
  return { code: fault.code, message: shorten(fault.message, 300), expected: shorten(fault.expected, 500) };
}

/** One line, of a length a terminal can show, without characters that could steer the terminal. */
function shorten(text: string, longest: number): string {
  const line = text.replace(/\s+/g, ' ').replace(/[\p{Cc}\p{Cf}\p{Cs}]/gu, '?');
  return line.length > longest ? `${line.slice(0, longest - 1)}…` : line;
}
