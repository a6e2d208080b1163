/**
 * odex's continuous extension of a step: the Hermite cubic through both ends and, from the middle of the step, a polynomial
 * of degree imit that vanishes at the ends with its derivative. The same terms in the same order as the solver's own `contex`,
 * which a test holds it to, but without a power of the engine and without looking up the component.
 *
 * Source: Hairer, Nørsett, Wanner, Solving Ordinary Differential Equations I, II.9, and CONTEX of the program ODEX.
 *
 * @param coefficients the solver's `dens`: all components of the 1st coefficient, of the 2nd and so on
 * @param n number of components
 * @param xOld begin of the step
 * @param h its length
 * @param imit degree of the polynomial; below 0: none
 * @returns the value of a component at any x in the step
 */
export function interpolant(
  coefficients: readonly number[],
  n: number,
  xOld: number,
  h: number,
  imit: number,
): (component: number, x: number) => number {
  // Read many million times a run: no function inside, and the terms are addressed by hand.
  return (component, x) => {
    const theta = (x - xOld) / h;
    const rest = 1 - theta;
    const bend = coefficients[2 * n + component]! * theta + coefficients[3 * n + component]! * rest;
    const cubic = coefficients[component]! + theta * (coefficients[n + component]! + rest * bend);
    if (imit < 0) return cubic;
    const middle = theta - 0.5;
    let at = (imit + 4) * n + component;
    let sum = coefficients[at]!;
    for (let k = imit; k >= 1; k--) {
      at -= n;
      sum = coefficients[at]! + (sum * middle) / k;
    }
    const ends = theta * rest;
    return cubic + ends * ends * sum;
  };
}
