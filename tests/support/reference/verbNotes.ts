/** What the page of commands says of a verb beside what the program itself says. */
export interface VerbNote {
  /** What it is for, what it prints and what it writes: whole sentences. */
  readonly does: string;
  /** A command on an example of the project, the words after `npm start --silent --`. */
  readonly example: readonly string[];
  /** How many lines of its output are shown; 0: none, as for one that takes seconds. */
  readonly lines: number;
}

const BELT = 'examples/engineer/may-this-belt-be-plugged.yaml';
const DRUM = 'examples/teacher/what-does-a-full-reversal-cost.yaml';
const SAW = 'examples/teacher/what-happens-after-the-stop-button.yaml';
const NAMEPLATE = 'examples/engineer/what-if-only-the-nameplate-is-known.yaml';
const TIMES = 'examples/engineer/how-long-does-the-belt-take-to-stop.yaml';
const PLAN = 'examples/maintenance-planner/when-are-the-contacts-due.csv';
const LOG = 'examples/maintenance-planner/what-has-the-log-used-up.csv';

/** Every verb by its name. */
export const VERB_NOTES: Readonly<Record<string, VerbNote>> = {
  simulate: {
    does:
      'Runs one scenario from the first action to standstill and prints the figures to decide by. Writes a folder with the report ' +
      '(`report.html`), its figures as SVG, the curves as `trace.csv` and all figures in SI as `summary.json`. The verb may be left out: ' +
      'a file alone is simulated, and without a file a built-in example runs.',
    example: ['simulate', BELT],
    lines: 12,
  },
  suitability: {
    does:
      'Runs the scenario, where contacts are concerned over several closing angles, and judges it: verdict, every criterion with its ' +
      'limit and margin, and the other ways to stop side by side. Writes a calculation note (`suitability.html`), `criteria.csv` and ' +
      '`suitability.json`. What each criterion means stands in [metrics and criteria](metrics-and-criteria.md).',
    example: ['suitability', BELT],
    lines: 16,
  },
  compare: {
    does: 'Judges two scenarios and prints what differs in their inputs, their figures and their criteria. Writes `compare.html`.',
    example: ['compare', BELT, DRUM],
    lines: 0,
  },
  plan: {
    does:
      'Reads a table with one starter a row, works out the wear of each, and says when contacts are due, the most urgent first. ' +
      'Writes the list (`plan.csv`), a report (`plan.html`) and, where something is due, a calendar (`plan.ics`). The day it looks ' +
      'from is never that of the clock, so that the same table gives the same plan.',
    example: ['plan', PLAN],
    lines: 0,
  },
  wear: {
    does:
      'Counts the operations of a log, with the wear of each as the scenario gives it, and prints what is used up and what is left. ' +
      'Writes no files.',
    example: ['wear', BELT, LOG],
    lines: 12,
  },
  survey: {
    does:
      'Makes many runs of one scenario with varied fields on all cores. Writes tables (`survey.csv`, `survey.parquet`), a report ' +
      '(`survey.html`) and a journal, from which the same command goes on after an interruption. A worst case also writes the ' +
      'scenario of the extreme, `worst.yaml`. The keys of such a file stand in the [survey reference](survey-reference.md).',
    example: ['survey', TIMES, '--run', '0'],
    lines: 8,
  },
  merge: {
    does:
      'Joins the journals of all parts that `survey --shard` made, perhaps on several computers, and writes the same tables and ' +
      'report as a survey made in one piece. It refuses a set in which a part is missing, unfinished, there twice or of another survey.',
    example: ['merge', 'reports/part-1', 'reports/part-2', '--out', 'reports/whole'],
    lines: 0,
  },
  check: {
    does:
      'Reads a scenario or a survey and prints everything that is not in order, with line and column, all at once. Runs and writes ' +
      'nothing; of a survey it says how many runs it is.',
    example: ['check', BELT],
    lines: 1,
  },
  new: {
    does:
      'Writes a commented scenario that runs. In a terminal it asks line by line for what no option says (Enter: not known); ' +
      'elsewhere, or with `--no-questions`, what no option says is not known. Power, voltage, frequency and either speed or ' +
      'number of poles are needed. Ending the questions early writes nothing.',
    example: [
      'new',
      ...['--power', '7.5 kW', '--voltage', '400 V', '--frequency', '50 Hz', '--speed', '1455 rpm'],
    ],
    lines: 8,
  },
  motor: {
    does:
      'Prints circuit, operating points and curves of torque and current of the motor alone, and what the circuit gives beside what ' +
      'the nameplate says. Writes the curves as `motor.svg`.',
    example: ['motor', NAMEPLATE],
    lines: 12,
  },
  interlocks: {
    does:
      'Goes through every state that the control circuit can reach, healthy and with each failing device, and prints which ' +
      'properties hold and the shortest way to break the others. Writes no files.',
    example: ['interlocks', SAW],
    lines: 8,
  },
  sheet: {
    does:
      'Simulates the standard set of tests for this starter and writes the sheet to fill in beside the machine, as `sheet.html` and ' +
      '`sheet.csv`. Tests on a machine are work for licensed people under local rules; the sheet replaces neither.',
    example: ['sheet', SAW],
    lines: 6,
  },
  lab: {
    does:
      'Writes a laboratory procedure for a motor set: step by step what is done, what each reading should be and how far off it may ' +
      'be. Writes `laboratory.html` and `laboratory.csv`, with `--blank` without the predictions, under names of their own. Whoever ' +
      'is responsible for the laboratory decides what is done in it; local rules come first.',
    example: ['lab', 'examples/teacher/what-should-the-laboratory-set-show.yaml'],
    lines: 0,
  },
  wiring: {
    does:
      'Draws power circuit and control circuit with terminal marks as SVG. A drawing shows the scheme that is simulated; it is no ' +
      'installation drawing.',
    example: ['wiring', SAW],
    lines: 1,
  },
  schema: {
    does: 'Prints the JSON Schema of scenario or survey files. An editor that knows it completes keys and marks mistakes while one writes.',
    example: ['schema', 'survey'],
    lines: 6,
  },
};
