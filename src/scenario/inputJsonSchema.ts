import { z } from 'zod';

/**
 * The JSON Schema of what a person writes into a file: keys, types, words, plain numbers and the form of a quantity.
 *
 * @param definition of the file; the reader uses the same
 * @returns draft 2020-12, with the description, examples and default of every key
 */
export function inputJsonSchema(definition: z.ZodType): object {
  return z.toJSONSchema(definition, {
    io: 'input',
    target: 'draft-2020-12',
    // zod takes examples and defaults for what comes out and drops them where that differs from what is written; ours are as written.
    override: ({ zodSchema, jsonSchema }) => {
      const { examples, default: leftOut } = z.globalRegistry.get(zodSchema) ?? {};
      if (examples !== undefined) Object.assign(jsonSchema, { examples });
      if (leftOut !== undefined) Object.assign(jsonSchema, { default: leftOut });
    },
  });
}
