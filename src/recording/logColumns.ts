import type { WearEvent } from '../assess/wear/contactWearTypes.ts';

/** A column of a log of operations. */
export interface LogColumn {
  /** Names a header may have, the best one first. */
  readonly names: readonly [string, ...string[]];
  /** What its cells say, as a sentence. */
  readonly meaning: string;
  /** Cells that are right. */
  readonly examples: readonly string[];
}

/** A kind of operation of a log. */
export interface LogOperation {
  /** Words for it, the best one first. */
  readonly words: readonly [string, ...string[]];
  /** What one line with it counts, as a sentence. */
  readonly meaning: string;
}

/** The columns that a log must have. */
export const LOG_COLUMNS = {
  time: {
    names: ['time', 'date', 'timestamp'],
    meaning: 'When: a day, or a day with a time of day, with or without its offset from universal time.',
    examples: ['2026-03-31', '2026-03-31T14:05:09', '2026-03-31 14:05', '2026-03-31T14:05:09+02:00'],
  },
  operation: {
    names: ['operation', 'kind', 'kind of operation'],
    meaning: 'What the starter did; a start and the stop after it are two lines.',
    examples: ['start', 'plug stop'],
  },
} as const satisfies Readonly<Record<string, LogColumn>>;

/** The kinds of operation; the compiler names one that is missing. */
export const LOG_OPERATIONS: Readonly<Record<WearEvent, LogOperation>> = {
  start: { words: ['start'], meaning: 'A contactor makes with the motor at rest.' },
  stop: { words: ['coast', 'stop'], meaning: 'It breaks the running current; the motor coasts.' },
  plugStop: {
    words: ['plug stop', 'plug'],
    meaning:
      'It breaks the running current, the other one makes against the rotation and breaks when the motor is near rest.',
  },
  reversal: {
    words: ['reversal'],
    meaning:
      'It breaks the running current, the other one makes against the rotation and stays in: the motor runs the other way.',
  },
  inch: {
    words: ['inch', 'jog'],
    meaning: 'A contactor makes and breaks the current of the motor at rest; one line for both.',
  },
};
