import type { CycleName } from './judgementData.ts';

/** What one operation consists of, as a person writes it. */
export const CYCLE_WORDS = ['start and coast', 'start and plug stop', 'full reversal'] as const;

/** A cycle as written. */
export type CycleWord = (typeof CYCLE_WORDS)[number];

/** The written cycle's name. */
export const CYCLE_OF_WORD: Readonly<Record<CycleWord, CycleName>> = {
  'start and coast': 'startCoast',
  'start and plug stop': 'startPlugStop',
  'full reversal': 'fullReversal',
};

/** How a cycle is written. */
export const WORD_OF_CYCLE: Readonly<Record<CycleName, CycleWord>> = {
  startCoast: 'start and coast',
  startPlugStop: 'start and plug stop',
  fullReversal: 'full reversal',
};
