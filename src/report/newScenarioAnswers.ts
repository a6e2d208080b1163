/** Keys of what a new scenario is made of. */
export type NewScenarioKey =
  | 'title'
  | 'power'
  | 'voltage'
  | 'frequency'
  | 'speed'
  | 'poles'
  | 'connection'
  | 'current'
  | 'powerFactor'
  | 'efficiency'
  | 'lockedRotorCurrent'
  | 'codeLetter'
  | 'lockedRotorTorque'
  | 'breakdownTorque'
  | 'design'
  | 'inertia'
  | 'loadInertia'
  | 'load'
  | 'loadTorque'
  | 'loadSpeed'
  | 'gearRatio'
  | 'gearEfficiency'
  | 'closingTime'
  | 'openingTime'
  | 'deadTime'
  | 'switchOffSpeed'
  | 'plugAt';

/** Answers as they will stand in the file: text with its unit, a word, or a plain number; absent: not known. */
export type NewScenarioAnswers = Readonly<Partial<Record<NewScenarioKey, string | number>>>;

/** What a scenario cannot be written without; a speed or a number of poles comes on top. */
export const NEEDED_ANSWERS = ['power', 'voltage', 'frequency'] as const satisfies readonly NewScenarioKey[];

/** Answers with everything needed among them. */
export type SufficientAnswers = NewScenarioAnswers &
  Readonly<Record<(typeof NEEDED_ANSWERS)[number], string>>;
