import { describeValue } from '../../scenario/fault.ts';
import type { Path } from '../../scenario/place.ts';
import type { Fault } from '../../scenario/problem.ts';
import { fieldPath } from '../spec/fieldPath.ts';
import type { VariedField } from '../spec/survey.ts';
import { plainValue } from '../spec/valueText.ts';

/** One value that is to stand in a scenario's plain data. */
export interface Change {
  /** Keys and list positions from 0, joined by dots. */
  readonly path: string;
  /** As a file states it: `0.55 kg m^2`, `0.84`. */
  readonly value: string | number;
}

/**
 * What one run changes.
 *
 * @param fields of the survey
 * @param values one per field, in the field's unit
 */
export function changesOf(fields: readonly VariedField[], values: readonly number[]): Change[] {
  return fields.map(({ path, unit }, at) => {
    const value = values[at];
    if (value === undefined) throw new Error(`no value for ${path}`);
    return { path, value: plainValue(value, unit) };
  });
}

/**
 * Puts values into plain data. What is given is not changed, and what the changes do not touch is shared. Keys and groups that are
 * missing are made; entries of lists are not.
 *
 * @param data of a scenario, such as `readYaml` gives it
 * @throws Error where a path leads nowhere (`whyNoPlace` tells beforehand)
 */
export function withValues(data: unknown, changes: readonly Change[]): unknown {
  return changes.reduce((changed, { path, value }) => {
    const steps = fieldPath(path);
    const fault = steps === null ? NO_PATH : whyNoPlace(changed, steps);
    if (fault !== null) throw new Error(`${path} ${fault.message}; expected ${fault.expected}`);
    return put(changed, steps!, value);
  }, data);
}

/** Of a text that is no path. */
export const NO_PATH: Fault = {
  code: 'unknownKey',
  message: 'is no path into a scenario',
  expected: 'keys and list positions joined by dots, such as `load.inertia` or `load.torque.0.torque`',
};

/**
 * Why no number can be put somewhere, or null where it can as far as the data alone tell.
 *
 * @param data of a scenario
 */
export function whyNoPlace(data: unknown, path: Path): Fault | null {
  let node = data;
  for (const [index, step] of path.entries()) {
    const before = path.slice(0, index).join('.');
    if (Array.isArray(node)) {
      if (typeof step !== 'number' || step >= node.length) return noEntry(before, node.length);
      node = node[step];
    } else if (typeof node === 'object' && node !== null) {
      if (typeof step === 'number') return noList(before, node);
      node = Object.getOwnPropertyDescriptor(node, step)?.value;
      if (node === undefined || node === null) return inMissing(path, index + 1);
    } else {
      return {
        code: 'unknownKey',
        message: `leads nowhere: \`${before}\` is ${describeValue(node)}, which has no keys`,
        expected: `a key of the scenario that holds a number`,
      };
    }
  }
  if (typeof node !== 'object' || node === null) return null;
  return {
    code: 'wrongType',
    message: `is ${describeValue(node)} in the scenario, not a number`,
    expected: Array.isArray(node)
      ? `an entry of the list, such as \`${[...path, 0].join('.')}\`, and a key in it that holds a number`
      : `a key in it that holds a number${keysOf(node)}`,
  };
}

function noEntry(list: string, length: number): Fault {
  const positions = length === 0 ? 'a key outside the list' : `\`${list}.0\` to \`${list}.${length - 1}\``;
  return {
    code: 'unknownKey',
    message: `leads nowhere: \`${list}\` is a list of ${length} in the scenario, counted from 0`,
    expected: length === 1 ? `\`${list}.0\`` : positions,
  };
}

function noList(group: string, node: object): Fault {
  return {
    code: 'unknownKey',
    message: `leads nowhere: \`${group}\` is no list in the scenario`,
    expected: `a key in it that holds a number${keysOf(node)}`,
  };
}

/** Groups that are missing can be made, lists not. */
function inMissing(path: Path, from: number): Fault | null {
  const position = path.findIndex((step, index) => index >= from && typeof step === 'number');
  if (position < 0) return null;
  return {
    code: 'unknownKey',
    message: `leads nowhere: the scenario has no list \`${path.slice(0, position).join('.')}\``,
    expected: 'a list that stands in the scenario',
  };
}

function keysOf(node: object): string {
  const keys = Object.keys(node);
  return keys.length === 0 ? '' : ` (${keys.join(', ')})`;
}

function put(data: unknown, [step, ...rest]: Path, value: string | number): unknown {
  if (step === undefined) return value;
  if (Array.isArray(data)) return data.with(Number(step), put(data[Number(step)], rest, value));
  const group: object = typeof data === 'object' && data !== null ? data : {};
  const inner: unknown = Object.getOwnPropertyDescriptor(group, step)?.value;
  return { ...group, [String(step)]: put(inner, rest, value) };
}
