import { bounds } from './bounds.ts';
import { packFault } from './fault.ts';
import { group, pureNumber, quantity } from './field.ts';
import { ratio } from './ratioField.ts';

/** Below this a gear can hold itself from the load side (backward efficiency 2 − 1/η reaches 0 at one half). */
const mayLockItself = 0.5;

/** The gear as a person writes it. */
export const gearInput = group(
  'A gear between motor and load; load inertia and torques are then those behind it',
  {
    ratio: pureNumber({ min: 1e-3, max: 1e4 }, { about: 'Motor speed over load speed', example: '12.5' }),
    efficiency: ratio(
      'fraction',
      { min: 0, aboveMin: true, max: 1 },
      { about: 'Efficiency while the motor drives the load', example: '94 %' },
    ),
    backwardEfficiency: ratio(
      'fraction',
      // Wide on purpose: a self-locking gear is refused below, with its reason.
      { min: -100, max: 1 },
      {
        about:
          'Efficiency while the load drives the motor, as in braking; as efficiency if left out, but must be stated where efficiency is below 50 %',
        example: '92 %',
      },
    ).optional(),
  },
).superRefine((gear, context) => {
  if (gear.backwardEfficiency === undefined && gear.efficiency < mayLockItself)
    context.addIssue({
      code: 'custom',
      message: packFault(
        'conflict',
        'has an efficiency below 50 % and states no backwardEfficiency: such a gear may lock itself against the load',
        'backwardEfficiency, measured or from the maker',
      ),
    });
  if (gear.backwardEfficiency !== undefined && gear.backwardEfficiency <= 0)
    context.addIssue({
      code: 'custom',
      path: ['backwardEfficiency'],
      message: packFault(
        'notSupported',
        'is 0 or below: a self-locking gear is not covered, as the load cannot turn it and the motor must drive it even downwards',
        'a backward efficiency above 0 % to 100 %',
      ),
    });
});

/** The elastic coupling as a person writes it. */
export const couplingInput = group(
  'An elastic coupling or shaft between motor and gear (or load), seen at the motor shaft',
  {
    stiffness: quantity(bounds.stiffness, { about: 'Torque per twist', example: '20 kN m/rad' }),
    damping: quantity(bounds.damping, {
      about: 'Torque per difference of speed while the flanks touch; always stated',
      why: 'with none the torsional oscillation grows from blow to blow while plugging, which no real shaft does; 0 is taken only where it is written',
      example: '10 N m s/rad',
    }),
    backlash: quantity(bounds.backlash, {
      about: 'Free play from flank to flank',
      example: '0.5 deg',
      default: '0 deg',
    }).optional(),
  },
);
