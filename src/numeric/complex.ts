import { hypotenuse } from './hypotenuse.ts';
import { cosine, sine } from './sineCosine.ts';
/** A complex number as a pair [real, imaginary], in the unit of what it stands for. */
export type Complex = readonly [number, number];

/** x + y */
export function add(x: Complex, y: Complex): Complex {
  return [x[0] + y[0], x[1] + y[1]];
}

/** x − y */
export function subtract(x: Complex, y: Complex): Complex {
  return [x[0] - y[0], x[1] - y[1]];
}

/** x · y */
export function multiply(x: Complex, y: Complex): Complex {
  return [x[0] * y[0] - x[1] * y[1], x[0] * y[1] + x[1] * y[0]];
}

/** x / y */
export function divide(x: Complex, y: Complex): Complex {
  const norm = y[0] * y[0] + y[1] * y[1];
  return [(x[0] * y[0] + x[1] * y[1]) / norm, (x[1] * y[0] - x[0] * y[1]) / norm];
}

/** |x| */
export function magnitude(x: Complex): number {
  return hypotenuse(x[0], x[1]);
}

/** x · e^{j·angle} */
export function turn(x: Complex, angle: number): Complex {
  return multiply(x, [cosine(angle), sine(angle)]);
}
