/** The power balance of the shaft, in every mode, for states drawn at random. */
import fc from 'fast-check';
import { describe, it } from 'vitest';
import { initialShaft } from '../../../src/shaft/initialShaft.ts';
import { newShaftObservation, observeShaft } from '../../../src/shaft/observeShaft.ts';
import type { ShaftMode } from '../../../src/shaft/shaftMode.ts';
import { shaftRates } from '../../../src/shaft/shaftRates.ts';
import { expectWithin } from '../../support/tolerance.ts';
import { shaftWith } from './driveShaft.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const sign = fc.constantFrom(-1 as const, 1 as const);
const torques = [
  { kind: 'friction', torque: 3, breakaway: 5 },
  { kind: 'viscous', coefficient: 0.1 },
  { kind: 'fan', coefficient: 0.02 },
  { kind: 'gravity', torque: -7 },
  { kind: 'constantPower', power: 300, baseSpeed: 20 },
  {
    kind: 'table',
    mirrored: false,
    points: [
      { speed: -30, torque: -4 },
      { speed: 60, torque: 9 },
    ],
  },
] as const;
const gears = fc.option(
  fc.record({ ratio: between(0.2, 40), efficiency: between(0.3, 1), backwardEfficiency: between(0.3, 1) }),
  { nil: undefined },
);
const motor = { inertia: 0.3, loss: { friction: 0.4, windage: 1e-4 } };

/** Speed of a mass with its mode: held at rest, or turning in its direction. */
const mass = fc
  .tuple(fc.boolean(), sign, between(0.5, 300))
  .map(([held, direction, speed]) =>
    held
      ? { speed: 0, mode: { direction: 0 as const, held } }
      : { speed: direction * speed, mode: { direction, held } },
  );

function expectBalance(shaft: ReturnType<typeof shaftWith>, mode: ShaftMode, y: number[], torque: number) {
  const out = newShaftObservation();
  observeShaft(shaft, mode, y, 0, torque, out);
  const dydt = y.map(() => 0);
  shaftRates(shaft, mode)(y, 0, torque, dydt);
  const rates =
    shaft.coupling === null
      ? [shaft.inertia * y[0]! * dydt[0]!]
      : [
          shaft.motorInertia * y[0]! * dydt[0]!,
          shaft.loadInertia * y[2]! * dydt[2]!,
          shaft.coupling.stiffness *
            (mode.flank === 0 ? 0 : y[3]! - (mode.flank * shaft.coupling.backlash) / 2) *
            dydt[3]!,
        ];
  const powers = [
    ...rates,
    out.frictionPower,
    out.lossPower,
    out.loadPower,
    out.gearPower,
    out.couplingPower,
  ];
  const size = powers.reduce((sum, power) => sum + Math.abs(power), Math.abs(torque * y[0]!));
  expectWithin(
    powers.reduce((sum, power) => sum + power, 0),
    torque * y[0]!,
    { absolute: 1e-12 * size },
    'sum of powers',
  );
}

describe('air-gap power is the change of stored energy and the powers of friction, loss, load, gear and coupling', () => {
  it('with one mass, in every mode', () => {
    fc.assert(
      fc.property(gears, mass, sign, between(-400, 400), (gear, { speed, mode }, power, torque) => {
        const shaft = shaftWith({ inertia: 2, torques, ...(gear && { gear }) }, motor);
        const { pieces } = initialShaft(shaft, speed).mode;
        expectBalance(shaft, { masses: [mode], power, flank: 0, pieces }, [speed, 1.7], torque);
      }),
    );
  });

  it('with two masses, in every mode', () => {
    const flank = fc.constantFrom(-1 as const, 0 as const, 1 as const);
    fc.assert(
      fc.property(
        gears,
        fc.tuple(mass, mass),
        fc.tuple(sign, flank),
        between(-0.02, 0.02),
        between(-400, 400),
        (gear, [first, second], [power, touching], twist, torque) => {
          const coupling = { stiffness: 2e4, damping: 3, backlash: 0.01 };
          const shaft = shaftWith({ inertia: 2, torques, coupling, ...(gear && { gear }) }, motor);
          const { pieces } = initialShaft(shaft, second.speed).mode;
          const mode = { masses: [first.mode, second.mode], power, flank: touching, pieces };
          expectBalance(shaft, mode, [first.speed, 1.7, second.speed, twist], torque);
        },
      ),
    );
  });
});
