/** What the command line may touch: injected, so that tests run it without a process. */
export interface CliIo {
  /** Writes data for people or programs. */
  readonly out: (text: string) => void;
  /** Writes messages. */
  readonly err: (text: string) => void;
  /** Folder that relative paths start from. */
  readonly cwd: string;
  /** Colour and bold are welcome. */
  readonly colour: boolean;
  /** Shows a prompt and reads a line; null when the person ends the questions. Absent where nobody is there to ask. */
  readonly ask?: (prompt: string) => Promise<string | null>;
  /** Where a progress bar may be drawn, or its state told now and then. Absent where nobody waits. */
  readonly progress?: NodeJS.WritableStream;
  /**
   * Calls a listener when the person or the system wants the work to end (Ctrl-C); once more, and the process quits. Gives back what
   * ends the listening. Absent where there is no process.
   */
  readonly onInterrupt?: (listener: () => void) => () => void;
}

/**
 * Exit codes of the command line.
 *
 * - done: the run is complete, or the file is in order.
 * - inputError: wrong command, option, file or scenario.
 * - runFailed: the run could not be completed; the status says what happened and when.
 * - notSuitable: what was judged does not pass; what fails is printed.
 * - notJudged: something needed for a judgement is missing; what is missing is printed.
 * - interrupted: ended early by the person or the system; the same command goes on.
 */
export const EXIT = {
  done: 0,
  inputError: 1,
  runFailed: 2,
  notSuitable: 3,
  notJudged: 4,
  interrupted: 5,
} as const;

/** One of the exit codes above. */
export type ExitCode = (typeof EXIT)[keyof typeof EXIT];
