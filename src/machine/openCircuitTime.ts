import { squared } from '../numeric/raised.ts';
import type { MachineData } from '../scenario/scenario.ts';

/**
 * Slowest time constant with which the rotor flux decays while no pole conducts, s: (Llr + Lm)/Rr of a single cage; of two
 * cages the larger eigenvalue of R⁻¹·L. Resistors at the slip rings, saturation and iron loss left out: the decay is then faster.
 */
export function openCircuitTime({ Lm, cages }: Pick<MachineData, 'Lm' | 'cages'>): number {
  const [first, second] = cages;
  if (first === undefined) throw new Error('a machine has at least one cage');
  const t1 = (first.Llr + Lm) / first.Rr;
  if (second === undefined) return t1;
  const t2 = (second.Llr + Lm) / second.Rr;
  const product = t1 * t2 - squared(Lm) / (first.Rr * second.Rr);
  const half = (t1 + t2) / 2;
  return half + Math.sqrt(squared(half) - product);
}
