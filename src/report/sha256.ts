import { encodeBase64 } from './encodeColumn.ts';

/** First n primes; the constants of the hash are made of their roots. */
const PRIMES = firstPrimes(64);
/** Fractional parts of cube roots of the first 64 primes, 32 bits (FIPS 180-4, section 4.2.2). */
const ROUND = PRIMES.map((prime) => fraction32(Math.cbrt(prime)));
/** Fractional parts of square roots of the first 8 primes, 32 bits (FIPS 180-4, section 5.3.3). */
const INITIAL = PRIMES.slice(0, 8).map((prime) => fraction32(Math.sqrt(prime)));

/**
 * SHA-256 of a text's UTF-8 bytes, in base64: what a content security policy calls the hash of an inline script.
 * Written out because report/ runs in a browser without waiting, where the built-in digest is asynchronous.
 *
 * @remarks Source: FIPS 180-4.
 */
export function sha256Base64(text: string): string {
  const message = new TextEncoder().encode(text);
  const padded = new Uint8Array((((message.length + 8) >> 6) + 1) * 64);
  padded.set(message);
  padded[message.length] = 0x80;
  const view = new DataView(padded.buffer);
  view.setUint32(padded.length - 8, Math.floor(message.length / 0x20000000));
  view.setUint32(padded.length - 4, (message.length << 3) >>> 0);
  const hash = Uint32Array.from(INITIAL);
  const schedule = new Uint32Array(64);
  for (let block = 0; block < padded.length; block += 64) {
    for (let i = 0; i < 16; i += 1) schedule[i] = view.getUint32(block + 4 * i);
    compress(hash, schedule);
  }
  const digest = new DataView(new ArrayBuffer(32));
  hash.forEach((word, i) => {
    digest.setUint32(4 * i, word);
  });
  return encodeBase64(new Uint8Array(digest.buffer));
}

function compress(hash: Uint32Array, w: Uint32Array): void {
  for (let i = 16; i < 64; i += 1) {
    const early = w[i - 15]!;
    const late = w[i - 2]!;
    const s0 = rotate(early, 7) ^ rotate(early, 18) ^ (early >>> 3);
    const s1 = rotate(late, 17) ^ rotate(late, 19) ^ (late >>> 10);
    w[i] = w[i - 16]! + s0 + w[i - 7]! + s1;
  }
  let [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0] = hash;
  for (let i = 0; i < 64; i += 1) {
    const s1 = rotate(e, 6) ^ rotate(e, 11) ^ rotate(e, 25);
    const t1 = (h + s1 + ((e & f) ^ (~e & g)) + ROUND[i]! + w[i]!) | 0;
    const s0 = rotate(a, 2) ^ rotate(a, 13) ^ rotate(a, 22);
    const t2 = (s0 + ((a & b) ^ (a & c) ^ (b & c))) | 0;
    [a, b, c, d, e, f, g, h] = [(t1 + t2) | 0, a, b, c, (d + t1) | 0, e, f, g];
  }
  [a, b, c, d, e, f, g, h].forEach((word, i) => {
    hash[i] = hash[i]! + word;
  });
}

function rotate(word: number, bits: number): number {
  return (word >>> bits) | (word << (32 - bits));
}

function fraction32(value: number): number {
  return Math.floor((value - Math.floor(value)) * 2 ** 32);
}

function firstPrimes(count: number): number[] {
  const primes: number[] = [];
  for (let n = 2; primes.length < count; n += 1) if (primes.every((prime) => n % prime !== 0)) primes.push(n);
  return primes;
}
