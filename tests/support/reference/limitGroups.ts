import type { STANDARD_LIMITS } from '../../../src/assess/standardLimits.ts';

/** What each limit of the judgement serves: the headings of the page, in order. */
export const LIMIT_GROUPS = {
  heat: 'Heat of the motor',
  contactor: 'What a contactor makes and breaks',
  life: 'Life of contacts',
  stop: 'The stop itself',
  shaft: 'Shaft and load',
} as const;

/** The group of every limit; the compiler names one that is missing. */
export const GROUP_OF_LIMIT: Readonly<Record<keyof typeof STANDARD_LIMITS, keyof typeof LIMIT_GROUPS>> = {
  rise130: 'heat',
  rise155: 'heat',
  rise180: 'heat',
  referenceAmbient: 'heat',
  referenceAltitude: 'heat',
  altitudeStep: 'heat',
  coldestAmbient: 'heat',
  hottestAmbient: 'heat',
  highestAltitude: 'heat',
  stallTime: 'heat',
  makingAc3: 'contactor',
  makingAc4: 'contactor',
  testPowerFactor: 'contactor',
  testPowerFactorLarge: 'contactor',
  testPowerFactorStep: 'contactor',
  breakingAc3: 'contactor',
  breakingAc4: 'contactor',
  plugDutyPerMinute: 'contactor',
  plugDutyPerTenMinutes: 'contactor',
  durabilityMakeMultiple: 'life',
  durabilityBreakAc3: 'life',
  durabilityVoltageAc3: 'life',
  durabilityBreakAc4: 'life',
  durabilityVoltageAc4: 'life',
  genericLifeAc3: 'life',
  genericLifeAc4: 'life',
  lifeScatterStated: 'life',
  lifeScatterGeneric: 'life',
  stopsEndedOtherwise: 'stop',
  leastArcMargin: 'stop',
  longestArc: 'stop',
  torsionalStep: 'shaft',
  gravity: 'shaft',
};
