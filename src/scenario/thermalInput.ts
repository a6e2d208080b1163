import { z } from 'zod';
import { bounds } from './bounds.ts';
import { closestWord } from './closestWord.ts';
import { defaultAltitude, defaultAmbient } from './defaults.ts';
import { describeValue, packFault, packTypeFault } from './fault.ts';
import { group, pureNumber, quantity } from './field.ts';
import type { InsulationClass } from './judgementData.ts';
import { ratio } from './ratioField.ts';

/** Thermal classes and their letters. Source: IEC 60085. */
const CLASS_OF_WORD = {
  '130': '130',
  '155': '155',
  '180': '180',
  B: '130',
  F: '155',
  H: '180',
  '130 (B)': '130',
  '155 (F)': '155',
  '180 (H)': '180',
} as const satisfies Readonly<Record<string, InsulationClass>>;

const CLASS_WORDS = ['130', '155', '180', 'B', 'F', 'H', '130 (B)', '155 (F)', '180 (H)'] as const;

const noClass = ({ input }: { readonly input?: unknown }) => {
  const expected = 'one of `130 (B)`, `155 (F)`, `180 (H)`, by number, letter or both';
  if (typeof input !== 'string' && typeof input !== 'number') return packTypeFault(input, expected);
  const close = closestWord(String(input), CLASS_WORDS);
  const hint = close === undefined ? expected : `\`${close}\` (${expected})`;
  return packFault('unknownWord', `${describeValue(input)} is not a thermal class covered here`, hint);
};

/** Without quotes a file says a number for a class without its letter. */
const insulationClass = z
  .union([z.enum(CLASS_WORDS, { error: noClass }), z.literal([130, 155, 180], { error: noClass })])
  .meta({
    description:
      'Thermal class of the insulation by IEC 60034-1, by number, letter or both: 130 (B), 155 (F) or 180 (H).',
    examples: ['155 (F)', 'F', 155],
  })
  .transform(
    (written): InsulationClass => (typeof written === 'string' ? CLASS_OF_WORD[written] : `${written}`),
  );

const heatCapacity = (about: string, example: string) =>
  quantity(bounds.heatCapacity, { about, example }).optional();

/** The thermal data of the motor as a person writes them. */
export const thermalInput = group('How the motor heats, cools, and what it withstands', {
  insulationClass: insulationClass.optional(),
  ratedRise: quantity(bounds.ratedRise, {
    about: 'Temperature rise of the winding at rated load; a typical one if left out',
    example: '80 K',
  }).optional(),
  ambient: quantity(bounds.temperature, {
    about: 'Temperature of the cooling air',
    example: '40 degC',
    default: `${defaultAmbient} degC`,
  }).optional(),
  altitude: quantity(bounds.altitude, {
    about: 'Height above sea level; up to 1000 m the limits of rise hold unchanged',
    example: '1400 m',
    default: `${defaultAltitude} m`,
  }).optional(),
  lockedRotorTimeCold: quantity(bounds.lockedRotorTime, {
    about:
      'How long the locked rotor is withstood at rated voltage from ambient temperature; not known if left out',
    example: '20 s',
  }).optional(),
  lockedRotorTimeHot: quantity(bounds.lockedRotorTime, {
    about:
      'The same from the temperature of rated load; if neither is stated, the least time that NEMA MG 1 demands',
    example: '12 s',
  }).optional(),
  cageLimit: quantity(bounds.cageTemperature, {
    about:
      'Highest temperature the cage withstands in repeated operation; a typical one, or that of the insulation class of a wound rotor, if left out',
    example: '250 degC',
  }).optional(),
  cageRatedTemperature: quantity(bounds.cageTemperature, {
    about:
      'Temperature of the cage at rated load; from both locked-rotor times, or a typical one, if left out',
    example: '140 degC',
  }).optional(),
  windingHeatCapacity: heatCapacity(
    'Heat capacity of the stator winding; from its losses and a typical current density if left out',
    '3.2 kJ/K',
  ),
  cageHeatCapacity: heatCapacity(
    'Heat capacity of the cage; from the locked-rotor times if left out',
    '1.9 kJ/K',
  ),
  frameHeatCapacity: heatCapacity(
    'Heat capacity of core and frame; from coolingTimeConstant if left out',
    '21 kJ/K',
  ),
  coolingTimeConstant: quantity(bounds.coolingTime, {
    about: 'Thermal time constant of the whole motor while it runs; a typical one if left out',
    example: '35 min',
  }).optional(),
  standstillCooling: ratio(
    'fraction',
    { min: 0, max: 1 },
    {
      about:
        'Heat given off at standstill over that while running, for the same rise; a typical share if left out',
      example: '40 %',
    },
  ).optional(),
  outerCageShare: ratio(
    'fraction',
    { min: 0.01, max: 0.99 },
    {
      about:
        'Only with two stated cages: share of the cage heat capacity that is in the outer one; both are one body if left out',
      example: '45 %',
    },
  ).optional(),
  noLoadStartsPerHour: pureNumber(
    { min: 1, max: 100_000 },
    {
      about: "The maker's permissible number of starts per hour without load and load inertia",
      example: '900',
    },
  ).optional(),
});
