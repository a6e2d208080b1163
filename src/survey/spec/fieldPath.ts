import type { Path } from '../../scenario/place.ts';

/** A position in a list, from 0. */
const POSITION = /^(?:0|[1-9]\d{0,5})$/u;

/** A key as the keys of scenarios are. */
const KEY = /^[A-Za-z][A-Za-z0-9]{0,59}$/u;

/** Steps of a path; a scenario has some six. */
const MOST_STEPS = 12;

/**
 * Takes a field's path apart.
 *
 * @param path such as `load.torque.0.torque`
 * @returns keys and list positions from the outside in; null where it is no path
 */
export function fieldPath(path: string): Path | null {
  const steps = path.split('.', MOST_STEPS + 1);
  if (steps.length > MOST_STEPS || POSITION.test(steps[0]!)) return null;
  if (!steps.every((step) => KEY.test(step) || POSITION.test(step))) return null;
  return steps.map((step) => (POSITION.test(step) ? Number(step) : step));
}
