import type { RowShape } from '../recording/journalLine.ts';
import type { Survey } from '../survey/spec/survey.ts';
import { MOST_RUNS } from '../survey/spec/surveyCost.ts';
import { fingerprint } from './fingerprint.ts';
import { type Shard, shardText } from './shard.ts';

/** Version of the journal's format. */
export const JOURNAL_FORMAT = 1;
/** First word of every journal: no other file begins like this. */
const KIND = 'countertorque survey journal';

/** First line of a journal: whose rows follow. */
export interface JournalHeader {
  /** Version of the program that made the rows. */
  readonly program: string;
  readonly fingerprint: string;
  /** Runs of the whole survey; for a search the most it may make. */
  readonly count: number;
  readonly shard: Shard;
  /** The survey itself, so that tables can be made from the journal alone. */
  readonly survey: Survey;
}

/** The header as one line of JSON without a line break. */
export function lineOfHeader(header: JournalHeader): string {
  return JSON.stringify({ kind: KIND, format: JOURNAL_FORMAT, ...header });
}

/**
 * Reads what {@link lineOfHeader} wrote.
 *
 * @returns the header, or in words what else the line is
 */
export function headerOfLine(line: string): JournalHeader | string {
  let read: unknown;
  try {
    read = JSON.parse(line);
  } catch {
    return 'it is no journal of a survey';
  }
  if (typeof read !== 'object' || read === null || !('kind' in read) || read.kind !== KIND)
    return 'it is no journal of a survey';
  const { format, ...rest } = read as { format?: unknown } & Partial<JournalHeader>;
  if (format !== JOURNAL_FORMAT) return `its format is ${format}; this program writes ${JOURNAL_FORMAT}`;
  return isWhole(rest) ? rest : 'its first line is damaged';
}

/** How many figures each row has. */
export function shapeOf({ fields, metrics }: Survey): RowShape {
  return { fields: fields.length, metrics: metrics.length };
}

/** What sets two journals apart, in words; empty where one goes on with the other. */
export function differences(found: JournalHeader, wanted: JournalHeader): string[] {
  const list: string[] = [];
  if (found.program !== wanted.program)
    list.push(`it is of version ${found.program} of the program, not ${wanted.program}`);
  if (found.fingerprint !== wanted.fingerprint) list.push(...surveyDifferences(found.survey, wanted.survey));
  const [theirs, ours] = [shardText(found.shard), shardText(wanted.shard)];
  if (theirs !== ours) list.push(`it is of shard ${theirs}, not ${ours}`);
  return list;
}

const PARTS = [
  ['fields', 'the fields or their values'],
  ['metrics', 'the metrics'],
  ['verdict', 'whether a verdict is taken down'],
  ['seed', 'the seed'],
  ['task', 'the question or its number of runs'],
] as const;

function surveyDifferences(found: Survey, wanted: Survey): string[] {
  const other = PARTS.filter(
    ([key]) => fingerprint({ ...wanted, [key]: found[key] }) !== fingerprint(wanted),
  );
  const words: string[] = other.map(([, what]) => what);
  if (found.base.text !== wanted.base.text) words.unshift("the scenario's text");
  return [`it is of another survey: ${words.join(', ')} changed`];
}

function isWhole(header: Partial<JournalHeader>): header is JournalHeader {
  const { program, count, shard, survey } = header;
  if (typeof program !== 'string' || !isCount(count, 1) || count > MOST_RUNS) return false;
  if (!isCount(shard?.of, 1) || !isCount(shard?.index, 0) || shard.index >= shard.of || shard.of > count)
    return false;
  try {
    // Covers the survey: a changed digit gives another fingerprint.
    return survey !== undefined && fingerprint(survey) === header.fingerprint;
  } catch {
    return false;
  }
}

function isCount(value: unknown, least: number): value is number {
  return Number.isSafeInteger(value) && (value as number) >= least;
}
