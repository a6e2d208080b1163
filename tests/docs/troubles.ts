import type { ProblemCode, RunStatusCode } from '../../src/index.ts';

/** A piece of the belt's file and what stands in its place; null before it: at the end of the file. */
export type Change = readonly [before: string | null, after: string];

/** What a reader of an error message needs. */
export interface Trouble {
  /** What the code means, one or two sentences. */
  readonly means: string;
  /** What to do. */
  readonly cure: string;
}

/** A trouble with a change of the example that brings it about, shown on the page. */
export interface ShownTrouble extends Trouble {
  readonly changes: readonly Change[];
  /** In words, where the file is no change of the example; '' where none is known. */
  readonly shown?: string;
}

/** What can be wrong with a file. The compiler demands that every code is here. */
export const PROBLEMS: Readonly<Record<ProblemCode, ShownTrouble>> = {
  missingUnit: {
    means: 'A number stands where a quantity is wanted. Units are never guessed.',
    cure: 'Write the unit behind the number. The message gives an example.',
    changes: [['frequency: 50 Hz', 'frequency: 50']],
  },
  wrongUnit: {
    means:
      'The unit does not exist, or measures something else. The classic: `lb` is a mass, so a torque in “lb ft” is refused.',
    cure: 'Use the unit the message proposes; case matters (`mohm` and `Mohm` differ by nine powers of ten).',
    changes: [['torque: 75 N m', 'torque: 55 lb ft']],
  },
  notANumber: {
    means: 'The text does not begin with a number that can be read.',
    cure: 'Write a number with a decimal point; no comma, no thousands separator, no `approx.`.',
    changes: [['closingTime: 18 ms', 'closingTime: 18,5 ms']],
  },
  outOfRange: {
    means: 'The number can be read but cannot be: a negative resistance, a time of an hour for a contact.',
    cure: 'The message states the range. A value just outside is most often a wrong unit (ms for s, mm for m).',
    changes: [['openingTime: 9 ms', 'openingTime: 9 h']],
  },
  unknownKey: {
    means: 'No key of that name exists in this place. Nothing is ever ignored silently.',
    cure: 'The message proposes the nearest name, or lists those of the section. Look at the indentation too: a key may stand one level too high.',
    changes: [['closingTime: 18 ms', 'closeTime: 18 ms']],
  },
  missingKey: {
    means: 'Something that has no sensible default is not there.',
    cure: 'Add it. Where a value is truly unknown, see whether the file may leave out the whole section.',
    changes: [['  frequency: 50 Hz\n', '']],
  },
  wrongType: {
    means: 'A group of keys, a list or a text stands where another of them is wanted.',
    cure: 'Compare with the scenario reference; `{ }` encloses a group, `[ ]` a list.',
    changes: [['    - { resistance: 0.52 ohm, leakage: 1.45 ohm }', '    0.52 ohm']],
  },
  unknownWord: {
    means: 'The key takes one of a few words, and this is none of them.',
    cure: 'Choose one of the words in the message.',
    changes: [['connection: star', 'connection: wye']],
  },
  conflict: {
    means: 'Two statements exclude each other, or one lacks its counterpart.',
    cure: 'Keep one of the two. The message says which statements they are.',
    changes: [['changeoverDelay: 12 ms', 'changeoverDelay: 12 ms\n  deadTime: 21 ms']],
  },
  notSupported: {
    means: 'It is understood, but lies outside what the model covers. No answer is better than a wrong one.',
    cure: 'Leave it out if it is truly not there when the motor is plugged; otherwise another way to study the case is needed.',
    changes: [['machine:\n', 'machine:\n  powerFactorCapacitors: 40 uF\n']],
  },
  duplicateKey: {
    means: 'The same key stands twice in one group; the second would silently replace the first.',
    cure: 'Remove one of them.',
    changes: [['frequency: 50 Hz', 'frequency: 50 Hz\n  frequency: 60 Hz']],
  },
  syntax: {
    means:
      'The text is not YAML: indentation, a colon inside a text, a tabulator, a bracket that is not closed.',
    cure: 'Go to the line and column. Texts that contain a colon want quotation marks; indent with spaces.',
    changes: [['title: Tea-withering belt, 7.5 kW', 'title: Belt: the long one']],
  },
  multipleDocuments: {
    means: 'A line of three hyphens begins a second document in the file.',
    cure: 'One scenario a file: remove the line, or split the file.',
    changes: [[null, '\n---\ntitle: another one\n']],
  },
  yamlFeature: {
    means: 'Anchors, aliases and tags of YAML are not taken: they hide where a value comes from.',
    cure: 'Write the value out where it is wanted.',
    changes: [['frequency: 50 Hz', 'frequency: &mains 50 Hz']],
  },
  schemaVersion: {
    means: 'The file says that it was written for another version of the format.',
    cure: 'Use the program of that version, or bring the file up to date and state the present version.',
    changes: [['title: Tea', 'schemaVersion: 2\ntitle: Tea']],
  },
  empty: {
    means: 'Nothing is in the file, or only comments.',
    cure: '`npm start -- new FILE` writes one to begin with.',
    changes: [],
    shown: 'an empty file',
  },
  notText: {
    means:
      'The bytes are not text in UTF-8: a document of a word processor, a compressed file, another encoding.',
    cure: 'Save it as plain text in UTF-8.',
    changes: [],
    shown: 'a file with a zero byte in it',
  },
  tooLarge: {
    means: 'The file is far longer than any scenario is.',
    cure: 'Most likely it is another file.',
    changes: [],
    shown: 'a file of 300 000 letters',
  },
  tooDeep: {
    means: 'Groups or lists lie in each other more deeply than in any scenario.',
    cure: 'Most likely a bracket is missing, or it is another file.',
    changes: [],
    shown: 'forty opening brackets',
  },
};

/** How a run can end. The compiler demands that every status is here. */
export const STATUSES: Readonly<Record<RunStatusCode, ShownTrouble>> = {
  finished: {
    means: 'Everything the actions asked for has happened.',
    cure: 'Nothing to do.',
    changes: [],
  },
  endTimeReached: {
    means:
      'The end time that the file states came first. The figures up to there hold; what has not happened is left out.',
    cure: 'Leave `solver.endTime` out to let the run go on until all is done.',
    changes: [[null, '\nsolver: { endTime: 2 s }\n']],
  },
  switchNeverOpened: {
    means: 'The run ended while the zero-speed switch still held the reversing contactor in.',
    cure: 'A later end time; or the load keeps the drive above the drop-out speed; or the switch is stuck (a fault in the file).',
    changes: [[null, '\nsolver: { endTime: 1.1 s }\n']],
  },
  notSettled: {
    means: 'The longest run allowed was over and the machine had not come to a steady state.',
    cure: 'The load stalls the motor, or it is far too heavy: look at the torque–speed plane of the report.',
    changes: [
      ['torque: 12 N m, breakaway: 18 N m', 'torque: 400 N m, breakaway: 400 N m'],
      ['  - { at: 1 s, do: plug }\n', ''],
    ],
  },
  lineToLineShortCircuit: {
    means:
      'The reversing contactor touched while the other one’s arc still burned (or a pole was welded): a short circuit between two phases. Nothing after it is simulated.',
    cure: 'A longer dead time; the metric “margin” says how much is missing. For a welded pole only an interlock helps that feels it: mechanical, or break contacts linked to the main poles.',
    changes: [
      ['changeoverDelay: 12 ms', 'changeoverDelay: 0 ms'],
      ['closingTime: 18 ms', 'closingTime: 12 ms'],
    ],
  },
  overspeed: {
    means: 'The load has driven the shaft far beyond synchronous speed.',
    cure: 'A load that pulls needs a holding brake, or a motor that can hold it; look at the sign of the torque.',
    changes: [
      ['- { kind: friction, torque: 12 N m, breakaway: 18 N m }', '- { kind: gravity, torque: 300 N m }'],
    ],
  },
  stepLimit: {
    means: 'The run took more steps than `solver.maxSteps` allows.',
    cure: 'A parameter is extreme (very short time constants: nearly no inertia, nearly no leakage). Otherwise raise `solver.maxSteps`.',
    changes: [[null, '\nsolver: { maxSteps: 100 }\n']],
  },
  nonFiniteValue: {
    means:
      'A value became infinite or not a number. No file is known that leads there; a program can build such a scenario.',
    cure: 'Look for a parameter of zero or of an extreme size; report it with the scenario.',
    changes: [],
    shown: '',
  },
};
