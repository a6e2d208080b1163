import { z } from 'zod';
import { bounds } from './bounds.ts';
import { controlInput } from './controlInput.ts';
import { packFault, packTypeFault } from './fault.ts';
import { faultsInput } from './faultsInput.ts';
import { group, onlyCovered, quantity, word } from './field.ts';
import { lineResistorsInput } from './lineResistorsInput.ts';
import { brakeInput, injectionInput } from './stopDeviceInput.ts';
import { zeroSpeedSwitchInput } from './zeroSpeedSwitchInput.ts';

function perPole(about: string) {
  const time = quantity(bounds.operatingTime, { about: 'Extra time of this pole', example: '1 ms' });
  const expected = 'a list of three times, for motor terminals A, B, C, such as `[0 ms, 1 ms, 2 ms]`';
  return z
    .tuple([time, time, time], {
      error: ({ input }) =>
        Array.isArray(input)
          ? packFault('wrongType', `has ${input.length} entries`, expected)
          : packTypeFault(input, expected),
    })
    .meta({
      description: `${about}, for motor terminals A, B, C.`,
      examples: [['0 ms', '1 ms', '2 ms']],
      default: ['0 ms', '0 ms', '0 ms'],
    });
}

/** The starter as a person writes it. */
export const starterInput = group('The two contactors, the zero-speed switch and the control circuit', {
  kind: onlyCovered(
    'contactors',
    'an electronic starter or converter does not plug by exchanging two phases with contacts',
  ).optional(),
  poles: word(['arcing', 'ideal'], {
    about:
      'arcing: a parted pole conducts until its own current zero; ideal: poles interrupt and transfer at once',
    default: 'arcing',
  }).optional(),
  closingTime: quantity(bounds.operatingTime, {
    about:
      'Coil energised to contacts touch. With ideal poles, or where only a dead time is stated, 0 if left out',
    example: '20 ms',
    default: '20 ms',
  }).optional(),
  openingTime: quantity(bounds.operatingTime, {
    about:
      'Coil de-energised to contacts part. With ideal poles, or where only a dead time is stated, 0 if left out',
    example: '10 ms',
    default: '10 ms',
  }).optional(),
  closingScatter: perPole('Extra time of each pole to touch').optional(),
  openingScatter: perPole('Extra time of each pole to part').optional(),
  changeoverDelay: quantity(bounds.changeover, {
    about:
      "Outgoing coil off to incoming coil on; as long as openingTime if left out (the incoming coil is fed through the outgoing contactor's own break contact). Not together with deadTime or control",
    example: '10 ms',
  }).optional(),
  deadTime: quantity(bounds.changeover, {
    about:
      'Contacts part to contacts touch; fixes the delay between the coils (deadTime - closingTime + openingTime). Not together with changeoverDelay or control',
    example: '20 ms',
  }).optional(),
  minimumArcingTime: quantity(bounds.minimumArcingTime, {
    about: 'A current zero earlier than this after parting does not put out the arc',
    example: '0 ms',
    default: '0 ms',
  }).optional(),
  exchangedPhases: word(['AB', 'BC', 'CA'], {
    about: 'The two phases the reversing contactor exchanges',
    default: 'BC',
  }).optional(),
  zeroSpeedSwitch: zeroSpeedSwitchInput.optional(),
  lineResistors: lineResistorsInput.optional(),
  plugConnection: word(['star'], {
    about:
      'star: a delta machine is connected in star while it plugs, which divides steady current and torque by about three (the first torque peak falls far less: the residual flux meets the field all the same); as built if left out',
  }).optional(),
  windingOrder: word(['AB', 'AC'], {
    about: 'Delta machines only: whether winding A lies between terminals A and B or A and C',
    default: 'AB',
  }).optional(),
  brake: brakeInput.optional(),
  injection: injectionInput.optional(),
  control: controlInput.optional(),
  faults: faultsInput.optional(),
});
