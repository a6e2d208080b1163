import { z } from 'zod';
import { bounds } from './bounds.ts';
import { packFault, packTypeFault } from './fault.ts';
import { group, quantity, word } from './field.ts';
import { quantityPattern, readQuantity } from './parseQuantity.ts';
import { ratio, readRatio } from './ratioField.ts';

/** Design letters that are understood. */
export const designLetters = ['A', 'B', 'C', 'D', 'N', 'NY', 'NE', 'NEY', 'H', 'HY', 'HE', 'HEY'] as const;

/** Code letters of NEMA MG 1-10.37.2; I, O and Q are not used. */
export const codeLetters = [
  'A',
  'B',
  'C',
  'D',
  'E',
  'F',
  'G',
  'H',
  'J',
  'K',
  'L',
  'M',
  'N',
  'P',
  'R',
  'S',
  'T',
  'U',
  'V',
] as const;

/** Locked-rotor current as stated: `ofRated`, a multiple of the rated current, or `amperes`, A r.m.s. */
export type StatedLockedRotorCurrent =
  | { readonly kind: 'multiple'; readonly ofRated: number }
  | { readonly kind: 'amperes'; readonly amperes: number };

/** Beyond twenty times rated current nothing is built; an ampere value written as a multiple is caught. */
const multipleRange = { min: 1, max: 20 } as const;

/** A multiple of rated current, or amperes. */
function lockedRotorCurrent() {
  const expected = 'a multiple of rated current or amperes, such as `6.8 times` or `110 A`';
  return z
    .string({
      error: ({ input }) =>
        typeof input === 'number'
          ? packFault('missingUnit', `${input} has no unit`, `\`${input} times\` or \`${input} A\``)
          : packTypeFault(input, expected),
    })
    .meta({
      description:
        'Current with the rotor held at rated voltage: a multiple of rated current (times or %), or amperes.',
      examples: ['6.8 times', '110 A'],
      pattern: quantityPattern,
    })
    .transform((text, context): StatedLockedRotorCurrent => {
      const refuse = (code: 'outOfRange' | 'wrongUnit', message: string, range: string) => {
        context.addIssue({ code: 'custom', message: packFault(code, message, range) });
        return z.NEVER;
      };
      const amperes = readQuantity(text, 'current');
      if (typeof amperes === 'number') {
        if (amperes > 0 && amperes <= bounds.ratedCurrent.max) return { kind: 'amperes', amperes };
        return refuse('outOfRange', `${text.trim()} is out of range`, 'a current above 0 A to 100000 A');
      }
      const ofRated = readRatio(text, 'multiple', expected);
      if (typeof ofRated === 'number') {
        if (ofRated >= multipleRange.min && ofRated <= multipleRange.max)
          return { kind: 'multiple', ofRated };
        const range = `from ${multipleRange.min} to ${multipleRange.max} times rated current (a locked rotor takes more than rated current)`;
        return refuse('outOfRange', `${text.trim()} is out of range`, range);
      }
      context.addIssue({ code: 'custom', message: packFault(amperes.code, amperes.message, expected) });
      return z.NEVER;
    });
}

const multiple = (about: string, example: string) =>
  ratio('multiple', { min: 0, aboveMin: true, max: 10 }, { about, example }).optional();

const design = () =>
  word(designLetters, {
    about:
      'Design letter: A, B, C, D of NEMA MG 1; N, H and their E (premium) and Y (star-delta starting) variants of IEC 60034-12',
  }).optional();

/** The nameplate as a person writes it; what is not known is left out. */
export const nameplateInput = group(
  'What nameplate and catalogue say, instead of a circuit; leave out what is not known',
  {
    power: quantity(bounds.ratedPower, { about: 'Rated shaft power', example: '7.5 kW' }),
    lineVoltage: quantity(bounds.lineVoltage, {
      about: 'Rated voltage between lines; the supply voltage if left out',
      example: '400 V',
    }).optional(),
    frequency: quantity(bounds.frequency, {
      about: 'Rated frequency; the supply frequency if left out',
      example: '50 Hz',
    }).optional(),
    speed: quantity(bounds.speed, { about: 'Rated speed; or give slip', example: '1455 rpm' }).optional(),
    slip: ratio(
      'fraction',
      { min: 0, aboveMin: true, max: 1 },
      { about: 'Rated slip, with poles; or give speed', example: '3 %' },
    ).optional(),
    current: quantity(bounds.ratedCurrent, { about: 'Rated line current', example: '14.8 A' }).optional(),
    powerFactor: ratio(
      'fraction',
      { min: 0, aboveMin: true, max: 1 },
      { about: 'Power factor at rated output', example: '0.83' },
    ).optional(),
    efficiency: ratio(
      'fraction',
      { min: 0, aboveMin: true, max: 1 },
      { about: 'Efficiency at rated output', example: '90.1 %' },
    ).optional(),
    lockedRotorCurrent: lockedRotorCurrent().optional(),
    codeLetter: z
      .enum(codeLetters, {
        error: ({ input }) => {
          const expected = `one of ${codeLetters.join(', ')}`;
          if (typeof input !== 'string') return packTypeFault(input, expected);
          const reason = /^[IOQ]$/i.test(input) ? ' (I, O and Q are not used: they are read as 1 and 0)' : '';
          return packFault(
            'unknownWord',
            `${JSON.stringify(input.slice(0, 60))} is no code letter${reason}`,
            expected,
          );
        },
      })
      .meta({
        description:
          'Code letter of NEMA MG 1 for the locked-rotor kVA per horsepower; beside lockedRotorCurrent it is only checked.',
        examples: ['H'],
      })
      .optional(),
    lockedRotorTorque: multiple('Torque with the rotor held over rated torque', '2.2 times'),
    breakdownTorque: multiple('Greatest torque over rated torque', '2.8 times'),
    design: design(),
    inertia: quantity(bounds.inertia, {
      about: 'Rotor inertia; or give inertia under machine; estimated if left out',
      example: '0.036 kg m^2',
    }).optional(),
  },
);

/** The design letter, for tests. */
export const designInput = design();
