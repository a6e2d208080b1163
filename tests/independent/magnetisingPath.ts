import { shrinkBracket } from './rootFinder.ts';
import type { CurvePoint } from './scenarioShape.ts';

/** The main flux path read from the side of the current: flux, slope and stored energy, magnitudes of space vectors. */
export interface MagnetisingPath {
  /** Slope dψ/di at zero, H. */
  readonly initial: number;
  /** ψ, Wb, and dψ/di, H, at a current ≥ 0 A, into `out`. */
  read(current: number, out: { flux: number; slope: number }): void;
  /** ∫ i dψ, A·Wb, up to a flux. */
  stored(flux: number): number;
}

/** A path that does not saturate. */
export function straightPath(inductance: number): MagnetisingPath {
  return {
    initial: inductance,
    read(current, out) {
      out.flux = inductance * current;
      out.slope = inductance;
    },
    stored: (flux) => (flux * flux) / (2 * inductance),
  };
}

/** Fritsch and Carlson: a cubic between two points rises as long as neither tangent exceeds three secants. */
const STEEPEST = 3;

/** Share of a piece to which the place of a current on it is found. */
const PLACE = 1e-15;

/**
 * A curve through points, current as a monotone cubic of the flux. First piece straight from the origin; tangents at
 * inner points the mean of both secants; the last piece a parabola; beyond it straight on.
 */
export function curvedPath(points: readonly CurvePoint[]): MagnetisingPath {
  const psi = [0, ...points.map((point) => point.flux)];
  const amp = [0, ...points.map((point) => point.current)];
  const n = points.length;
  const secant = points.map((_, k) => (amp[k + 1]! - amp[k]!) / (psi[k + 1]! - psi[k]!));
  const tangent: number[] = [secant[0]!];
  for (let k = 1; k < n; k++) {
    const left = secant[k - 1]!;
    const right = secant[k]!;
    const mean = k === 1 ? left : 0.5 * (left + right);
    tangent.push(Math.min(mean, STEEPEST * left, STEEPEST * right));
  }
  const end = secant[n - 1]!;
  tangent.push(n === 1 ? end : Math.max(end, 2 * end - tangent[n - 1]!));

  /** Current at the share x of piece k, in Hermite's basis. */
  function currentAt(k: number, x: number): number {
    const h = psi[k + 1]! - psi[k]!;
    const rest = 1 - x;
    return (
      amp[k]! * (1 + 2 * x) * rest * rest +
      amp[k + 1]! * x * x * (3 - 2 * x) +
      h * x * rest * (tangent[k]! * rest - tangent[k + 1]! * x)
    );
  }

  /** di/dψ at the share x of piece k. */
  function steepness(k: number, x: number): number {
    const rest = 1 - x;
    return 6 * x * rest * secant[k]! + tangent[k]! * rest * (1 - 3 * x) + tangent[k + 1]! * x * (3 * x - 2);
  }

  /** Newton's steps inside a shrinking bracket. */
  function place(k: number, current: number): number {
    let low = 0;
    let high = 1;
    let x = (current - amp[k]!) / (amp[k + 1]! - amp[k]!);
    const h = psi[k + 1]! - psi[k]!;
    for (let step = 0; step < 100; step++) {
      const error = currentAt(k, x) - current;
      if (error > 0) high = x;
      else low = x;
      const newton = x - error / (h * steepness(k, x));
      if (Math.abs(newton - x) <= PLACE) return newton;
      x = newton > low && newton < high ? newton : 0.5 * (low + high);
    }
    return x;
  }

  /** ∫ i dψ from the start of piece k to its share x; Simpson's rule is exact for a cubic. */
  function piece(k: number, x: number): number {
    const h = (psi[k + 1]! - psi[k]!) * x;
    return (h / 6) * (amp[k]! + 4 * currentAt(k, x / 2) + currentAt(k, x));
  }

  return {
    initial: 1 / tangent[0]!,
    read(current, out) {
      let k = 0;
      while (k < n && current > amp[k + 1]!) k++;
      if (k === n) {
        out.slope = 1 / tangent[n]!;
        out.flux = psi[n]! + (current - amp[n]!) * out.slope;
        return;
      }
      const x = place(k, current);
      out.flux = psi[k]! + x * (psi[k + 1]! - psi[k]!);
      out.slope = 1 / steepness(k, x);
    },
    stored(flux) {
      let sum = 0;
      for (let k = 0; k < n; k++) {
        if (flux <= psi[k + 1]!) return sum + piece(k, (flux - psi[k]!) / (psi[k + 1]! - psi[k]!));
        sum += piece(k, 1);
      }
      const beyond = flux - psi[n]!;
      return sum + beyond * (amp[n]! + 0.5 * tangent[n]! * beyond);
    },
  };
}

/** Current that belongs to a flux, by bracketing: for steady states and tests only. */
export function currentFor(path: MagnetisingPath, flux: number): number {
  const out = { flux: 0, slope: 0 };
  const excess = (current: number) => {
    path.read(current, out);
    return out.flux - flux;
  };
  let high = flux / path.initial;
  while (excess(high) < 0) high *= 2;
  return shrinkBracket(excess, 0, -flux, high, excess(high), PLACE * high);
}
