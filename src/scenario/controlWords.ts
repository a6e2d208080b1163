import type { SchemeName } from './starterData.ts';

/** The schemes as a person writes them. */
export const SCHEME_WORDS = [
  'reversing through stop',
  'reversing directly',
  'plug to stop',
  'plug to stop both directions',
  'anti-plugging',
  'inching',
] as const;

/** A scheme as written. */
export type SchemeWord = (typeof SCHEME_WORDS)[number];

/** The written scheme's name. */
export const SCHEME_OF_WORD: Readonly<Record<SchemeWord, SchemeName>> = {
  'reversing through stop': 'throughStop',
  'reversing directly': 'direct',
  'plug to stop': 'plugStop',
  'plug to stop both directions': 'plugStopBoth',
  'anti-plugging': 'antiPlugging',
  inching: 'jog',
};

/** How a scheme is written. */
export const WORD_OF_SCHEME: Readonly<Record<SchemeName, SchemeWord>> = {
  throughStop: 'reversing through stop',
  direct: 'reversing directly',
  plugStop: 'plug to stop',
  plugStopBoth: 'plug to stop both directions',
  antiPlugging: 'anti-plugging',
  jog: 'inching',
};

/** True for the schemes that brake with the opposite contactor until the zero-speed switch opens. */
export function brakes(scheme: SchemeName): boolean {
  return scheme === 'plugStop' || scheme === 'plugStopBoth' || scheme === 'jog';
}
