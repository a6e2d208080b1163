import { raised } from '../../numeric/raised.ts';
/** What came of one trial. */
export interface Trial {
  readonly passes: boolean;
  /** What does not pass, in words, the worst first; empty where all passes. */
  readonly failing: readonly string[];
}

/** The value up to which all trials pass. */
export interface Boundary {
  /** found: `value` is the last that passes; everything: also the farthest tried passes; nothing: none tried passes. */
  readonly kind: 'found' | 'everything' | 'nothing';
  /** The last value that passes, in the unit of the question; null where nothing does. */
  readonly value: number | null;
  /** The first value tried that does not pass, in the same unit; null where everything does. */
  readonly beyond: number | null;
  /** What fails there. */
  readonly binding: readonly string[];
  /** Number of values tried. */
  readonly trials: number;
}

/** What is looked for. */
export interface BoundaryQuestion {
  /** Values to begin with; the search goes from `from` towards `to` and expects that what passes lies on the side of `from`. */
  readonly from: number;
  readonly to: number;
  /** Steps between them in the first scan. */
  readonly steps: number;
  /** Relative width of the bracket at which the search ends. */
  readonly width: number;
}

/**
 * The last value on the way from `from` to `to` that passes: a scan in equal ratios, then bisection of the first step that goes
 * from passing to failing. Where `from` itself fails the scan looks for the first that passes and goes on from there, so that a
 * range of values that pass is found from its near end.
 *
 * @param question positive values
 * @param trial may be costly; it is asked once for each value
 */
export function boundary(question: BoundaryQuestion, trial: (value: number) => Trial): Boundary {
  const { from, to, steps, width } = question;
  const at = (i: number) => from * raised(to / from, i / steps);
  let trials = 0;
  const ask = (value: number) => {
    trials++;
    return trial(value);
  };
  let good: number | null = null;
  let bad: Failure | null = null;
  for (let i = 0; i <= steps; i++) {
    const value = i === steps ? to : at(i);
    const { passes, failing } = ask(value);
    if (passes) good = value;
    else if (good === null) bad ??= { value, failing };
    else {
      bad = { value, failing };
      break;
    }
    if (passes && bad !== null) bad = null;
  }
  if (good === null)
    return { kind: 'nothing', value: null, beyond: bad?.value ?? from, binding: bad?.failing ?? [], trials };
  if (bad === null) return { kind: 'everything', value: good, beyond: null, binding: [], trials };
  const found = between(good, bad, width, ask);
  return { ...found, trials };
}

/**
 * The first value on the way from `from` to `to` that passes: a scan in equal ratios that ends where one passes, then bisection of the
 * step before it. `beyond` is the last value before it that does not pass.
 *
 * @param question positive values
 * @param trial may be costly; it is asked once for each value
 */
export function onset(question: BoundaryQuestion, trial: (value: number) => Trial): Boundary {
  const { from, to, steps, width } = question;
  let trials = 0;
  const ask = (value: number) => {
    trials++;
    return trial(value);
  };
  let bad: Failure | null = null;
  for (let i = 0; i <= steps; i++) {
    const value = i === steps ? to : from * raised(to / from, i / steps);
    const { passes, failing } = ask(value);
    if (!passes) bad = { value, failing };
    else if (bad === null) return { kind: 'everything', value, beyond: null, binding: [], trials };
    else {
      const found = between(value, bad, width, ask);
      return { ...found, trials };
    }
  }
  return { kind: 'nothing', value: null, beyond: bad?.value ?? to, binding: bad?.failing ?? [], trials };
}

/** A value that does not pass, and why. */
interface Failure {
  readonly value: number;
  readonly failing: readonly string[];
}

/** Halves the ratio between a value that passes and one that does not until it is narrow enough; counts no trials. */
function between(
  passing: number,
  failing: Failure,
  width: number,
  ask: (value: number) => Trial,
): Omit<Boundary, 'trials'> {
  let good = passing;
  let bad = failing;
  while (Math.abs(bad.value - good) > width * Math.abs(good)) {
    const value = Math.sqrt(good * bad.value);
    const tried = ask(value);
    if (tried.passes) good = value;
    else bad = { value, failing: tried.failing };
  }
  return { kind: 'found', value: good, beyond: bad.value, binding: bad.failing };
}
