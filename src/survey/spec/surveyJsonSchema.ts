import { z } from 'zod';
import { inputJsonSchema } from '../../scenario/inputJsonSchema.ts';
import { SURVEY_INPUTS } from './surveyInput.ts';

/**
 * The JSON Schema of a survey file, for editors: made from the same definition the reader uses.
 *
 * It checks keys, types, words and plain numbers. Whether the keys of a field fit each other and the scenario has such a field only
 * the reader can tell.
 *
 * @returns draft 2020-12, one form for each `ask`
 */
export function surveyJsonSchema(): object {
  const { sweep, random, sensitivity } = SURVEY_INPUTS;
  const inputs = [
    sweep,
    random,
    SURVEY_INPUTS['worst case'],
    sensitivity,
    SURVEY_INPUTS['limit map'],
  ] as const;
  return inputJsonSchema(z.discriminatedUnion('ask', inputs));
}
