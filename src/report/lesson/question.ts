import type { MetricKey } from '../../measure/metric.ts';

/** What a class may be asked before it sees the run, in the order of the sheets. */
export const QUESTION_KEYS = [
  'peakCurrent',
  'worstTorque',
  'stopTime',
  'rotorHeat',
  'revolutions',
  'changeOver',
] as const;

/** Name of a question. */
export type QuestionKey = (typeof QUESTION_KEYS)[number];

/** A question, and how an answer to it is given. */
export interface Question {
  readonly key: QuestionKey;
  /** Two or three words, for a heading. */
  readonly name: string;
  readonly sentence: string;
  /** number: a value; choice: one of `CHANGE_OVER_CHOICES`. */
  readonly kind: 'number' | 'choice';
  /** SI unit of the answer; '1' for a ratio or a count. */
  readonly unit: string;
  /** Words after a bare number: "A crest", "× kinetic energy". */
  readonly after: string;
  /** What an answer may be a multiple of. */
  readonly multipleOf: 'ratedCrest' | 'ratedTorque' | null;
  /** True where the sign is part of the answer. */
  readonly signed: boolean;
  /** Metrics that answer it. Of several that the run has, the one that `take` names: the largest by magnitude or the first. */
  readonly answeredBy: readonly MetricKey[];
  readonly take: 'largest' | 'first';
}

/** All questions. */
export const QUESTIONS: Readonly<Record<QuestionKey, Question>> = {
  peakCurrent: {
    key: 'peakCurrent',
    name: 'Peak current',
    sentence:
      'What is the highest current of any phase in this run (crest value, or as a multiple of the crest of the rated current)?',
    kind: 'number',
    unit: 'A',
    after: 'crest',
    multipleOf: 'ratedCrest',
    signed: false,
    answeredBy: ['plugPeakCurrent', 'startPeakCurrent'],
    take: 'largest',
  },
  worstTorque: {
    key: 'worstTorque',
    name: 'Worst torque',
    sentence:
      'What is the largest air-gap torque of this run, with its sign (positive drives forward), or as a multiple of rated?',
    kind: 'number',
    unit: 'N·m',
    after: '',
    multipleOf: 'ratedTorque',
    signed: true,
    answeredBy: ['plugMinimumTorque', 'plugMaximumTorque', 'startMaximumTorque', 'startMinimumTorque'],
    take: 'largest',
  },
  stopTime: {
    key: 'stopTime',
    name: 'Time to stop',
    sentence: 'How long does it take from the parting of the contacts to zero speed?',
    kind: 'number',
    unit: 's',
    after: '',
    multipleOf: null,
    signed: false,
    answeredBy: ['stopTimeFromParting'],
    take: 'first',
  },
  rotorHeat: {
    key: 'rotorHeat',
    name: 'Rotor heat',
    sentence: 'How much heat goes into the rotor, as a multiple of the kinetic energy that the drive had?',
    kind: 'number',
    unit: '1',
    after: '× kinetic energy',
    multipleOf: null,
    signed: false,
    answeredBy: ['reversalRotorHeatMultiple', 'plugRotorHeatMultiple'],
    take: 'first',
  },
  revolutions: {
    key: 'revolutions',
    name: 'Revolutions to stop',
    sentence: 'How many revolutions does the shaft make until it stands?',
    kind: 'number',
    unit: '1',
    after: 'rev',
    multipleOf: null,
    signed: false,
    answeredBy: ['stopRevolutions'],
    take: 'first',
  },
  changeOver: {
    key: 'changeOver',
    name: 'Current at the change-over',
    sentence: 'What does the current do when one contactor hands over to the other?',
    kind: 'choice',
    unit: 's',
    after: '',
    multipleOf: null,
    signed: false,
    answeredBy: ['extinctionToTouch', 'plugPeakCurrent', 'startPeakCurrent'],
    take: 'first',
  },
};

/** What the current can do at the change-over, in words. */
export const CHANGE_OVER_CHOICES = {
  goesOn: 'It goes on without a gap.',
  smaller: 'It falls to zero and comes back with a smaller peak than the start from rest.',
  alike: 'It falls to zero and comes back with about the same peak as the start from rest (within 10 %).',
  larger: 'It falls to zero and comes back with a larger peak than the start from rest.',
} as const;

/** One of the answers to the question about the change-over. */
export type ChangeOverChoice = keyof typeof CHANGE_OVER_CHOICES;

/** True for the name of a question. */
export function isQuestionKey(value: unknown): value is QuestionKey {
  return QUESTION_KEYS.some((key) => key === value);
}

/** True for the name of an answer to the question about the change-over. */
export function isChangeOverChoice(value: unknown): value is ChangeOverChoice {
  return typeof value === 'string' && Object.hasOwn(CHANGE_OVER_CHOICES, value);
}
