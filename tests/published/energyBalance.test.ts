/**
 * Energy balance of a plug stop to zero speed, Krause 50 hp, instant exchange at φ = 0, no load: terms computed with an independent
 * formulation (DOP853, 1e-10), to 0.01 J.
 */
import { describe, it } from 'vitest';
import { simulate } from '../../src/measure/simulate.ts';
import { publishedSource } from '../support/published.ts';
import { run } from '../support/readings.ts';
import { exchangeAtOnce } from '../support/scenarios.ts';
import { KRAUSE } from '../support/textbookMachines.ts';
import { expectWithin } from '../support/tolerance.ts';

const { compare, listedInGuide } = publishedSource(
  'energyBalance',
  'The terms of the energy balance of a plug stop from synchronous speed to standstill (50 hp machine of Krause et al., phases exchanged ' +
    'at once at the worst angle, no load), computed by a separate program with equations of its own; that ' +
    'ours add up is demanded to 10⁻⁸ J.',
  'computed independently',
);

describe('the energy ledger of a run that ends at zero speed', () => {
  const zero = run(exchangeAtOnce(KRAUSE.hp50, 0, 1)).zeroSpeed();
  const { ledger } = simulate(exchangeAtOnce(KRAUSE.hp50, 0, zero));
  // The last digit given, plus 1e-9 of 84 kJ.
  const last = { absolute: 7e-3 };

  it('has the computed terms, each on its own', () => {
    compare(ledger.electricalIn, 84264.36, last, 'energy taken from the supply', 'J');
    compare(ledger.rotorLoss[0], 81069.41, last, 'heat in the rotor', 'J');
    compare(ledger.statorLoss, 32370.87, last, 'heat in the stator', 'J');
    compare(
      ledger.magneticChange,
      370.96 - 20.97,
      { absolute: 0.012 },
      'change of the energy in the magnetic field',
      'J',
    );
    compare(ledger.kineticChange, -29525.91, last, 'change of the kinetic energy', 'J');
    compare(ledger.airGapWork, -29525.91, last, 'work of the air-gap torque on the shaft', 'J');
  });

  it('closes', () => {
    expectWithin(ledger.residual, 0, { absolute: 1e-8 }, 'residual');
  });
});

listedInGuide();
