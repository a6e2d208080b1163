import { z } from 'zod';
import { bounds } from './bounds.ts';
import { packFault, packTypeFault } from './fault.ts';
import { group, quantity } from './field.ts';
import { designInput } from './nameplateInput.ts';
import { ratio } from './ratioField.ts';

const reading = () => quantity(bounds.ratedCurrent, { about: 'Current of one line', example: '8.17 A' });

/** One value, or the readings of the three lines. */
const lineCurrent = z
  .union([
    reading(),
    z.array(reading(), { error: ({ input }) => packTypeFault(input, 'a list of three currents') }).length(3, {
      error: ({ input }) =>
        packFault(
          'outOfRange',
          `has ${Array.isArray(input) ? input.length : 0} currents`,
          'the currents of all three lines, or their mean as one value',
        ),
    }),
  ])
  .meta({
    description: 'Line current, r.m.s.: one value, or the readings of the three lines, which are averaged.',
    examples: ['8.17 A', ['8.12 A', '8.20 A', '8.18 A']],
  });

function test(about: string) {
  return group(about, {
    voltage: quantity(bounds.testVoltage, { about: 'Voltage between lines, r.m.s.', example: '208 V' }),
    current: lineCurrent,
    power: quantity(bounds.testPower, { about: 'Power of all three phases', example: '420 W' }),
    frequency: quantity(bounds.frequency, {
      about: 'Frequency of the test; the rated frequency if left out',
      example: '50 Hz',
    }).optional(),
  });
}

/** Test readings as a person writes them. */
export const testsInput = group(
  'Readings of the no-load, the locked-rotor and the d.c. test, instead of a circuit (IEEE 112, IEC 60034-28)',
  {
    lineVoltage: quantity(bounds.lineVoltage, {
      about: 'Rated voltage between lines; the supply voltage if left out',
      example: '400 V',
    }).optional(),
    frequency: quantity(bounds.frequency, {
      about: 'Rated frequency; the supply frequency if left out',
      example: '50 Hz',
    }).optional(),
    noLoad: test('The machine turning without load, near rated voltage'),
    lockedRotor: test('The machine with its rotor held'),
    dc: group('Direct current between two terminals', {
      voltage: quantity(bounds.testVoltage, { about: 'Direct voltage', example: '13.6 V' }),
      current: quantity(bounds.ratedCurrent, { about: 'Direct current', example: '28 A' }),
    }).optional(),
    terminalResistance: quantity(bounds.terminalResistance, {
      about: 'Resistance between two terminals, instead of dc',
      example: '0.486 ohm',
    }).optional(),
    statorLeakageShare: ratio(
      'fraction',
      { min: 0, aboveMin: true, max: 0.999 },
      {
        about:
          'Share of the stator in the leakage reactance of the locked rotor; by design letter if left out',
        example: '50 %',
      },
    ).optional(),
    design: designInput,
  },
).superRefine((tests, context) => {
  if ((tests.dc === undefined) !== (tests.terminalResistance === undefined)) return;
  const message =
    tests.dc === undefined
      ? 'states no stator resistance'
      : 'states a d.c. reading and a terminal resistance as well';
  context.addIssue({
    code: 'custom',
    message: packFault('conflict', message, 'either dc or terminalResistance'),
  });
});
