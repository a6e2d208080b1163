import { bounds } from './bounds.ts';
import { group, quantity, word } from './field.ts';
import { timeOrWord } from './timeOrWord.ts';

/** A mechanical brake as a person writes it. */
export const brakeInput = group('A mechanical brake on the motor shaft, applied by springs', {
  torque: quantity(bounds.loadTorque, { about: 'Braking torque at the motor shaft', example: '80 N m' }),
  delay: quantity(bounds.changeover, {
    about: 'From the release of its coil to its full torque',
    example: '60 ms',
  }),
  sets: word(['on command', 'after plugging'], {
    about:
      'on command: with the action `apply brake` alone; after plugging: also when plugging has ended, to hold the load. It lets go when a contactor is energised',
    default: 'on command',
  }).optional(),
});

/** A source of direct current as a person writes it. */
export const injectionInput = group(
  'Direct current into two leads, through a rectifier and a contactor of its own that opens when the current is gone',
  {
    voltage: quantity(bounds.directVoltage, {
      about: 'Voltage of the rectifier without load',
      example: '24 V',
    }),
    resistance: quantity(bounds.resistor, {
      about: 'Resistance of transformer and rectifier',
      example: '0.1 ohm',
    }),
    delay: quantity(bounds.changeover, {
      about: "From the command to energising the direct current's contactor: the flux decays meanwhile",
      example: '0.5 s',
    }),
    closingTime: quantity(bounds.operatingTime, {
      about: 'Its contactor, coil energised to contacts touch; as the other contactors if left out',
      example: '20 ms',
    }).optional(),
    duration: timeOrWord('until the switch opens', {
      about: 'How long the current flows: a time with its unit, or until the switch opens.',
      example: '2 s',
      bounds: bounds.stepDuration,
    }).optional(),
  },
);
