import type { Fault, ProblemCode } from './problem.ts';

/**
 * Packs a fault into an issue message: zod offers no other slot for structured data on the issues it raises itself.
 *
 * @param code what kind of problem
 * @param message what is wrong
 * @param expected what would be right
 * @returns text that `unpackFault` reads back
 */
export function packFault(code: ProblemCode, message: string, expected: string): string {
  return JSON.stringify({ code, message, expected } satisfies Fault);
}

/** Reads back what `packFault` wrote. */
export function unpackFault(packed: string): Fault {
  const fault: Fault = JSON.parse(packed);
  return fault;
}

/**
 * Says in words what a value is, shortened to one line.
 *
 * @param value anything a scenario file can hold
 */
export function describeValue(value: unknown): string {
  if (value === undefined || value === null) return 'nothing';
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : 'a list';
  if (typeof value === 'object') return 'a group of keys';
  if (typeof value === 'string') return JSON.stringify(value.length > 60 ? `${value.slice(0, 57)}…` : value);
  return String(value).slice(0, 60);
}

/** The fault of a value that is missing, empty or of the wrong type; `expected` says what belongs there. */
export function packTypeFault(value: unknown, expected: string): string {
  if (value === undefined) return packFault('missingKey', 'is missing', expected);
  if (value === null) return packFault('missingKey', 'is empty', expected);
  return packFault('wrongType', `found ${describeValue(value)}`, expected);
}
