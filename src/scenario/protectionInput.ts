import { z } from 'zod';
import { bounds } from './bounds.ts';
import { tripClass } from './controlInput.ts';
import { packFault, packTypeFault } from './fault.ts';
import { group, quantity, text, word } from './field.ts';

const overload = group(
  'The thermal overload relay of a starter whose control circuit is not stated; else it stands under starter.control',
  {
    setting: quantity(bounds.ratedCurrent, {
      about: 'Current setting, r.m.s.; the rated current of the machine if left out',
      example: '14.6 A',
    }).optional(),
    class: tripClass,
  },
);

const point = group('One point of the curve', {
  current: quantity(bounds.faultCurrent, { about: 'Current, r.m.s.', example: '160 A' }),
  time: quantity(bounds.trippingTime, { about: 'Time to trip or melt at that current', example: '4 s' }),
});

const curve = group('One time–current curve', {
  name: text({ min: 1, max: 60, lines: 'one' }, { about: 'Label in the plot', example: 'main fuse' }),
  kind: word(['breaker', 'fuse'], { about: 'What kind of device' }),
  points: z
    .array(point, { error: ({ input }) => packTypeFault(input, 'a list of points, each current and time') })
    .min(2, { error: () => packFault('outOfRange', 'has fewer than two points', 'two points or more') })
    .max(200, { error: () => packFault('outOfRange', 'the list is too long', 'at most 200 points') })
    .meta({
      description: 'Points in ascending order of current, with times that do not rise.',
      examples: [
        [
          { current: '40 A', time: '600 s' },
          { current: '200 A', time: '0.4 s' },
        ],
      ],
    }),
});

/** The protective devices as a person writes them. */
export const protectionInput = group('Protective devices beside those of the control circuit', {
  overload: overload.optional(),
  curves: z
    .array(curve, { error: ({ input }) => packTypeFault(input, 'a list of curves') })
    .max(20, { error: () => packFault('outOfRange', 'the list is too long', 'at most 20 curves') })
    .meta({
      description: 'Time–current curves of breakers and fuses, drawn beside the plugging current.',
      examples: [
        [
          {
            name: 'main fuse',
            kind: 'fuse',
            points: [
              { current: '40 A', time: '600 s' },
              { current: '200 A', time: '0.4 s' },
            ],
          },
        ],
      ],
    })
    .optional(),
});
