import type { WritableNumbers } from '../numeric/writableNumbers.ts';

/** One accepted step of an integration with its interpolant. */
export interface Step {
  readonly t0: number;
  readonly t1: number;
  /** Component of the state at any t in [t0, t1]. */
  readonly value: (component: number, t: number) => number;
  /** Writes components `first` … `end − 1` of the state at t into `y`, each at its own index. */
  readonly read: (t: number, first: number, end: number, y: WritableNumbers) => void;
  /** How far a component moves at most from its value at t0 within the step; infinity where that is not known. */
  readonly reach: (component: number) => number;
  /** The same step, ending earlier (or a rounding later) at t. */
  readonly until: (t: number) => Step;
}

/** A step of the Dormand–Prince method: a polynomial of degree 7 in θ = (t − from)/length for each component. */
export class PolynomialStep implements Step {
  readonly t0: number;
  readonly t1: number;
  /** Where θ is 0, and how far it is to θ = 1, s; they stay when the step is cut. */
  private readonly from: number;
  private readonly length: number;
  /** Components of the state. */
  private readonly size: number;
  /** From index `at`: eight rows of a coefficient for each component. Steps share a block of memory. */
  private readonly terms: Float64Array;
  private readonly at: number;

  constructor(
    t0: number,
    t1: number,
    from: number,
    length: number,
    size: number,
    terms: Float64Array,
    at: number,
  ) {
    this.t0 = t0;
    this.t1 = t1;
    this.from = from;
    this.length = length;
    this.size = size;
    this.terms = terms;
    this.at = at;
  }

  value(component: number, t: number): number {
    const n = this.size;
    const c = this.terms;
    const x = (t - this.from) / this.length;
    const r = 1 - x;
    const i = this.at + component;
    const high = c[4 * n + i]! + x * (c[5 * n + i]! + r * (c[6 * n + i]! + x * c[7 * n + i]!));
    return c[i]! + x * (c[n + i]! + r * (c[2 * n + i]! + x * (c[3 * n + i]! + r * high)));
  }

  read(t: number, first: number, end: number, y: WritableNumbers): void {
    const n = this.size;
    const c = this.terms;
    const x = (t - this.from) / this.length;
    const r = 1 - x;
    for (let component = first; component < end; component++) {
      const i = this.at + component;
      const high = c[4 * n + i]! + x * (c[5 * n + i]! + r * (c[6 * n + i]! + x * c[7 * n + i]!));
      y[component] = c[i]! + x * (c[n + i]! + r * (c[2 * n + i]! + x * (c[3 * n + i]! + r * high)));
    }
  }

  reach(component: number): number {
    const n = this.size;
    const c = this.terms;
    const i = this.at + component;
    // Largest value of each power of θ and 1 − θ that the coefficient stands with.
    const far =
      Math.abs(c[n + i]!) +
      Math.abs(c[2 * n + i]!) / 4 +
      (Math.abs(c[3 * n + i]!) * 4) / 27 +
      Math.abs(c[4 * n + i]!) / 16 +
      (Math.abs(c[5 * n + i]!) * 108) / 3125 +
      Math.abs(c[6 * n + i]!) / 64 +
      (Math.abs(c[7 * n + i]!) * 6912) / 823_543;
    return far * ROUNDING_ROOM;
  }

  until(t: number): Step {
    return new PolynomialStep(this.t0, t, this.from, this.length, this.size, this.terms, this.at);
  }
}

/** What rounding may add to a sum of seven numbers, with much room. */
const ROUNDING_ROOM = 1 + 1e-12;

/** A step without length: one state. */
export function momentaryStep(t: number, state: readonly number[]): Step {
  return stepOf(t, t, (component) => state[component]!);
}

/** A step that is known by a function of component and time. */
export function stepOf(t0: number, t1: number, value: Step['value']): Step {
  return {
    t0,
    t1,
    value,
    read: (t, first, end, y) => {
      for (let c = first; c < end; c++) y[c] = value(c, t);
    },
    reach: () => Number.POSITIVE_INFINITY,
    until: (t) => stepOf(t0, t, value),
  };
}
