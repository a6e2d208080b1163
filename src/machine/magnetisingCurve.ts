import { squared } from '../numeric/raised.ts';
import type { MagnetisingPoint } from '../scenario/scenario.ts';
import type { FluxBranch } from './fluxBranch.ts';

/** Tangents up to this multiple of both neighbouring secants keep a cubic piece rising (Fritsch and Carlson). */
const STEEPEST_TANGENT = 3;

/**
 * The main flux path: current over flux as a smooth, rising curve through the origin and the given points.
 *
 * Between points it is a cubic with the same tangent on either side of a point: the mean of the two secants, kept
 * within what keeps the curve rising. The first piece is straight, from the origin to the first point (it bends only
 * where the next secant is less than a third of its slope). The last tangent makes the last piece a parabola; from the
 * last point on the curve goes straight on along it. One point alone is a straight line.
 * Source: F. N. Fritsch, R. E. Carlson, Monotone piecewise cubic interpolation, SIAM J. Numer. Anal. 17 (1980) 238–246
 * (from memory), with current as a function of flux.
 *
 * @param points ascending in current and flux, all > 0, A and Wb crest; at least one
 */
export function magnetisingCurve(points: readonly MagnetisingPoint[]): FluxBranch {
  const flux = [0, ...points.map((point) => point.flux)];
  const current = [0, ...points.map((point) => point.current)];
  const last = points.length;
  const secant = points.map((_, k) => (current[k + 1]! - current[k]!) / (flux[k + 1]! - flux[k]!));
  const tangent = tangentsOf(secant);
  /** Coefficients of each piece in u = λ − λk: i = ik + u·(tk + u·(c2 + u·c3)). */
  const c2 = secant.map((s, k) => (3 * s - 2 * tangent[k]! - tangent[k + 1]!) / (flux[k + 1]! - flux[k]!));
  const c3 = secant.map((s, k) => (tangent[k]! + tangent[k + 1]! - 2 * s) / squared(flux[k + 1]! - flux[k]!));
  // Beyond the last point: a piece without curvature.
  c2.push(0);
  c3.push(0);
  const stored = [0];
  for (let k = 0; k < last; k++) stored.push(stored[k]! + storedIn(k, flux[k + 1]! - flux[k]!));

  function storedIn(k: number, u: number): number {
    return u * (current[k]! + u * (tangent[k]! / 2 + u * (c2[k]! / 3 + (u * c3[k]!) / 4)));
  }

  function pieceOf(value: number): number {
    let k = 0;
    while (k < last && value >= flux[k + 1]!) k++;
    return k;
  }

  return {
    slopeAtZero: tangent[0]!,
    current: (value) => {
      const k = pieceOf(value);
      const u = value - flux[k]!;
      return current[k]! + u * (tangent[k]! + u * (c2[k]! + u * c3[k]!));
    },
    slope: (value) => {
      const k = pieceOf(value);
      const u = value - flux[k]!;
      return tangent[k]! + u * (2 * c2[k]! + u * 3 * c3[k]!);
    },
    energy: (value) => {
      const k = pieceOf(value);
      return stored[k]! + storedIn(k, value - flux[k]!);
    },
  };
}

/** Slopes at the origin and at every point. */
function tangentsOf(secant: readonly number[]): number[] {
  const first = secant[0]!;
  const tangent = [first];
  for (let k = 1; k < secant.length; k++) {
    const [left, right] = [secant[k - 1]!, secant[k]!];
    const wanted = k === 1 ? first : (left + right) / 2;
    tangent.push(Math.min(wanted, STEEPEST_TANGENT * Math.min(left, right)));
  }
  const end = secant.at(-1)!;
  const parabolic = 2 * end - tangent.at(-1)!;
  tangent.push(secant.length === 1 ? end : Math.max(parabolic, end));
  return tangent;
}
