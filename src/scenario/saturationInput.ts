import { z } from 'zod';
import { bounds } from './bounds.ts';
import { packFault, packTypeFault } from './fault.ts';
import { group, quantity } from './field.ts';
import { keyword } from './keyword.ts';
import { ratio } from './ratioField.ts';

const point = group('One point of the magnetising curve', {
  voltage: quantity(bounds.testVoltage, {
    about: 'Voltage between lines of the no-load test at rated frequency, r.m.s.',
    example: '400 V',
  }).optional(),
  current: quantity(bounds.ratedCurrent, {
    about: 'Line current at no load at that voltage, r.m.s.',
    example: '5.1 A',
  }).optional(),
  flux: quantity(bounds.flux, {
    about: 'Main flux linkage instead of a voltage: crest of its space vector in the equivalent star',
    example: '0.95 Wb',
  }).optional(),
  magnetisingCurrent: quantity(bounds.ratedCurrent, {
    about: 'Magnetising current instead of a line current: crest of its space vector in the equivalent star',
    example: '7.2 A',
  }).optional(),
}).superRefine((written, context) => {
  const stated = (['voltage', 'current', 'flux', 'magnetisingCurrent'] as const).filter(
    (key) => written[key] !== undefined,
  );
  const pair = stated.join();
  if (pair === 'voltage,current' || pair === 'flux,magnetisingCurrent') return;
  context.addIssue({
    code: 'custom',
    message: packFault(
      'conflict',
      'is no point of a magnetising curve',
      'voltage and current of a no-load test, or flux and magnetisingCurrent',
    ),
  });
});

const curve = z
  .array(point, { error: ({ input }) => packTypeFault(input, 'a list of points') })
  .min(2, {
    error: ({ input }) =>
      packFault(
        'outOfRange',
        `has ${Array.isArray(input) ? input.length : 0} points`,
        'two points or more: one below the knee and one at rated voltage',
      ),
  })
  .max(100, { error: () => packFault('outOfRange', 'the list is too long', 'at most 100 points') });

const path = group('One leakage path: its inductance falls as its current grows', {
  current: quantity(bounds.ratedCurrent, {
    about: 'Current around which the path saturates, crest, equivalent star',
    example: '42 A',
  }),
  remaining: ratio(
    'fraction',
    { min: 0, aboveMin: true, max: 1 },
    { about: 'What is left of the inductance when saturated through', example: '60 %' },
  ),
});

const pathOrOff = (about: string) =>
  z
    .union([
      keyword(
        ['off'],
        '`off`, or current and remaining of the path, such as `{ current: 42 A, remaining: 60 % }`',
      ),
      path,
    ])
    .meta({
      description: `${about}: current and remaining, or off.`,
      examples: [{ current: '42 A', remaining: '60 %' }, 'off'],
    });

/** Saturation as a person writes it. */
export const saturationInput = group('Saturation of the iron; each path is linear unless stated', {
  main: z
    .union([
      keyword(
        ['typical', 'off'],
        '`typical`, `off`, or a list of no-load points such as `[{ voltage: 320 V, current: 3.4 A }, { voltage: 400 V, current: 5.1 A }]`',
      ),
      curve,
    ])
    .meta({
      description:
        'Magnetising curve: two no-load points or more in ascending order, `typical` (a usual curve through the stated magnetising reactance at rated voltage) or off.',
      examples: [
        'typical',
        [
          { voltage: '320 V', current: '3.4 A' },
          { voltage: '400 V', current: '5.1 A' },
        ],
      ],
      default: 'off',
    })
    .optional(),
  leakage: z
    .union([
      keyword(
        ['typical', 'off'],
        '`typical`, `off`, or stator and cages, such as `{ stator: { current: 42 A, remaining: 60 % }, cages: [{ current: 42 A, remaining: 60 % }] }`',
      ),
      group('The leakage paths one by one', {
        stator: pathOrOff('Stator leakage'),
        cages: z
          .array(pathOrOff('Leakage of one cage'), {
            error: ({ input }) => packTypeFault(input, 'a list with one entry per cage'),
          })
          .min(1, { error: () => packFault('outOfRange', 'the list is empty', 'one entry per cage') })
          .max(2, { error: () => packFault('outOfRange', 'the list is too long', 'one entry per cage') })
          .meta({ description: 'Rotor leakage, one entry per cage.' }),
      }),
    ])
    .meta({
      description:
        'Leakage that falls with current: stator and cages, `typical` (60 % left, around twice rated current) or off. What a nameplate gives of it holds if it is left out.',
      examples: ['typical', 'off'],
      default: 'off',
    })
    .optional(),
});
