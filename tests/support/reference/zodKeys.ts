import { z } from 'zod';

/** The definitions that stand at each key of a file's definition, by its path without the kinds of groups. */
export function definitionsByPath(definition: unknown, path = ''): Map<string, z.ZodType[]> {
  const found = new Map<string, z.ZodType[]>();
  const take = (at: string, one: unknown) => {
    if (one instanceof z.ZodType) found.set(at, [...(found.get(at) ?? []), one]);
    for (const [below, more] of definitionsByPath(one, at))
      found.set(below, [...(found.get(below) ?? []), ...more]);
  };
  const inner = unwrapped(definition);
  if (inner instanceof z.ZodObject)
    for (const [key, one] of Object.entries(inner.shape)) take(path === '' ? key : `${path}.${key}`, one);
  else if (inner instanceof z.ZodArray)
    for (const [below, more] of definitionsByPath(inner.element, `${path}[]`)) found.set(below, more);
  else if (inner instanceof z.ZodUnion)
    for (const option of inner.options)
      for (const [below, more] of definitionsByPath(option, path))
        found.set(below, [...(found.get(below) ?? []), ...more]);
  return found;
}

/** Without what makes a definition optional or changes what is read. */
function unwrapped(definition: unknown): unknown {
  if (definition instanceof z.ZodOptional) return unwrapped(definition.unwrap());
  if (definition instanceof z.ZodPipe) return unwrapped(definition.in);
  return definition;
}
