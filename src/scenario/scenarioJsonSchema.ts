import { inputJsonSchema } from './inputJsonSchema.ts';
import { scenarioInput } from './scenarioInput.ts';

/**
 * The JSON Schema of a scenario file, for editors: made from the same definition the parser uses.
 *
 * It checks keys, types, words, plain numbers and the form of a quantity. That a unit fits, that a quantity lies in its
 * range and that keys fit each other only the parser can tell.
 *
 * @returns draft 2020-12, with a description, unit and example for every key
 */
export function scenarioJsonSchema(): object {
  return inputJsonSchema(scenarioInput);
}
