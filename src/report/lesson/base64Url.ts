import { encodeBase64 } from '../encodeColumn.ts';

const ALPHABET = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';
const VALUES: ReadonlyMap<string, number> = new Map([...ALPHABET].map((letter, value) => [letter, value]));
/** Characters that carry three bytes. */
const GROUP = 4;

/** Bytes in the alphabet that addresses carry unchanged, without padding (RFC 4648, section 5). */
export function encodeBase64Url(bytes: Uint8Array): string {
  return encodeBase64(bytes).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');
}

/** The bytes of such a text; null where it is none: a foreign character, a length that cannot be, bits left over. */
export function decodeBase64Url(text: string): Uint8Array<ArrayBuffer> | null {
  if (text.length % GROUP === 1) return null;
  const bytes = new Uint8Array(Math.floor((text.length * 3) / GROUP));
  let word = 0;
  let bits = 0;
  let at = 0;
  for (const letter of text) {
    const value = VALUES.get(letter);
    if (value === undefined) return null;
    word = ((word << 6) | value) & 0xffffff;
    bits += 6;
    if (bits >= 8) {
      bits -= 8;
      bytes[at] = (word >> bits) & 0xff;
      at += 1;
    }
  }
  return (word & ((1 << bits) - 1)) === 0 ? bytes : null;
}
