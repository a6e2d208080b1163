import { z } from 'zod';
import { bounds } from './bounds.ts';
import { reactanceOrInductance } from './circuitInput.ts';
import { eitherQuantity } from './eitherQuantity.ts';
import { packFault, packTypeFault } from './fault.ts';
import { group, pureNumber, quantity, word } from './field.ts';

/** Iron loss as a person writes it. */
export const ironLossInput = z
  .union([
    quantity(bounds.testPower, {
      about:
        'Iron loss at rated voltage and no load, through the magnetising reactance stated (with saturation of the main path a few per cent less comes out)',
      example: '120 W',
    }),
    group('The branch that stands for the iron, per phase, in series with nothing but the main flux', {
      resistance: quantity(bounds.resistance, { about: 'Its resistance', example: '900 ohm' }),
      inductance: reactanceOrInductance('Its own inductance', '90 ohm'),
    }),
  ])
  .meta({
    description:
      'Iron loss of all phases at rated voltage and no load, or resistance and inductance of the branch that stands for it; none if left out.',
    examples: ['120 W'],
  });

/** Bearing friction and windage as a person writes them. */
export const mechanicalLossInput = z
  .union([
    quantity(bounds.lossPower, {
      about: 'Friction and windage together, at synchronous speed',
      example: '60 W',
    }),
    group('Friction and windage of the motor itself', {
      friction: quantity(bounds.loadTorque, { about: 'Bearing friction, dry', example: '0.2 N m' }),
      windage: eitherQuantity(
        { kind: 'power', bounds: bounds.lossPower },
        { kind: 'coefficient', bounds: bounds.fanCoefficient },
        'a power at synchronous speed or a torque over speed squared',
        { about: 'Windage, with the square of speed', example: '30 W' },
      ),
    }),
  ])
  .meta({
    description:
      'Friction and windage of the motor at synchronous speed (shared half and half), or each on its own; none if left out.',
    examples: ['60 W', { friction: '0.2 N m', windage: '30 W' }],
  });

const conductor = (where: string, usual: 'copper' | 'aluminium') =>
  word(['copper', 'aluminium'], { about: `Conductor metal of the ${where}`, default: usual }).optional();

/** Winding temperatures as a person writes them. */
export const temperatureInput = group(
  'Temperatures: the resistances are converted from the one they were stated at to the one of this run',
  {
    resistancesAt: quantity(bounds.temperature, {
      about: 'Temperature at which the resistances of the circuit hold',
      example: '20 degC',
    }),
    winding: quantity(bounds.temperature, {
      about: 'Temperature of the stator winding in this run',
      example: '110 degC',
    }),
    rotor: quantity(bounds.temperature, {
      about: 'Temperature of the rotor in this run; that of the winding if left out',
      example: '120 degC',
    }).optional(),
    statorConductor: conductor('stator winding', 'copper'),
    rotorConductor: conductor('rotor', 'aluminium'),
  },
);

const referral =
  'at the rings if turnsRatio is stated, else already referred to the stator (equivalent star)';

const step = group('One step of a start', {
  resistance: quantity(bounds.resistor, { about: `Resistance per phase, ${referral}`, example: '0.4 ohm' }),
  duration: quantity(bounds.stepDuration, { about: 'How long it stays in', example: '1.2 s' }),
});

/** Resistors at the slip rings as a person writes them. */
export const rotorResistorsInput = group(
  'Resistors in star at the slip rings of a wound rotor; with one cage only, which stands for the rotor winding',
  {
    turnsRatio: pureNumber(
      { min: 0.01, max: 100 },
      {
        about:
          'Voltage between stator lines over voltage between open rings at standstill; resistances at the rings are multiplied by its square. It holds for a stator in star and in delta alike, without any division by three',
        example: '1.6',
        default: '1',
      },
    ).optional(),
    starting: z
      .array(step, { error: ({ input }) => packTypeFault(input, 'a list of steps') })
      .max(50, { error: () => packFault('outOfRange', 'the list is too long', 'at most 50 steps') })
      .meta({ description: 'Steps of a start in their order; short-circuited after the last.' })
      .optional(),
    plugging: quantity(bounds.resistor, {
      about: `Resistance per phase while plugging, ${referral}`,
      example: '0.9 ohm',
      default: '0 ohm',
    }).optional(),
  },
);
