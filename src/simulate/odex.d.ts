/**
 * Types of the part of odex 3.0.0-rc.4 that the adapter uses. The package ships its TypeScript source instead of
 * declarations, which would be checked under this project's flags; package.json maps `#odex` to this file.
 */
export interface SolutionSegment {
  readonly x0: number;
  readonly x1: number;
  readonly y: number[];
  /** Value of a component inside [x0, x1]; keeps its own copy of the coefficients. */
  readonly f: (component: number, x: number) => number;
}

export interface Options {
  relativeTolerance: number | number[];
  absoluteTolerance: number | number[];
  rawFunction: boolean;
  denseOutput: boolean;
  maxSteps: number;
  maxStepSize: number;
  initialStepSize: number;
  maxExtrapolationColumns: number;
  interpolationFormulaDegree: number;
}

export class Solver {
  constructor(
    f: (x: number, y: number[], yp: number[]) => number[] | undefined,
    n: number,
    options?: Partial<Options>,
  );
  solutionSegments(x: number, y0: number[], xEnd?: number): Generator<SolutionSegment, undefined>;
  /** Interpolant of the step that begins at xOld and is h long, from `dens`; imit says which formula `dens` is for. */
  contex: (xOld: number, h: number, imit: number) => (component: number, x: number) => number;
  /** Coefficients of the last accepted step's interpolant, for all components one after the other. */
  readonly dens: readonly number[];
  /** Step size that each extrapolation column proposes; entries are missing until their column has been used. */
  readonly hh: number[];
}
