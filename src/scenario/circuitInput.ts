import { z } from 'zod';
import { bounds } from './bounds.ts';
import { type Either, eitherQuantity } from './eitherQuantity.ts';
import { packFault, packTypeFault } from './fault.ts';
import { group, quantity } from './field.ts';

/** A branch of the circuit as stated, in SI: a reactance at rated frequency, or an inductance. */
export type StatedInductance = Either<'reactance' | 'inductance'>;

/** A branch that may be written in ohms (at rated frequency) or in henrys. */
export function reactanceOrInductance(about: string, example: string) {
  return eitherQuantity(
    { kind: 'reactance', bounds: bounds.reactance },
    { kind: 'inductance', bounds: bounds.inductance },
    'a reactance at rated frequency or an inductance',
    { about, example },
  );
}

const cage = group('One cage, referred to the stator', {
  resistance: quantity(bounds.resistance, { about: 'Rotor resistance per phase', example: '0.228 ohm' }),
  leakage: reactanceOrInductance('Rotor leakage of this cage', '0.302 ohm'),
});

const cages = z
  .array(cage, {
    error: ({ input }) =>
      packTypeFault(input, 'a list of one or two cages, each with resistance and leakage'),
  })
  .min(1, { error: () => packFault('outOfRange', 'the list is empty', 'one or two cages') })
  .max(2, { error: ({ input }) => packFault('outOfRange', `has ${size(input)} cages`, 'one or two cages') })
  .meta({
    description: 'One cage, or two in parallel (a double cage, or deep bars stood for by two cages).',
  });

/** The four keys of the circuit per phase. */
export const circuitKeys = {
  statorResistance: quantity(bounds.resistance, {
    about: 'Stator resistance per phase',
    example: '0.087 ohm',
  }),
  statorLeakage: reactanceOrInductance('Stator leakage', '0.302 ohm'),
  magnetising: reactanceOrInductance('Magnetising branch', '13.08 ohm'),
  cages,
};

/** The names of `circuitKeys`. */
export const circuitKeyNames = ['statorResistance', 'statorLeakage', 'magnetising', 'cages'] as const;

/** Rated output as a person writes it. */
export const ratedInput = group('Rated output from the nameplate: the base of all multiples', {
  power: quantity(bounds.ratedPower, { about: 'Rated shaft power', example: '7.5 kW' }).optional(),
  speed: quantity(bounds.speed, { about: 'Speed at rated output', example: '1455 rpm' }).optional(),
  current: quantity(bounds.ratedCurrent, {
    about: 'Line current at rated output',
    example: '14.8 A',
  }).optional(),
  torque: quantity(bounds.ratedTorque, { about: 'Torque at rated output', example: '49 N m' }).optional(),
});

function size(input: unknown): number {
  return Array.isArray(input) ? input.length : 0;
}
