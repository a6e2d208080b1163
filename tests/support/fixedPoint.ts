/** Bits behind the binary point: far more than the 53 of a number, so that rounding here is not seen there. */
const BITS = 1400n;
const ONE = 1n << BITS;

/** Number of exact units in the last place of a number that it is away from an exact value. */
export function ulpsFrom(exact: bigint, value: number): number {
  if (!Number.isFinite(value)) return Number.POSITIVE_INFINITY;
  const place = lastPlace(value);
  // Thousandths of a unit are enough to judge by, and fit a number.
  return Number(((exact - toFixed(value)) * 1000n) / toFixed(place)) / 1000;
}

/** The place of the last bit of a number: the distance to the next one away from zero. */
function lastPlace(value: number): number {
  const bits = new DataView(new ArrayBuffer(8));
  bits.setFloat64(0, Math.abs(value));
  bits.setBigUint64(0, bits.getBigUint64(0) + 1n);
  return bits.getFloat64(0) - Math.abs(value);
}

/** A finite number above 2^-1100, exactly. */
export function toFixed(value: number): bigint {
  let scaled = value;
  let shift = 0n;
  while (!Number.isInteger(scaled)) {
    scaled *= 2;
    shift++;
  }
  return (BigInt(scaled) << BITS) >> shift;
}

const times = (a: bigint, b: bigint) => (a * b) >> BITS;
const over = (a: bigint, b: bigint) => (a << BITS) / b;

/** Sum of terms until they vanish; `next` makes a term of the one before it and its index. */
function series(first: bigint, next: (term: bigint, n: bigint) => bigint): bigint {
  let sum = 0n;
  for (let term = first, n = 1n; term !== 0n && term !== -1n; term = next(term, n), n++) sum += term;
  return sum;
}

/** arctan(1/n) for the number π. */
function arctanOfInverse(n: bigint): bigint {
  let power = ONE / n;
  let sum = 0n;
  for (let k = 0n; power !== 0n; k++, power /= n * n) sum += (k % 2n === 0n ? power : -power) / (2n * k + 1n);
  return sum;
}

/** π, by Machin's formula. */
export const PI = 4n * (4n * arctanOfInverse(5n) - arctanOfInverse(239n));

/** Sine of an exact angle. */
export function sineOf(x: bigint): bigint {
  const r = x % (2n * PI);
  const square = times(r, r);
  return series(r, (term, n) => -times(term, square) / (2n * n * (2n * n + 1n)));
}

/** Cosine of an exact angle. */
export function cosineOf(x: bigint): bigint {
  return sineOf(x + PI / 2n);
}

/** e^x of an exact x. */
export function exponentialOf(x: bigint): bigint {
  if (x < 0n) return over(ONE, exponentialOf(-x));
  const halvings = 12n;
  const r = x >> halvings;
  let result = series(ONE, (term, n) => times(term, r) / n);
  for (let i = 0n; i < halvings; i++) result = times(result, result);
  return result;
}

/** Natural logarithm of an exact x > 0. */
export function logarithmOf(x: bigint): bigint {
  let m = x;
  let twos = 0n;
  for (; m > (3n * ONE) / 2n; twos++) m >>= 1n;
  for (; m < (3n * ONE) / 4n; twos--) m <<= 1n;
  return twos * artanhTwice(ONE, 3n * ONE) + artanhTwice(m - ONE, m + ONE);
}

/** 2·artanh(a/b). */
function artanhTwice(a: bigint, b: bigint): bigint {
  const s = over(a, b);
  const square = times(s, s);
  let power = s;
  let sum = 0n;
  for (let k = 1n; power !== 0n && power !== -1n; k += 2n, power = times(power, square)) sum += power / k;
  return 2n * sum;
}

/** The root of an exact x ≥ 0. */
export function rootOf(x: bigint): bigint {
  const target = x << BITS;
  let root = 1n << (BigInt(target.toString(2).length + 1) / 2n + 1n);
  for (;;) {
    const next = (root + target / root) >> 1n;
    if (next >= root) return root;
    root = next;
  }
}
