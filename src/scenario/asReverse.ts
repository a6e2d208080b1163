/**
 * Data of the reversing contactor: what it does not state itself is as for the forward one, unless it states its own
 * `ratedCurrentAc3` and so is another device.
 *
 * @param forward null where nothing is stated
 * @param own of the reversing contactor, alike
 */
export function asReverse<T extends { readonly ratedCurrentAc3: unknown }>(forward: T, own: T): T {
  if (own.ratedCurrentAc3 !== null) return own;
  const stated = Object.fromEntries(Object.entries(own).filter(([, value]) => value !== null));
  return { ...forward, ...stated };
}
