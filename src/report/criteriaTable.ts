import type { Criterion } from '../assess/criterion.ts';
import type { UnitSystem } from './formatQuantity.ts';
import { judgedQuantity } from './judgedQuantity.ts';
import { leftText } from './judgement/judgedText.ts';
import { CRITERION_LABELS, outcomeWords } from './judgementWords.ts';
import type { TerminalPaint } from './terminalPaint.ts';
import { textTable } from './textTable.ts';

/** The criteria that have an outcome, or must have one, as lines of a table for the terminal; no column is cut. */
export function criteriaTable(
  criteria: readonly Criterion[],
  units: UnitSystem,
  paint: TerminalPaint,
): string[] {
  const shown = criteria.filter(({ outcome, required }) => outcome !== 'notJudged' || required);
  const cells = shown.map((criterion) => {
    const { key, value, limit, limitIs, margin } = criterion;
    const bound = limit === null ? '' : limitIs === 'most' ? '≤ ' : '≥ ';
    return [
      CRITERION_LABELS[key],
      judgedQuantity(criterion, value, units),
      `${bound}${judgedQuantity(criterion, limit, units)}`,
      margin !== null && !Number.isFinite(margin) ? 'no bound' : leftText(criterion, units),
    ];
  });
  const [head = '', ...lines] = textTable([['Criterion', 'value', 'limit', 'margin'], ...cells]);
  return [
    `${head}  outcome`,
    ...lines.map((line, i) => {
      const criterion = shown[i]!;
      return `${line}  ${painted(outcomeWords(criterion), criterion.outcome, paint)}`;
    }),
  ];
}

/** What is not judged and why, one sentence for what bars "suitable" and one for the rest. */
export function notJudgedSentences(criteria: readonly Criterion[]): string[] {
  const open = criteria.filter(({ outcome }) => outcome === 'notJudged');
  return [
    sentence(
      'Missing for a verdict',
      open.filter(({ required }) => required),
    ),
    sentence(
      'Not judged',
      open.filter(({ required }) => !required),
    ),
  ].flat();
}

function sentence(head: string, criteria: readonly Criterion[]): string[] {
  if (criteria.length === 0) return [];
  const reasonOf = ({ remark }: Criterion) => remark.replace(/^not judged because /u, '');
  const reasons = [...new Set(criteria.map(reasonOf))];
  const parts = reasons.map((why) => {
    const labels = criteria.filter((criterion) => reasonOf(criterion) === why);
    return `${labels.map(({ key }) => CRITERION_LABELS[key].toLowerCase()).join(', ')} (${why})`;
  });
  return [`${head}: ${parts.join('; ')}.`];
}

function painted(words: string, outcome: Criterion['outcome'], paint: TerminalPaint): string {
  switch (outcome) {
    case 'pass':
      return paint.good(words);
    case 'close':
    case 'notJudged':
      return paint.doubtful(words);
    case 'fail':
      return paint.alarm(words);
    default:
      return outcome satisfies never;
  }
}
