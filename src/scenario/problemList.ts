import { maxProblems } from './limits.ts';
import type { Path } from './place.ts';
import type { Fault, Problem } from './problem.ts';

/** Characters of a path in a problem. */
const LONGEST_PATH = 120;

/** In the order of the text; the list is cut where a file is so broken that nobody would read on. */
export function listed(problems: readonly Problem[]): [Problem, ...Problem[]] {
  const order = (problem: Problem) => (problem.line ?? 0) * 1e6 + (problem.column ?? 0);
  const [first, ...others] = problems.toSorted((a, b) => order(a) - order(b));
  if (first === undefined) throw new Error('a file was refused without a reason');
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

/** The words of a fault, each of a length a terminal can show. */
export function words(fault: Fault): Fault {
  return { code: fault.code, message: shorten(fault.message, 300), expected: shorten(fault.expected, 500) };
}

/** A path as it stands in a problem: keys joined by dots. */
export function pathText(path: Path): string {
  return shorten(path.join('.'), LONGEST_PATH);
}

/** A key that begins with a digit is what a decimal comma leaves inside braces. */
export function withCommaHint(fault: Fault, path: Path): Fault {
  if (fault.code !== 'unknownKey' || !/^\d/.test(String(path.at(-1)))) return fault;
  const message =
    'is no key: inside { } a comma begins a new entry, so a decimal comma splits the number before it';
  return { ...fault, message, expected: 'a decimal point, as in `460.5 V`' };
}

/** One line, of a length a terminal can show, without characters that could steer the terminal. */
function shorten(text: string, longest: number): string {
  const line = text.replace(/\s+/g, ' ').replace(/[\p{Cc}\p{Cf}\p{Cs}]/gu, '?');
  return line.length > longest ? `${line.slice(0, longest - 1)}…` : line;
}
