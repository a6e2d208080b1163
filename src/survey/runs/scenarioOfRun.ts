import { setIn } from '../../scenario/edit/changeText.ts';
import { readYamlText } from '../../scenario/edit/yamlText.ts';
import { readYaml } from '../../scenario/readYaml.ts';
import { fieldPath } from '../spec/fieldPath.ts';
import type { Survey } from '../spec/survey.ts';
import { type Change, changesOf, withValues } from './withValues.ts';

/** A mark some editors put before the text. */
const MARK = '\uFEFF';

/**
 * Text of the scenario file that makes one run by itself: the base scenario with the values of the run written in, all else as it
 * was. Where the layout is one in which a value cannot be changed in place, the same data come as JSON.
 *
 * @param values one per field, in the fields' units
 */
export function scenarioOfRun(survey: Survey, values: readonly number[]): string {
  const { text } = survey.base;
  const changes = changesOf(survey.fields, values);
  const mark = text.startsWith(MARK) ? MARK : '';
  const written = changes.reduce<string | null>(
    (now, change) => (now === null ? null : write(now, change)),
    text.slice(mark.length),
  );
  const wanted = withValues(readYaml(text).data?.value, changes);
  const isRight = written !== null && isSame(readYaml(written).data?.value, wanted);
  return isRight ? mark + written : `${JSON.stringify(wanted, null, 2)}\n`;
}

function write(text: string, { path, value }: Change): string | null {
  const yaml = readYamlText(text);
  const steps = fieldPath(path);
  return yaml === null || steps === null ? null : setIn(yaml, steps, value);
}

/** Keys may have come to stand in another order. */
function isSame(one: unknown, other: unknown): boolean {
  if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null)
    return Object.is(one, other);
  const keys = Object.keys(one);
  if (keys.length !== Object.keys(other).length || Array.isArray(one) !== Array.isArray(other)) return false;
  return keys.every((key) => {
    const [a, b] = [one, other].map((group) => Object.getOwnPropertyDescriptor(group, key));
    return b !== undefined && isSame(a?.value, b.value);
  });
}
