/** What a file can say: words, numbers, lists and groups. */
export type Plain = string | number | boolean | readonly Plain[] | { readonly [key: string]: Plain };

/** Words and quantities that need no quotes in either notation of YAML. */
const bare = /^[\p{L}\d][\p{L}\d .^/%·-]*$/u;

/** What YAML would read as something other than a text. */
const notText = /^(?:true|false|null|[\d.]+(?:e[+-]?\d+)?|0[xo][\da-f]+)$/iu;

/**
 * Writes a value on one line, as YAML or, where everything is to be quoted, as JSON.
 *
 * @param json quotes every text and key: for files that are JSON
 */
export function writeFlow(value: Plain, json: boolean): string {
  if (json || typeof value === 'number' || typeof value === 'boolean') return JSON.stringify(value);
  if (typeof value === 'string')
    return bare.test(value) && !notText.test(value) && value === value.trim() ? value : JSON.stringify(value);
  if (isList(value)) return `[${value.map((one) => writeFlow(one, json)).join(', ')}]`;
  const pairs = Object.entries(value).map(([key, one]) => writePair(key, one, json));
  return pairs.length === 0 ? '{}' : `{ ${pairs.join(', ')} }`;
}

/** Writes a key with its value on one line. */
export function writePair(key: string, value: Plain, json: boolean): string {
  return `${writeFlow(key, json)}: ${writeFlow(value, json)}`;
}

function isList(value: Plain): value is readonly Plain[] {
  return Array.isArray(value);
}
