import { wrapToWidth } from '../report/displayWidth.ts';
import { EXIT, type ExitCode } from './io.ts';

/** What an exit code says, for all verbs or for some. */
export interface ExitMeaning {
  /** Verbs that leave with it for this reason; `all`: every verb. */
  readonly verbs: readonly string[] | 'all';
  /** In words, without a full stop. */
  readonly means: string;
}

/** What each exit code means: read by `--help` and by the page of commands. */
export const EXIT_MEANINGS: Readonly<Record<ExitCode, readonly ExitMeaning[]>> = {
  [EXIT.done]: [
    { verbs: 'all', means: 'done' },
    { verbs: ['suitability'], means: 'suitable' },
    { verbs: ['interlocks'], means: 'every property holds' },
  ],
  [EXIT.inputError]: [
    { verbs: 'all', means: 'wrong command, file or scenario (what is wrong is on stderr)' },
  ],
  [EXIT.runFailed]: [
    {
      verbs: ['simulate', 'suitability', 'compare'],
      means:
        'the run could not be completed, or its energy balance does not close (the status says what happened)',
    },
    { verbs: ['wear'], means: 'the wear of an operation is not known: no run ended well' },
    {
      verbs: ['survey'],
      means: 'a search found no run to be used, or one that does not repeat; or no thread can work',
    },
  ],
  [EXIT.notSuitable]: [
    { verbs: ['suitability'], means: 'not suitable' },
    { verbs: ['interlocks'], means: 'a property of the control circuit of FILE does not hold' },
  ],
  [EXIT.notJudged]: [
    { verbs: ['suitability'], means: 'could not be judged, because something needed is missing' },
  ],
  [EXIT.interrupted]: [{ verbs: ['survey'], means: 'interrupted; the same command goes on with it' }],
};

/** Columns of a line of help. */
const WIDTH = 80;
const INDENT = ' '.repeat(5);

/** The exit codes for the end of `--help`, at most 80 columns wide. */
export function exitHelp(): string {
  const codes = Object.entries(EXIT_MEANINGS).map(([code, meanings]) => {
    const text = meanings.map(({ verbs, means }) =>
      verbs === 'all' ? means : `${verbs.join(', ')}: ${means}`,
    );
    return `  ${code}  ${wrapToWidth(text.join('; '), WIDTH - INDENT.length).join(`\n${INDENT}`)}\n`;
  });
  return `\nExit codes:\n${codes.join('')}`;
}
