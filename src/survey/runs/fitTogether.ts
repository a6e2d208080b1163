import { scenarioInput } from '../../scenario/scenarioInput.ts';
import { fieldPath } from '../spec/fieldPath.ts';
import type { VariedField } from '../spec/survey.ts';

/**
 * Finds the sections of a scenario in which more than one field lies. There the definition may refuse two values together that it
 * accepts one by one: a drop-out speed above the pick-up speed.
 */
export function sharedSections(fields: readonly VariedField[]): readonly string[] {
  const sections = fields.map(({ path }) => String(fieldPath(path)?.[0]));
  return [...new Set(sections.filter((section, at) => sections.indexOf(section) !== at))];
}

/**
 * Asks the definition of each section alone.
 *
 * @param data of the scenario of one run
 */
export function fitTogether(sections: readonly string[], data: unknown): boolean {
  return sections.every((section) => {
    const definition = Object.getOwnPropertyDescriptor(scenarioInput.shape, section)?.value;
    const written: unknown = Object.getOwnPropertyDescriptor(Object(data), section)?.value;
    return definition === undefined || definition.safeParse(written).success;
  });
}
