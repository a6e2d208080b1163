import { logarithm } from '../../numeric/logarithm.ts';
import { cosine, sine } from '../../numeric/sineCosine.ts';

/**
 * Independent draws of the standard normal distribution. Method: G. E. P. Box and M. E. Muller, Annals of
 * Mathematical Statistics 29 (1958) 610.
 *
 * @param uniform independent draws between 0 and 1, both excluded
 */
export function normalDraws(uniform: () => number): () => number {
  let spare: number | null = null;
  return () => {
    if (spare !== null) {
      const draw = spare;
      spare = null;
      return draw;
    }
    const length = Math.sqrt(-2 * logarithm(uniform()));
    const angle = 2 * Math.PI * uniform();
    spare = length * sine(angle);
    return length * cosine(angle);
  };
}
