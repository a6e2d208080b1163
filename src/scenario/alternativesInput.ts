import { bounds } from './bounds.ts';
import { group, quantity } from './field.ts';

/** What the alternatives are compared with, as a person writes it. */
export const alternativesInput = group(
  'Other ways to stop the same load that plugging is compared with; what is left out is chosen and marked as assumed',
  {
    mechanicalBrake: group('A mechanical brake on the motor shaft; not compared if left out', {
      torque: quantity(bounds.brakeTorque, { about: 'Braking torque', example: '60 N m' }),
      delay: quantity(bounds.operatingTime, {
        about: 'From the stopping command to the braking torque',
        example: '60 ms',
      }),
    }).optional(),
    injectionCurrent: quantity(bounds.ratedCurrent, {
      about: 'Direct current in two leads of the motor',
      example: '30 A',
    }).optional(),
    injectionDelay: quantity(bounds.changeover, {
      about:
        'From the parting of the forward contactor to the closing of the direct current; until the flux has decayed if left out',
      example: '500 ms',
    }).optional(),
    lineResistance: quantity(bounds.plugResistor, {
      about: 'Resistor in each line while plugging; chosen to meet the limits if left out',
      example: '2 ohm',
    }).optional(),
    deadTime: quantity(bounds.changeover, {
      about: 'A longer dead time; 1.5 open-circuit time constants if left out',
      example: '400 ms',
    }).optional(),
  },
);
