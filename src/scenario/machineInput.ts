import { z } from 'zod';
import { bounds } from './bounds.ts';
import { packFault, packTypeFault } from './fault.ts';
import { group, onlyCovered, pureNumber, quantity, word } from './field.ts';
import { quantityPattern, readQuantity } from './parseQuantity.ts';

/** A branch of the circuit as stated: a reactance at rated frequency, or an inductance. */
export type StatedInductance =
  | { readonly kind: 'reactance'; readonly ohm: number }
  | { readonly kind: 'inductance'; readonly henry: number };

/** A branch that may be written in ohms (at rated frequency) or in henrys. */
function reactanceOrInductance(about: string, example: string) {
  const expected = `a reactance at rated frequency or an inductance, such as \`${example}\``;
  const { reactance, inductance } = bounds;
  return z
    .string({
      error: ({ input }) =>
        typeof input === 'number'
          ? packFault(
              'missingUnit',
              `${input} has no unit`,
              `\`${input} ohm\` (at rated frequency) or \`${input} mH\``,
            )
          : packTypeFault(input, expected),
    })
    .meta({
      description: `${about}: in ohm at rated frequency, or in H, mH or uH.`,
      examples: [example],
      pattern: quantityPattern,
    })
    .transform((text, context): StatedInductance => {
      const ohm = readQuantity(text, 'resistance');
      const henry = readQuantity(text, 'inductance');
      if (typeof ohm === 'number') {
        if (ohm >= reactance.min && ohm <= reactance.max) return { kind: 'reactance', ohm };
        const range = `a reactance from ${reactance.min} ohm to ${reactance.max} ohm`;
        context.addIssue({
          code: 'custom',
          message: packFault('outOfRange', `${text} is out of range`, range),
        });
      } else if (typeof henry === 'number') {
        if (henry >= inductance.min && henry <= inductance.max) return { kind: 'inductance', henry };
        const range = `an inductance from ${inductance.min} H to ${inductance.max} H`;
        context.addIssue({
          code: 'custom',
          message: packFault('outOfRange', `${text} is out of range`, range),
        });
      } else {
        const message = ohm.message.replace(
          'a unit of resistance or reactance',
          'a unit of reactance or inductance',
        );
        context.addIssue({ code: 'custom', message: packFault(ohm.code, message, expected) });
      }
      return z.NEVER;
    });
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

const rated = group('Rated output from the nameplate: the base of all multiples', {
  power: quantity(bounds.ratedPower, { about: 'Rated shaft power', example: '7.5 kW' }).optional(),
  speed: quantity(bounds.speed, { about: 'Speed at rated output', example: '1455 rpm' }).optional(),
  current: quantity(bounds.ratedCurrent, {
    about: 'Line current at rated output',
    example: '14.8 A',
  }).optional(),
  torque: quantity(bounds.ratedTorque, { about: 'Torque at rated output', example: '49 N m' }).optional(),
});

/** The machine as a person writes it. */
export const machineInput = group('The cage induction motor: circuit per phase, inertia, nameplate', {
  poles: pureNumber({ min: 2, max: 48, even: true }, { about: 'Number of poles', example: '4' }),
  connection: word(['star', 'delta'], {
    about: 'How the stator winding is connected',
    default: 'star',
  }).optional(),
  circuitGivenAs: word(['winding', 'equivalentStar'], {
    about:
      'What the circuit values describe: the winding phase as wound (for delta they are divided by three), or already the equivalent star',
    default: 'winding',
  }).optional(),
  ratedFrequency: quantity(bounds.frequency, {
    about: 'Frequency at which the reactances hold; the supply frequency if left out',
    example: '50 Hz',
  }).optional(),
  statorResistance: quantity(bounds.resistance, {
    about: 'Stator resistance per phase',
    example: '0.087 ohm',
  }),
  statorLeakage: reactanceOrInductance('Stator leakage', '0.302 ohm'),
  magnetising: reactanceOrInductance('Magnetising branch', '13.08 ohm'),
  cages,
  inertia: quantity(bounds.inertia, { about: 'Rotor inertia', example: '1.662 kg m^2' }),
  rated,
  powerFactorCapacitors: onlyCovered(
    'none',
    'capacitors at the motor terminals sustain the residual voltage (self-excitation) and make plugging far worse',
  ).optional(),
});

function size(input: unknown): number {
  return Array.isArray(input) ? input.length : 0;
}
