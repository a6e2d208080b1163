import { bounds } from './bounds.ts';
import { group, quantity } from './field.ts';
import { timeOrWord } from './timeOrWord.ts';

/** Resistors in the lines as a person writes them. */
export const lineResistorsInput = group(
  'Equal resistors in all three lines while plugging, with the contactor that bypasses them; a start from rest finds them bypassed',
  {
    resistance: quantity(bounds.resistor, { about: 'Resistance per line', example: '0.8 ohm' }),
    closingTime: quantity(bounds.operatingTime, {
      about: 'Bypass contactor, coil energised to contacts touch; as the other contactors if left out',
      example: '20 ms',
    }).optional(),
    openingTime: quantity(bounds.operatingTime, {
      about: 'Bypass contactor, coil de-energised to contacts part; as the other contactors if left out',
      example: '10 ms',
    }).optional(),
    bypassAfter: timeOrWord('never', {
      about:
        'From energising the reversing coil to energising the bypass coil: a time with its unit, or never (the resistors stay in while this reversal lasts).',
      example: '0.5 s',
      bounds: bounds.changeover,
    }).optional(),
  },
);
