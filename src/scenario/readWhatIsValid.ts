import type { core } from 'zod';
import { z } from 'zod';

/** Data of which any part may be missing because it was refused. */
export type PartlyValid<T> = T extends readonly (infer E)[]
  ? readonly (PartlyValid<E> | undefined)[]
  : T extends object
    ? { readonly [K in keyof T]?: PartlyValid<T[K]> | undefined }
    : T;

/**
 * Reads the valid parts of data that is not valid as a whole, so that rules between keys can be checked in the same
 * pass as the keys themselves.
 *
 * @param schema the definition of the whole
 * @param raw data as written
 * @returns the output of the definition; undefined wherever a value is missing or wrong
 */
export function readWhatIsValid<S extends core.$ZodType>(
  schema: S,
  raw: unknown,
): PartlyValid<z.output<S>> | undefined {
  return read(schema, raw) as PartlyValid<z.output<S>> | undefined;
}

function read(schema: core.$ZodType, raw: unknown): unknown {
  const whole = z.safeParse(schema, raw);
  if (whole.success) return whole.data;
  const inner = schema instanceof z.ZodOptional ? schema.unwrap() : schema;
  if (inner instanceof z.ZodObject && typeof raw === 'object' && raw !== null && !Array.isArray(raw)) {
    const shape: Readonly<Record<string, core.$ZodType>> = inner.shape;
    const entries = Object.entries(raw).filter(([key]) => Object.hasOwn(shape, key));
    return Object.fromEntries(entries.map(([key, value]) => [key, read(shape[key]!, value)]));
  }
  if (inner instanceof z.ZodArray && Array.isArray(raw))
    return raw.map((value) => read(inner.element, value));
  return undefined;
}
