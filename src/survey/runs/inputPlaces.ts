import { type Dimension, dimensions } from '../../scenario/dimension.ts';
import { findProblems } from '../../scenario/findProblems.ts';
import { readQuantity } from '../../scenario/parseQuantity.ts';
import { type Path, valueAt } from '../../scenario/place.ts';
import type { Fault } from '../../scenario/problem.ts';
import { readRatio } from '../../scenario/ratioField.ts';
import { fieldPath } from '../spec/fieldPath.ts';
import type { VariedField } from '../spec/survey.ts';
import { plainValue, valueText } from '../spec/valueText.ts';
import { endsOf } from './endsOf.ts';
import { withValues } from './withValues.ts';

/** Key of the number in a quantity whose unit tells what it is, such as a reactance or an inductance (`Either`). */
const VALUE = 'value';

/** Where a field's value arrives in the valid input of a scenario. */
export interface InputPlace {
  readonly steps: Path;
  /** From the field's unit to the number that stands in the input, by the same arithmetic as a file is read. */
  readonly read: (value: number) => number;
  /** Whether the value lies where the definition of the field has been asked and has accepted. */
  readonly allowed: (value: number) => boolean;
}

/**
 * Finds the places of all fields by reading the scenario with each field at its ends and between: the only thing that changes in the
 * valid input is one number, and a known kind of quantity explains it to the last bit.
 *
 * @param data of the base scenario
 * @returns null where some field has no such place
 */
export function inputPlaces(data: unknown, fields: readonly VariedField[]): InputPlace[] | null {
  const places = fields.map((field) => inputPlace(data, field));
  return places.every((place) => place !== null) ? places : null;
}

function inputPlace(data: unknown, field: VariedField): InputPlace | null {
  const steps = fieldPath(field.path);
  if (steps === null) return null;
  const [low, high] = endsOf(field.spread);
  const probes = [low, high, low + 0.381 * (high - low)];
  const inputs = probes.map((value) => {
    const found = findProblems(
      withValues(data, [{ path: field.path, value: plainValue(value, field.unit) }]),
    );
    return 'input' in found ? found.input : null;
  });
  const place = [steps, [...steps, VALUE]].find((path) =>
    inputs.every((input) => typeof valueAt(input, path) === 'number'),
  );
  const [first] = inputs;
  if (place === undefined || !inputs.every((input) => sameBut(first, input, place))) return null;
  const numbers = inputs.map((input) => valueAt(input, place));
  const read = readings(field.unit).find((reading) =>
    probes.every((value, i) => Object.is(reading(value), numbers[i])),
  );
  if (read === undefined) return null;
  return { steps: place, read, allowed: (value) => value >= low && value <= high };
}

/** Every way a number with this unit may be read. */
function readings(unit: string): ((value: number) => number)[] {
  if (unit === '') return [(value) => value + 0];
  const ways: ((text: string) => number | Fault)[] = [
    ...(Object.keys(dimensions) as Dimension[]).map(
      (dimension) => (text: string) => readQuantity(text, dimension),
    ),
    (text) => readRatio(text, 'multiple', ''),
  ];
  return ways.map((way) => (value) => {
    const read = way(valueText(value, unit));
    return typeof read === 'number' ? read : Number.NaN;
  });
}

/** Whether two inputs are the same everywhere but at one place. */
function sameBut(one: unknown, other: unknown, place: Path | null): boolean {
  if (place !== null && place.length === 0) return true;
  if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null)
    return Object.is(one, other);
  const keys = new Set([...Object.keys(one), ...Object.keys(other)]);
  return [...keys].every((key) => {
    const [a, b] = [one, other].map((group) => Object.getOwnPropertyDescriptor(group, key)?.value);
    return sameBut(a, b, place !== null && String(place[0]) === key ? place.slice(1) : null);
  });
}
