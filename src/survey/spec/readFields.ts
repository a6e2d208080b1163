import { valueAt } from '../../scenario/place.ts';
import { NO_PATH, whyNoPlace } from '../runs/withValues.ts';
import { checkField, type ReadBase, unknownField } from './checkField.ts';
import { fieldPath } from './fieldPath.ts';
import { type ReadSpread, readSpread, type WrittenField } from './readSpread.ts';
import type { Report } from './report.ts';
import type { VariedField } from './survey.ts';
import { type AskWord, MOST_FIELDS } from './surveyInput.ts';

/**
 * Reads the fields of a survey and holds them against its scenario.
 *
 * @param written their valid parts
 * @param data plain data of the survey
 * @param base null where the scenario could not be read
 * @returns one per field; null where something is wrong with it
 */
export function readFields(
  ask: AskWord,
  written: readonly (WrittenField | undefined)[],
  data: unknown,
  base: ReadBase | null,
  report: Report,
): readonly (VariedField | null)[] {
  const seen = new Set<string>();
  // A longer list is refused already; a hostile one is not held against the scenario.
  const fields = written.slice(0, MOST_FIELDS).map((field, at): VariedField | null => {
    if (field === undefined) return null;
    const here: Report = (path, fault) => report(['vary', at, ...path], fault);
    const path = field.field;
    if (path !== undefined) {
      if (seen.has(path)) {
        here(['field'], {
          code: 'conflict',
          message: `${path} is varied twice`,
          expected: 'each field once',
        });
        return null;
      }
      seen.add(path);
    }
    const isStated = (key: string) => valueAt(data, ['vary', at, key]) !== undefined;
    const read = readField(field, ask, isStated, base, here);
    return read === null || path === undefined ? null : { path, unit: read.unit, spread: read.spread };
  });
  if (ask === 'limit map' && written.length !== 2 && written.length > 0) {
    const message = `has ${written.length} ${written.length === 1 ? 'field' : 'fields'}`;
    report(['vary'], { code: 'outOfRange', message, expected: 'exactly two fields, the axes of the map' });
  }
  return fields;
}

function readField(
  field: WrittenField,
  ask: AskWord,
  isStated: (key: string) => boolean,
  base: ReadBase | null,
  report: Report,
): ReadSpread | null {
  const path = field.field === undefined ? null : fieldPath(field.field);
  if (field.field !== undefined && path === null) report(['field'], NO_PATH);
  // First of all: what is wrong with the numbers of a field that does not exist leads astray.
  const nowhere =
    path === null || base === null ? null : (whyNoPlace(base.data, path) ?? unknownField(path, base));
  if (nowhere !== null) report(['field'], nowhere);
  const known = path !== null && base !== null && nowhere === null ? { path, base } : null;
  const standing = known === null ? null : { value: valueAt(known.base.data, known.path) };
  const read = readSpread(field, ask, isStated, standing, report);
  if (read !== null && known !== null) checkField(known.path, read, known.base, report);
  return read;
}
