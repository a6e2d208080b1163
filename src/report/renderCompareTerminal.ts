import type { Criterion, CriterionKey } from '../assess/criterion.ts';
import { CRITERION_KEYS } from '../assess/criterion.ts';
import { comparedMetrics } from './comparedMetrics.ts';
import { differingInputs } from './differingInputs.ts';
import { cutToWidth, wrapToWidth } from './displayWidth.ts';
import type { UnitSystem } from './formatQuantity.ts';
import { judgedQuantity } from './judgedQuantity.ts';
import { CRITERION_LABELS, outcomeWords } from './judgementWords.ts';
import { cleanText } from './plainText.ts';
import type { ComparedJudgement } from './renderCompareHtml.ts';
import { statusLine } from './statusLine.ts';
import { terminalPaint } from './terminalPaint.ts';
import { textTable } from './textTable.ts';

/** Columns no line exceeds, and those of a path and of a written value. */
const WIDTH = 80;
const PATH_WIDTH = 40;
const WRITTEN_WIDTH = 18;

/** Two judgements side by side, for the terminal: verdicts, inputs that differ, figures, criteria. */
export function renderCompareTerminal(
  a: ComparedJudgement,
  b: ComparedJudgement,
  options: { readonly units: UnitSystem; readonly colour: boolean },
): string {
  const { units, colour } = options;
  const paint = terminalPaint(colour);
  const wrap = (text: string) => wrapToWidth(cleanText(text), WIDTH);
  return `${[
    ...headLines('A', a).flatMap((line, i) => (i === 0 ? wrap(line).map(paint.strong) : wrap(line))),
    ...headLines('B', b).flatMap((line, i) => (i === 0 ? wrap(line).map(paint.strong) : wrap(line))),
    '',
    ...inputLines(a, b),
    '',
    ...textTable([
      ['Figure', 'A', 'B', 'B against A'],
      ...comparedMetrics(a, b, units).map(({ label, a: one, b: other, difference }) => [
        label,
        one,
        other,
        difference,
      ]),
    ]),
    '',
    ...criteriaLines(a, b, units),
  ].join('\n')}\n`;
}

function headLines(letter: string, { name, judged: { result, suitability } }: ComparedJudgement): string[] {
  return [
    `${letter}: ${result.scenario.title} (${name})`,
    ...(result.usable ? [] : [statusLine(result)]),
    suitability.verdict.sentence,
  ];
}

function inputLines(a: ComparedJudgement, b: ComparedJudgement): string[] {
  const differing = differingInputs(
    { scenario: a.judged.result.scenario, origins: a.origins },
    { scenario: b.judged.result.scenario, origins: b.origins },
  );
  if (differing.length === 0) return ['No input differs.'];
  const written = (words: string | null) =>
    cutToWidth(words === null ? '—' : cleanText(words), WRITTEN_WIDTH);
  return textTable([
    ['Input that differs', 'A', 'B'],
    ...differing.map(({ path, a: one, b: other }) => [
      cutToWidth(cleanText(path), PATH_WIDTH),
      written(one),
      written(other),
    ]),
  ]);
}

function criteriaLines(a: ComparedJudgement, b: ComparedJudgement, units: UnitSystem): string[] {
  const [inA, inB] = [byKey(a), byKey(b)];
  const judgedInOne = (key: CriterionKey) =>
    [inA.get(key), inB.get(key)].some(
      (criterion) => criterion !== undefined && criterion.outcome !== 'notJudged',
    );
  const cells = (criterion: Criterion | undefined) =>
    criterion === undefined
      ? ['—', '']
      : [judgedQuantity(criterion, criterion.value, units), outcomeWords(criterion)];
  return textTable([
    ['Criterion', 'A', '', 'B', ''],
    ...CRITERION_KEYS.filter(judgedInOne).map((key) => [
      CRITERION_LABELS[key],
      ...cells(inA.get(key)),
      ...cells(inB.get(key)),
    ]),
  ]);
}

function byKey({ judged: { suitability } }: ComparedJudgement): ReadonlyMap<CriterionKey, Criterion> {
  return new Map(suitability.criteria.map((criterion) => [criterion.key, criterion]));
}
