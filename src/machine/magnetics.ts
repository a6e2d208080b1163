import type { Circuit } from './circuit.ts';
import type { FluxBranch } from './fluxBranch.ts';

/**
 * How the stator takes part: with both axes, along β only (the current along α is zero), or not at all.
 */
export type StatorPart = 'both' | 'beta' | 'open';

/** Main flux and winding currents that belong to given flux linkages, in buffers that every solution overwrites. */
export interface Magnetics {
  /** Stator, cages, core. */
  readonly windings: number;
  /** Flux linkages to solve for, [D, Q] per winding, Wb; written by the caller. Parts of the stator without current do not count. */
  readonly psi: Float64Array;
  /** Winding currents, [D, Q] per winding, A. */
  readonly current: Float64Array;
  /** Main flux, [D, Q], Wb. */
  readonly main: Float64Array;
  /** Finds `main` and `current` for `psi`. @returns Newton steps taken */
  solve(): number;
  /**
   * Time derivatives at the last solution by the implicit function theorem: of the main flux and, into `currentRate`, of
   * the currents.
   * @param psiRate of `psi`, same layout, V
   */
  differentiate(psiRate: Float64Array, mainRate: Float64Array, currentRate: Float64Array): void;
  /** Stored energy at the last solution, J. */
  energy(): number;
}

/** Residual at which rounding takes over, in units of the currents whose sum it is, were every flux as large as the largest. */
const ROUNDING = Number.EPSILON;
/** Below this the residual may stop falling by rounding alone; above, a step that does not lessen it is halved. */
const NEARLY_ROUNDING = 1e-11;
/** A damped Newton's method on a convex energy needs a handful; a limit that only values that are no numbers reach. */
const MOST_STEPS = 60;
const MOST_HALVINGS = 30;

/**
 * The magnetic circuit: every winding has its own leakage path from its flux linkage to the main flux, and the main flux
 * ψm is where the stored energy Σ Wk(ψk − ψm) + Wm(ψm) is least. The energy is convex, so that there is one such point;
 * its gradient is im(ψm) − Σ ik. Newton's method in both axes with the exact Jacobian, from the linear solution each
 * time (no memory: the same fluxes give the same bits), the step halved while the gradient does not fall.
 */
export function magneticsOf(circuit: Circuit, stator: StatorPart): Magnetics {
  const { gs, gm, gr, cageCount, core, saturation } = circuit;
  const windings = 1 + cageCount + (core ? 1 : 0);
  const first = stator === 'open' ? 1 : 0;
  const beta = stator === 'beta';
  /** Inverse inductances and saturable branches in the order of the windings. */
  const g = Float64Array.from([gs, ...gr, ...(core ? [core.g] : [])]);
  const law: (FluxBranch | null)[] = [
    saturation?.stator ?? null,
    ...gr.map((_, j) => saturation?.cages[j] ?? null),
    ...(core ? [null] : []),
  ];
  const mainLaw = saturation?.main ?? null;
  const gMain = mainLaw ? mainLaw.slopeAtZero : gm;

  const psi = new Float64Array(2 * windings);
  const current = new Float64Array(2 * windings);
  const main = new Float64Array(2);
  /** Incremental inverse inductance of each winding, [DD, DQ, QQ], 1/H. */
  const slope = new Float64Array(3 * windings);
  /** Gradient D, Q and Jacobian DD, DQ, QQ of the whole at `main`. */
  const whole = new Float64Array(5);
  let sumD = 0;
  let sumQ = 0;
  let sumAlpha = gMain;
  let sumBeta = gMain;
  for (let k = first; k < windings; k++) {
    if (!(beta && k === 0)) sumAlpha += g[k]!;
    sumBeta += g[k]!;
  }

  /** Currents, their slopes, gradient and Jacobian at `main`. */
  function evaluate(): void {
    const mD = main[0]!;
    const mQ = main[1]!;
    let iD = gMain * mD;
    let iQ = gMain * mQ;
    let dd = gMain;
    let dq = 0;
    let qq = gMain;
    if (mainLaw !== null) {
      const square = mD * mD + mQ * mQ;
      if (square > 0) {
        const flux = Math.sqrt(square);
        const i = mainLaw.current(flux);
        const secant = i / flux;
        const across = (mainLaw.slope(flux, i) - secant) / square;
        iD = secant * mD;
        iQ = secant * mQ;
        dd = secant + across * mD * mD;
        dq = across * mD * mQ;
        qq = secant + across * mQ * mQ;
      }
    }
    for (let k = first; k < windings; k++) {
      const lD = beta && k === 0 ? 0 : psi[2 * k]! - mD;
      const lQ = psi[2 * k + 1]! - mQ;
      const branch = law[k]!;
      let secant = g[k]!;
      let across = 0;
      if (branch !== null) {
        const square = lD * lD + lQ * lQ;
        if (square > 0) {
          const flux = Math.sqrt(square);
          const i = branch.current(flux);
          secant = i / flux;
          across = (branch.slope(flux, i) - secant) / square;
        }
      }
      const kD = secant * lD;
      const kQ = secant * lQ;
      const kDD = beta && k === 0 ? 0 : secant + across * lD * lD;
      const kDQ = across * lD * lQ;
      const kQQ = secant + across * lQ * lQ;
      current[2 * k] = kD;
      current[2 * k + 1] = kQ;
      slope[3 * k] = kDD;
      slope[3 * k + 1] = kDQ;
      slope[3 * k + 2] = kQQ;
      iD -= kD;
      iQ -= kQ;
      dd += kDD;
      dq += kDQ;
      qq += kQQ;
    }
    whole[0] = iD;
    whole[1] = iQ;
    whole[2] = dd;
    whole[3] = dq;
    whole[4] = qq;
  }

  function solve(): number {
    sumD = 0;
    sumQ = 0;
    let largest = 0;
    for (let k = first; k < windings; k++) {
      const d = beta && k === 0 ? 0 : psi[2 * k]!;
      const q = psi[2 * k + 1]!;
      sumD += g[k]! * d;
      sumQ += g[k]! * q;
      largest = Math.max(largest, Math.abs(d), Math.abs(q));
    }
    main[0] = sumD / sumAlpha;
    main[1] = sumQ / sumBeta;
    evaluate();
    if (saturation === null) return 0;
    let residual = Math.abs(whole[0]!) + Math.abs(whole[1]!);
    let steps = 0;
    while (steps < MOST_STEPS) {
      const dd = whole[2]!;
      const dq = whole[3]!;
      const qq = whole[4]!;
      const scale = (dd + qq) * largest;
      if (!(residual > ROUNDING * scale)) break;
      steps++;
      const determinant = dd * qq - dq * dq;
      const stepD = (dq * whole[1]! - qq * whole[0]!) / determinant;
      const stepQ = (dq * whole[0]! - dd * whole[1]!) / determinant;
      const fromD: number = main[0]!;
      const fromQ: number = main[1]!;
      let share = 1;
      let next = residual;
      for (let n = 0; n <= MOST_HALVINGS; n++) {
        main[0] = fromD + share * stepD;
        main[1] = fromQ + share * stepQ;
        evaluate();
        next = Math.abs(whole[0]!) + Math.abs(whole[1]!);
        if (next < residual || residual < NEARLY_ROUNDING * scale) break;
        share /= 2;
      }
      if (!(next < residual)) break;
      residual = next;
    }
    return steps;
  }

  function differentiate(psiRate: Float64Array, mainRate: Float64Array, currentRate: Float64Array): void {
    let rD = 0;
    let rQ = 0;
    for (let k = first; k < windings; k++) {
      const d = psiRate[2 * k]!;
      const q = psiRate[2 * k + 1]!;
      rD += slope[3 * k]! * d + slope[3 * k + 1]! * q;
      rQ += slope[3 * k + 1]! * d + slope[3 * k + 2]! * q;
    }
    const dd = whole[2]!;
    const dq = whole[3]!;
    const qq = whole[4]!;
    const determinant = dd * qq - dq * dq;
    const mD = (qq * rD - dq * rQ) / determinant;
    const mQ = (dd * rQ - dq * rD) / determinant;
    mainRate[0] = mD;
    mainRate[1] = mQ;
    for (let k = first; k < windings; k++) {
      const d = psiRate[2 * k]! - mD;
      const q = psiRate[2 * k + 1]! - mQ;
      currentRate[2 * k] = slope[3 * k]! * d + slope[3 * k + 1]! * q;
      currentRate[2 * k + 1] = slope[3 * k + 1]! * d + slope[3 * k + 2]! * q;
    }
  }

  /** Three phases: 3/2 of the vector energy. */
  function energy(): number {
    const main2 = main[0]! * main[0]! + main[1]! * main[1]!;
    let total = 0.5 * gMain * main2;
    if (mainLaw !== null) {
      const flux = Math.sqrt(main2);
      total = mainLaw.energy(flux, mainLaw.current(flux));
    }
    for (let k = first; k < windings; k++) {
      const iSquare = current[2 * k]! * current[2 * k]! + current[2 * k + 1]! * current[2 * k + 1]!;
      const branch = law[k]!;
      if (branch === null) total += (0.5 * iSquare) / g[k]!;
      else {
        const lD = beta && k === 0 ? 0 : psi[2 * k]! - main[0]!;
        const lQ = psi[2 * k + 1]! - main[1]!;
        total += branch.energy(Math.sqrt(lD * lD + lQ * lQ), Math.sqrt(iSquare));
      }
    }
    return 1.5 * total;
  }

  return { windings, psi, current, main, solve, differentiate, energy };
}
