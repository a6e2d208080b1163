import type { WritableNumbers } from './writableNumbers.ts';

/**
 * Sine and cosine from + − * alone. The engines' own differ in the last bit from one version to the next, and step size
 * control carries such a bit into the fifth digit; these give the same bits wherever numbers follow IEEE 754.
 *
 * Method: the nearest multiple of π/2 is taken off in three parts (Cody and Waite, Software Manual for the Elementary
 * Functions, 1980), what the subtraction loses is kept as a second, small term, and the rest, at most π/4, goes into
 * Taylor's series. Error: 1 unit in the last place up to ±1.6e6 rad, 1e-15 absolute from there to ±1e15 rad.
 */

/** π/2 = FIRST + SECOND + THIRD to 2^-121. The first two have 33 bits, so that 2^20 times them is exact. */
const FIRST = 1.5707963267341256;
/** See FIRST. */
const SECOND = 6.077100506303966e-11;
/** See FIRST; the rest of π/2 to 53 bits. */
const THIRD = 2.0222662487959506e-21;
/** 1/rad; how many quarters of a turn a radian is. */
const QUARTERS_PER_RADIAN = 2 / Math.PI;
/** rad; π/4, up to which the series are used as they are. */
const EIGHTH = Math.PI / 4;
/** rad; below this an angle is its sine to the last place, and keeps the sign of its zero. */
const TINY = 1e-8;
/** rad; 2^20 quarters of a turn: up to here their number times FIRST is exact. */
const EXACT_UP_TO = 1_048_576 / QUARTERS_PER_RADIAN;
/** rad; a turn is this and TURN_REST. */
const TURN = 2 * Math.PI;
/** rad; 4 · 6.123233995736766e-17, what the double π/2 leaves of π/2. */
const TURN_REST = 2.4492935982947064e-16;

/** Coefficients of Taylor's series, 1/n!; up to π/4 the first one left out is below 1e-19 of the result. */
const S3 = -1 / 6;
const S5 = 1 / 120;
const S7 = -1 / 5040;
const S9 = 1 / 362_880;
const S11 = -1 / 39_916_800;
const S13 = 1 / 6_227_020_800;
const S15 = -1 / 1_307_674_368_000;
const S17 = 1 / 355_687_428_096_000;
const C4 = 1 / 24;
const C6 = -1 / 720;
const C8 = 1 / 40_320;
const C10 = -1 / 3_628_800;
const C12 = 1 / 479_001_600;
const C14 = -1 / 87_178_291_200;
const C16 = 1 / 20_922_789_888_000;

/**
 * Sine.
 * @param x rad
 */
export function sine(x: number): number {
  const size = Math.abs(x);
  if (size < TINY) return x;
  return size <= EIGHTH ? sineNear(x, 0) : turned(x, 0);
}

/**
 * Cosine.
 * @param x rad
 */
export function cosine(x: number): number {
  return Math.abs(x) <= EIGHTH ? cosineNear(x, 0) : turned(x, 1);
}

/**
 * Both at once, the same to the last bit, in little more time than one.
 *
 * @param x rad
 * @param out sine, then cosine
 */
export function sineAndCosine(x: number, out: WritableNumbers): void {
  if (Math.abs(x) <= EIGHTH) {
    out[0] = sine(x);
    out[1] = cosineNear(x, 0);
    return;
  }
  const angle = Math.abs(x) < EXACT_UP_TO ? x : withinTurn(x);
  const k = Math.round(angle * QUARTERS_PER_RADIAN);
  const near = angle - k * FIRST;
  const part = k * SECOND;
  const difference = near - part;
  const lost = near - difference - part - k * THIRD;
  const r = difference + lost;
  const tail = difference - r + lost;
  const s = sineNear(r, tail);
  const c = cosineNear(r, tail);
  const quarter = k & 3;
  out[0] = quarter === 0 ? s : quarter === 1 ? c : quarter === 2 ? -s : -c;
  out[1] = quarter === 0 ? c : quarter === 1 ? -s : quarter === 2 ? -c : s;
}

/** Sine of an angle to which some quarters of a turn are added. */
function turned(angle: number, quarters: number): number {
  const x = Math.abs(angle) < EXACT_UP_TO ? angle : withinTurn(angle);
  const k = Math.round(x * QUARTERS_PER_RADIAN);
  // x − k·FIRST and k·SECOND are exact; what their difference loses is in `lost`.
  const near = x - k * FIRST;
  const part = k * SECOND;
  const difference = near - part;
  const lost = near - difference - part - k * THIRD;
  const r = difference + lost;
  const tail = difference - r + lost;
  switch ((k + quarters) & 3) {
    case 0:
      return sineNear(r, tail);
    case 1:
      return cosineNear(r, tail);
    case 2:
      return -sineNear(r, tail);
    default:
      return -cosineNear(r, tail);
  }
}

/** The angle less whole turns: the remainder by the double 2π is exact, and what that double lacks is taken off after it. */
function withinTurn(angle: number): number {
  const remainder = angle % TURN;
  const correction = Math.round((angle - remainder) / TURN) * TURN_REST;
  return remainder - (correction % TURN);
}

/** Sine of r + tail, |r| ≤ π/4 and a tail that is small against the last place of r. */
function sineNear(r: number, tail: number): number {
  const z = r * r;
  const z2 = z * z;
  const series = S3 + z * S5 + z2 * (S7 + z * S9 + z2 * (S11 + z * S13 + z2 * (S15 + z * S17)));
  return r + (r * z * series + tail * (1 - 0.5 * z));
}

/** Cosine of r + tail, likewise. 1 − z/2 loses a bit that is added again. */
function cosineNear(r: number, tail: number): number {
  const z = r * r;
  const half = 0.5 * z;
  const first = 1 - half;
  const z2 = z * z;
  const series = C4 + z * C6 + z2 * (C8 + z * C10 + z2 * (C12 + z * C14 + z2 * C16));
  return first + (1 - first - half + (z2 * series - r * tail));
}
