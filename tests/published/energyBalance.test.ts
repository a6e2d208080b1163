/**
 * Energy balance of a plug stop to zero speed, Krause 50 hp, instant exchange at φ = 0, no load: terms computed with an independent
 * formulation (DOP853, 1e-10), to 0.01 J.
 */
import { describe, it } from 'vitest';
import { simulate } from '../../src/measure/simulate.ts';
import { run } from '../support/readings.ts';
import { exchangeAtOnce } from '../support/scenarios.ts';
import { KRAUSE } from '../support/textbookMachines.ts';
import { expectWithin } from '../support/tolerance.ts';

describe('the energy ledger of a run that ends at zero speed', () => {
  const zero = run(exchangeAtOnce(KRAUSE.hp50, 0, 1)).zeroSpeed();
  const { ledger } = simulate(exchangeAtOnce(KRAUSE.hp50, 0, zero));
  // The last digit given, plus 1e-9 of 84 kJ.
  const last = { absolute: 7e-3 };

  it('has the computed terms, each on its own', () => {
    expectWithin(ledger.electricalIn, 84264.36, last, 'electrical input');
    expectWithin(ledger.rotorLoss[0], 81069.41, last, 'rotor heat');
    expectWithin(ledger.statorLoss, 32370.87, last, 'stator heat');
    expectWithin(ledger.magneticChange, 370.96 - 20.97, { absolute: 0.012 }, 'change of magnetic energy');
    expectWithin(ledger.kineticChange, -29525.91, last, 'change of kinetic energy');
    expectWithin(ledger.airGapWork, -29525.91, last, 'air-gap work');
  });

  it('closes', () => {
    expectWithin(ledger.residual, 0, { absolute: 1e-8 }, 'residual');
  });
});
