/** Types for the untyped package `ode45-cash-karp` 1.1.0, as far as it is used here (from its README and source). */
declare module 'ode45-cash-karp' {
  interface Options {
    /** A step is accepted when the reduced, scaled error is below this; default 1e-8. */
    tol?: number;
    /** Divisor of the error of component i; called once per step. */
    errorScaleFunction?: (i: number, dt: number, y: number, dydt: number) => number;
    verbose?: boolean;
  }

  interface Integrator {
    /** Current state, advanced in place. */
    y: Float64Array;
    t: number;
    /** Next step to try; adapted after every step. */
    dt: number;
    /** One accepted step, not beyond tLimit; false when tLimit has been reached. */
    step(tLimit?: number): boolean;
  }

  function createIntegrator(
    y0: Float64Array,
    derivative: (dydt: Float64Array, y: Float64Array, t: number) => void,
    t0: number,
    dt0: number,
    options?: Options,
  ): Integrator;

  export = createIntegrator;
}
