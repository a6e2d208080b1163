/**
 * Where a value comes from.
 *
 * - given: stands in the scenario.
 * - default: not stated; the documented default holds.
 * - assumed: not stated; a typical value stands in for something about the plant that nobody wrote down.
 * - derived: computed from given values.
 * - standard: not stated; taken from a table of a standard, named in `source`.
 * - estimated: found by fitting a circuit to a nameplate or to test readings.
 */
export type OriginKind = 'given' | 'default' | 'assumed' | 'derived' | 'standard' | 'estimated';

/** One input: its value as written, and whether it was given or assumed. */
export interface Origin {
  /** Keys joined by dots, list positions from 0. */
  readonly path: string;
  /** With its unit, as written where it was given. */
  readonly value: string;
  readonly origin: OriginKind;
  /** The table, clause or reason, where there is one. */
  readonly source?: string;
}

/** Takes down a value that does not stand in the scenario, by its path within the section. */
export type Note = (
  path: string,
  value: string,
  origin: Exclude<OriginKind, 'given'>,
  source?: string,
) => void;

/**
 * Lists every single value that stands in a scenario, in its order there.
 *
 * @param data what the file says
 * @param path keys that lead to it, joined by dots
 */
export function givenOrigins(data: unknown, path = ''): Origin[] {
  if (typeof data !== 'object' || data === null)
    return [{ path, value: String(data).trim(), origin: 'given' }];
  return Object.entries(data).flatMap(([key, value]) => {
    return value === undefined ? [] : givenOrigins(value, path === '' ? key : `${path}.${key}`);
  });
}

/** Writes a computed value for an inputs table: four significant digits and the unit. */
export function derivedValue(value: number, unit: string): string {
  return `${Number(value.toPrecision(4))} ${unit}`;
}

/** Takes notes for a group of keys inside a section. */
export function within(group: string, note: Note): Note {
  return (path, value, origin, source) => note(`${group}.${path}`, value, origin, source);
}
