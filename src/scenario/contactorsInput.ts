import { z } from 'zod';
import { bounds } from './bounds.ts';
import { packFault, packTypeFault } from './fault.ts';
import { group, pureNumber, quantity } from './field.ts';

/** Operations; a contactor that lasts longer than a thousand million is a slip of the pen. */
const LIFE = { min: 1, max: 1_000_000_000 } as const;
const life = (about: string, example: string) => pureNumber(LIFE, { about, example });

const current = (about: string, example: string) => quantity(bounds.faultCurrent, { about, example });

const perHour = (about: string, example: string) => pureNumber({ min: 1, max: 100_000 }, { about, example });

const lifeTable = z
  .array(
    group('One point of the table', {
      current: current('Breaking current, r.m.s.', '90 A'),
      operations: life('Operations at that current', '120000'),
    }),
    { error: ({ input }) => packTypeFault(input, 'a list of points, each current and operations') },
  )
  .min(2, { error: () => packFault('outOfRange', 'has fewer than two points', 'two points or more') })
  .max(100, { error: () => packFault('outOfRange', 'the list is too long', 'at most 100 points') })
  .meta({
    description:
      'Electrical life against breaking current at full recovery voltage, in ascending order of current.',
    examples: [
      [
        { current: '18 A', operations: 1_500_000 },
        { current: '108 A', operations: 60_000 },
      ],
    ],
  });

const ratedCurrentAc3 = quantity(bounds.ratedCurrent, {
  about: 'Rated operational current in utilisation category AC-3',
  example: '18 A',
});

/** What may be stated of either contactor. */
const device = {
  ratedVoltage: quantity(bounds.lineVoltage, {
    about: 'Rated operational voltage for which the currents are stated; that of the supply if left out',
    example: '400 V',
  }).optional(),
  ratedCurrentAc4: quantity(bounds.ratedCurrent, {
    about: 'Rated operational current in utilisation category AC-4',
    example: '12 A',
  }).optional(),
  lifeAc3: life('Electrical life in AC-3 at ratedCurrentAc3, operations', '1500000').optional(),
  lifeAc4: life('Electrical life in AC-4 at ratedCurrentAc4, operations', '200000').optional(),
  lifeTable: lifeTable.optional(),
  mechanicalLife: life('Mechanical life, operations without current', '10000000').optional(),
  makingCapacity: current(
    'Rated making capacity, r.m.s.; if left out, by the multiples of IEC 60947-4-1',
    '216 A',
  ).optional(),
  breakingCapacity: current(
    'Rated breaking capacity, r.m.s.; if left out, by the multiples of IEC 60947-4-1',
    '180 A',
  ).optional(),
  bounceTime: quantity(bounds.bounceTime, {
    about: 'How long the contacts bounce when they touch',
    example: '2 ms',
  }).optional(),
  operationsPerHourAc3: perHour('Most operations per hour in AC-3', '1200').optional(),
  operationsPerHourAc4: perHour('Most operations per hour in AC-4', '300').optional(),
} as const;

/** The contactors' data as a person writes them. */
export const contactorsInput = group(
  "The makers' data of the two contactors: stated once, with reverse where the reversing contactor differs",
  {
    ratedCurrentAc3,
    ...device,
    reverse: group(
      'The reversing contactor where it differs; as the forward one if left out. With its own ratedCurrentAc3 it is another device, of which nothing is taken over',
      { ratedCurrentAc3: ratedCurrentAc3.optional(), ...device },
    ).optional(),
    interlockMechanicalLife: life(
      'Mechanical life of the mechanical interlock, operations',
      '5000000',
    ).optional(),
    switchMechanicalLife: life('Mechanical life of the zero-speed switch, operations', '3000000').optional(),
  },
);
