import { describe, it } from 'vitest';
import { openCircuitTime } from '../../../src/machine/openCircuitTime.ts';
import { DOUBLE_CAGE, KRAUSE } from '../../support/textbookMachines.ts';
import { expectWithin } from '../../support/tolerance.ts';

describe('the open-circuit time constant', () => {
  it('of the textbook machines is (Llr + Lm)/Rr, 0.08739 s and 0.15569 s', () => {
    // Computed values of the circuits of Krause et al., four digits.
    expectWithin(openCircuitTime(KRAUSE.hp3.machine), 0.08739, { absolute: 5e-6 }, '3 hp');
    expectWithin(openCircuitTime(KRAUSE.hp50.machine), 0.15569, { absolute: 5e-6 }, '50 hp');
  });

  it('of two cages solves det(L − τ·R) = 0 with the larger root', () => {
    const { Lm, cages } = DOUBLE_CAGE.machine;
    const [a, b] = cages;
    const tau = openCircuitTime(DOUBLE_CAGE.machine);
    const determinant = (t: number) => ((Lm + a!.Llr - t * a!.Rr) * (Lm + b!.Llr - t * b!.Rr)) / Lm ** 2 - 1;
    expectWithin(determinant(tau), 0, { absolute: 1e-9 }, 'determinant');
    // Beyond the larger root the determinant stays positive: both factors are negative there.
    if (!(determinant(2 * tau) > 0 && Lm + a!.Llr - 2 * tau * a!.Rr < 0))
      throw new Error('not the larger root');
  });

  it('of two equal cages is that of one with half the resistance and half the leakage', () => {
    const pair = {
      Lm: 0.1,
      cages: [
        { Rr: 0.4, Llr: 0.004 },
        { Rr: 0.4, Llr: 0.004 },
      ],
    };
    const one = { Lm: 0.1, cages: [{ Rr: 0.2, Llr: 0.002 }] };
    expectWithin(openCircuitTime(pair), openCircuitTime(one), { relative: 1e-12 }, 'pair');
  });
});
