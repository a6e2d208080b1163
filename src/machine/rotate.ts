import { cosine, sine } from '../numeric/sineCosine.ts';
/**
 * Turns every (α, β) pair of a flat list by an angle: x·e^{j·angle}.
 * @param pairs [xα, xβ, …], even length
 * @param angle rad
 */
export function rotate(pairs: readonly number[], angle: number): number[] {
  const c = cosine(angle);
  const s = sine(angle);
  const turned = new Array<number>(pairs.length);
  for (let i = 0; i < pairs.length; i += 2) {
    turned[i] = pairs[i]! * c - pairs[i + 1]! * s;
    turned[i + 1] = pairs[i]! * s + pairs[i + 1]! * c;
  }
  return turned;
}
