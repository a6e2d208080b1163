/** Starting value of the 32-bit hash, from its authors' publication. */
const OFFSET_BASIS = 0x811c9dc5;
/** Multiplier of the 32-bit hash, from its authors' publication. */
const PRIME = 0x01000193;

/**
 * Fowler, Noll and Vo's hash FNV-1a, 32 bits: tells a damaged line from a whole one.
 *
 * @param text hashed by UTF-16 units, which for ASCII are its bytes
 * @returns eight hexadecimal digits
 */
export function fnv1a(text: string): string {
  let hash = OFFSET_BASIS;
  for (let at = 0; at < text.length; at += 1) hash = Math.imul(hash ^ text.charCodeAt(at), PRIME);
  return (hash >>> 0).toString(16).padStart(8, '0');
}
