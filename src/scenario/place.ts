/** Where in the text something stands; both from 1, null where there was no text. */
export interface Place {
  readonly line: number | null;
  readonly column: number | null;
}

/** Keys and list positions from the outside in. */
export type Path = readonly (string | number)[];

/** Finds the place of a value, or of its key; of the nearest group around it where it does not exist. */
export type Locate = (path: Path, what: 'key' | 'value') => Place;

/**
 * Follows a path into plain data; own keys only.
 *
 * @returns what stands there, or undefined
 */
export function valueAt(data: unknown, path: Path): unknown {
  let value = data;
  for (const key of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return undefined;
    value = Object.getOwnPropertyDescriptor(value, key)?.value;
  }
  return value;
}
