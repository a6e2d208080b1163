import type { MetricKey } from '../../measure/metric.ts';
import { faultsFromIssues, type PathedFault } from '../../scenario/faultsFromIssues.ts';
import { valueAt } from '../../scenario/place.ts';
import { readWhatIsValid } from '../../scenario/readWhatIsValid.ts';
import type { WrittenField } from './readSpread.ts';
import { ASK_WORDS, type AskWord, SURVEY_INPUTS, UNKNOWN_ASK_INPUT } from './surveyInput.ts';

/** The valid parts of a survey file. */
export interface WrittenSurvey {
  readonly title?: string | undefined;
  readonly description?: string | undefined;
  readonly scenario?: string | undefined;
  readonly metrics?: readonly (MetricKey | undefined)[] | undefined;
  readonly verdict?: boolean | undefined;
  readonly seed?: number | undefined;
  readonly runs?: number | undefined;
  readonly samples?: number | undefined;
  readonly sequence?: 'quasi' | 'pseudo' | undefined;
  readonly metric?: MetricKey | undefined;
  readonly seek?: 'smallest' | 'largest' | 'largest magnitude' | undefined;
  readonly vary?: readonly (WrittenField | undefined)[] | undefined;
}

/** What a file says, and what is wrong with its keys one by one. */
export interface Writing {
  /** Undefined where it is missing or no word that is known. */
  readonly ask: AskWord | undefined;
  readonly written: WrittenSurvey;
  readonly faults: readonly PathedFault[];
}

/**
 * Reads the keys of a survey.
 *
 * @param data plain data of the file
 */
export function writtenSurvey(data: unknown): Writing {
  const stated = valueAt(data, ['ask']);
  const ask = ASK_WORDS.find((word) => word === stated);
  const input = ask === undefined ? UNKNOWN_ASK_INPUT : SURVEY_INPUTS[ask];
  const read = input.safeParse(data);
  const faults = read.success ? [] : faultsFromIssues(read.error.issues);
  const valid: unknown = read.success ? read.data : readWhatIsValid(input, data);
  return {
    ask,
    // The one place where the forms of the five definitions are looked at as one.
    written: (valid ?? {}) as WrittenSurvey,
    faults: ask === undefined ? faults : faults.map((fault) => ofAnotherAsk(fault, ask)),
  };
}

/** A key that another survey has is not a slip of the pen. */
function ofAnotherAsk(fault: PathedFault, ask: AskWord): PathedFault {
  const [key] = fault.path;
  if (fault.code !== 'unknownKey' || fault.path.length !== 1 || typeof key !== 'string') return fault;
  const others = ASK_WORDS.filter((word) => Object.hasOwn(SURVEY_INPUTS[word].shape, key));
  if (others.length === 0) return fault;
  const expected = `this key left out, or ${others.map((word) => `\`ask: ${word}\``).join(' or ')}`;
  return { ...fault, message: `has no meaning with \`ask: ${ask}\``, expected };
}
