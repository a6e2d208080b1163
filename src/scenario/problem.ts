/** What kind of thing is wrong; callers switch on this, never on message text. */
export type ProblemCode =
  /** Longer than a scenario may be; refused before it is parsed. */
  | 'tooLarge'
  /** Nested deeper than a scenario may be. */
  | 'tooDeep'
  /** Bytes that are not text. */
  | 'notText'
  /** Nothing in the file. */
  | 'empty'
  | 'syntax'
  | 'multipleDocuments'
  /** YAML anchors, aliases and tags, which a scenario does not need. */
  | 'yamlFeature'
  | 'duplicateKey'
  | 'unknownKey'
  | 'missingKey'
  | 'wrongType'
  /** A bare number where a unit is needed. */
  | 'missingUnit'
  /** A unit that does not exist or belongs to another quantity. */
  | 'wrongUnit'
  | 'notANumber'
  | 'outOfRange'
  | 'unknownWord'
  /** Two statements that exclude each other, or one that lacks its counterpart. */
  | 'conflict'
  /** Understood, and outside what the model covers. */
  | 'notSupported'
  | 'schemaVersion';

/** The part of a problem that does not depend on where it stands. */
export interface Fault {
  readonly code: ProblemCode;
  /** What is wrong. */
  readonly message: string;
  /** What would be right. */
  readonly expected: string;
}

/** A fault of a scenario file, with its place in the file. */
export interface Problem extends Fault {
  readonly file: string;
  /** From 1; null where the scenario was not text. */
  readonly line: number | null;
  /** From 1; null where the scenario was not text. */
  readonly column: number | null;
  /** Keys joined by dots, list positions from 0; empty for the file as a whole. */
  readonly path: string;
  /** What stands there, shortened; null where nothing does. */
  readonly found: string | null;
}

/**
 * Renders a problem as one line: `file:line:column path: message; expected …`.
 *
 * @param problem where it is, what is wrong and what would be right
 * @returns one line without a line break at its end
 */
export function formatProblem(problem: Problem): string {
  const place = problem.line === null ? problem.file : `${problem.file}:${problem.line}:${problem.column}`;
  const path = problem.path === '' ? ':' : ` ${problem.path}:`;
  return `${place}${path} ${problem.message}; expected ${problem.expected}`;
}
