/**
 * A value that the rules between keys have made sure of and the types cannot know of.
 *
 * @param value what the input says
 * @param what the key, for the error of a rule that failed to hold
 */
export function stated<T>(value: T | undefined, what: string): T {
  if (value === undefined) throw new Error(`${what} is missing from an input that passed validation`);
  return value;
}
