import type { InitialState } from './scenario.ts';

/** Initial states as a person writes them. */
export const INITIAL_WORDS = ['rest', 'running forward', 'running reverse'] as const;

/** The written state's name. */
export const INITIAL_STATES: Readonly<Record<(typeof INITIAL_WORDS)[number], InitialState>> = {
  rest: 'rest',
  'running forward': 'runningForward',
  'running reverse': 'runningReverse',
};
