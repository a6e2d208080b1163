import { bounds } from './bounds.ts';
import { CYCLE_WORDS } from './cycleWords.ts';
import { day } from './dayInput.ts';
import { group, pureNumber, quantity, word } from './field.ts';
import { ratio } from './ratioField.ts';

/** The duty as a person writes it. */
export const dutyInput = group('How often the starter works, and at what', {
  cycle: word(CYCLE_WORDS, {
    about: 'What one operation consists of',
    default: 'start and plug stop',
  }).optional(),
  operationsPerHour: pureNumber(
    { min: 0.001, max: 100_000 },
    { about: 'Operations per hour while the drive is in use', example: '30' },
  ).optional(),
  operationsPerDay: pureNumber(
    { min: 0.001, max: 1_000_000 },
    { about: 'Operations per calendar day on average', example: '400' },
  ).optional(),
  runningTime: quantity(bounds.runningTime, {
    about:
      'From the end of a start to the stopping command, under load. Not together with cyclicDurationFactor',
    example: '25 s',
  }).optional(),
  cyclicDurationFactor: ratio(
    'fraction',
    { min: 0, aboveMin: true, max: 1 },
    {
      about: 'Running, start and stop included, over the whole cycle. Not together with runningTime',
      example: '40 %',
    },
  ).optional(),
  pluggingShare: ratio(
    'fraction',
    { min: 0, max: 1 },
    {
      about:
        'Share of all operations that are stopped by plugging; if left out, what inching leaves, or none where the cycle is start and coast',
      example: '70 %',
    },
  ).optional(),
  inchingShare: ratio(
    'fraction',
    { min: 0, max: 1 },
    { about: 'Share of all operations that are inching', example: '10 %', default: '0 %' },
  ).optional(),
  contactsChanged: day('Day of the last change of contacts').optional(),
  operationsSince: pureNumber(
    { min: 0, max: 1_000_000_000 },
    { about: 'Operations since the last change of contacts, as a counter shows them', example: '86000' },
  ).optional(),
});
