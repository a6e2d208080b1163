import { z } from 'zod';
import { bounds } from './bounds.ts';
import { packFault, packTypeFault } from './fault.ts';
import { group, quantity } from './field.ts';
import { yesNo } from './yesNo.ts';

const dropOutSpeed = quantity(bounds.speed, {
  about: 'Its contact opens when the speed falls below this',
  example: '50 rpm',
});
const pickUpSpeed = quantity(bounds.speed, {
  about: 'Its contact closes when the speed rises above this',
  example: '100 rpm',
});

interface Speeds {
  readonly dropOutSpeed: number;
  readonly pickUpSpeed: number;
}

function hysteresis(speeds: Speeds, context: z.RefinementCtx): void {
  if (speeds.dropOutSpeed < speeds.pickUpSpeed) return;
  const message = packFault(
    'conflict',
    'is not below the pick-up speed',
    'a drop-out speed below pickUpSpeed',
  );
  context.addIssue({ code: 'custom', path: ['dropOutSpeed'], message });
}

const theSwitch = group(
  'The zero-speed switch on the shaft; works alike in both directions unless reverse is stated',
  {
    dropOutSpeed,
    pickUpSpeed,
    reverse: group('Its speeds for reverse rotation, without a sign; as forward if left out', {
      dropOutSpeed,
      pickUpSpeed,
    })
      .superRefine(hysteresis)
      .optional(),
    lockout: yesNo({
      about: 'A solenoid bars its contacts from being actuated until a contactor has been in; needs control',
      default: 'no',
    }).optional(),
    delay: quantity(bounds.operatingTime, {
      about: 'From the crossing to the contact',
      example: '5 ms',
      default: '0 ms',
    }).optional(),
  },
).superRefine(hysteresis);

const noSwitch = z.literal('off', {
  error: ({ input }) =>
    packTypeFault(
      input,
      '`off`, or dropOutSpeed, pickUpSpeed and delay, such as `{ dropOutSpeed: 50 rpm, pickUpSpeed: 100 rpm }`',
    ),
});

/** The zero-speed switch as a person writes it. */
export const zeroSpeedSwitchInput = z.union([noSwitch, theSwitch]).meta({
  description:
    'The switch that ends plugging near standstill, or `off`. Must be stated where there is a plug action or a scheme that needs it.',
  examples: ['off', { dropOutSpeed: '50 rpm', pickUpSpeed: '100 rpm', delay: '5 ms' }],
});
