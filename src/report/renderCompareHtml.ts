import type { Criterion } from '../assess/criterion.ts';
import type { Metric } from '../measure/metric.ts';
import type { Origin } from '../scenario/origin.ts';
import { CAUTIONS } from './cautions.ts';
import { againstFirst } from './comparedMetrics.ts';
import { differingInputs } from './differingInputs.ts';
import { isReported } from './elements.ts';
import { formatMetric } from './formatMetric.ts';
import type { UnitSystem } from './formatQuantity.ts';
import { judgedQuantity } from './judgedQuantity.ts';
import type { JudgedRun } from './judgedRun.ts';
import { capital } from './judgement/judgedText.ts';
import { type LabelledCell, labelledTable } from './judgement/labelledTable.ts';
import { notePage } from './judgement/notePage.ts';
import { outcomeMark, outcomeText } from './judgement/outcomeMark.ts';
import { list, paragraph } from './markup.ts';
import { METRIC_GROUPS, type MetricLabel } from './metricLabels.ts';
import { escapeMarkup } from './plainText.ts';

/** One of two judgements set side by side. */
export interface ComparedJudgement {
  /** What it is called in the heads of the tables: as a rule the name of its file. */
  readonly name: string;
  readonly judged: JudgedRun;
  /** Where each input comes from. */
  readonly origins: readonly Origin[];
}

/** How a comparison is written. */
export interface CompareOptions {
  readonly units: UnitSystem;
  /** Version of the program. */
  readonly version: string;
}

const VERDICT_FORM = { suitable: 'pass', notSuitable: 'fail', notJudged: 'open' } as const;

/** Two judgements side by side as one HTML file: verdicts, inputs that differ, criteria, figures with their difference. */
export function renderCompareHtml(
  a: ComparedJudgement,
  b: ComparedJudgement,
  { units, version }: CompareOptions,
): string {
  return notePage({
    title: `${a.name} and ${b.name} side by side`,
    footer: 'two scenarios side by side',
    version,
    body: [
      `<section><header style="padding-inline:0"><p class="kind">Two scenarios side by side</p>
<h1>${escapeMarkup(a.name)} and ${escapeMarkup(b.name)}</h1></header>
${verdictMarkup('A', a)}
${verdictMarkup('B', b)}
${paragraph(CAUTIONS.join(' '), 'cautions')}
</section>`,
      inputsTable(a, b),
      criteriaSection(a, b, units),
      metricsSection(a, b, units),
    ],
  });
}

function verdictMarkup(letter: string, { name, judged: { result, suitability } }: ComparedJudgement): string {
  const { outcome, sentence, reservations } = suitability.verdict;
  return `<h2>${letter}: ${escapeMarkup(result.scenario.title)}</h2>
${paragraph(name, 'muted')}
<p class="finding verdict">${outcomeMark(VERDICT_FORM[outcome])}<span>${escapeMarkup(sentence)}</span></p>
${list(reservations)}`;
}

function inputsTable(a: ComparedJudgement, b: ComparedJudgement): string {
  const of = ({ judged, origins }: ComparedJudgement) => ({ scenario: judged.result.scenario, origins });
  const rows = differingInputs(of(a), of(b)).map((input) => [
    { text: input.path },
    { text: input.a ?? 'not stated' },
    { text: input.b ?? 'not stated' },
  ]);
  return `<section><h2>Inputs that differ</h2>
${
  rows.length === 0
    ? paragraph('Both scenarios state the same.')
    : labelledTable({
        caption: 'As written in the scenario or filled in',
        head: [
          { text: 'Input', width: 40 },
          { text: 'A', width: 30 },
          { text: 'B', width: 30 },
        ],
        rows,
      })
}
</section>`;
}

function criteriaSection(a: ComparedJudgement, b: ComparedJudgement, units: UnitSystem): string {
  const others = new Map(b.judged.suitability.criteria.map((criterion) => [criterion.key, criterion]));
  const rows = a.judged.suitability.criteria.map((criterion): LabelledCell[] => {
    const other = others.get(criterion.key);
    return [
      { text: capital(criterion.name) },
      ...criterionCells(criterion, units),
      ...(other === undefined ? [{ text: 'not judged', span: 2 }] : criterionCells(other, units)),
    ];
  });
  return `<section><h2>Criteria</h2>
${labelledTable({
  caption: 'Value and limit, and what comes of them',
  head: [
    { text: 'Criterion', width: 24 },
    { text: 'A: value', number: true, width: 15 },
    { text: 'A: outcome', width: 23 },
    { text: 'B: value', number: true, width: 15 },
    { text: 'B: outcome', width: 23 },
  ],
  rows,
})}
</section>`;
}

function criterionCells(criterion: Criterion, units: UnitSystem): LabelledCell[] {
  const { value, limit, limitIs } = criterion;
  const { form, words } = outcomeText(criterion);
  const bound =
    limit === null
      ? {}
      : { note: `${limitIs === 'most' ? 'at most' : 'at least'} ${judgedQuantity(criterion, limit, units)}` };
  return [
    { text: judgedQuantity(criterion, value, units), number: true, ...bound },
    { text: words, mark: form },
  ];
}

function metricsSection(a: ComparedJudgement, b: ComparedJudgement, units: UnitSystem): string {
  const [one, other] = [a.judged.result, b.judged.result];
  const tables = METRIC_GROUPS.map(({ title, rows }) => {
    const shown = rows.filter(({ key }) => isReported(one, key) || isReported(other, key));
    return shown.length === 0
      ? ''
      : labelledTable({
          caption: title,
          head: [
            { text: 'Quantity', width: 40 },
            { text: 'A', number: true, width: 20 },
            { text: 'B', number: true, width: 20 },
            { text: 'Difference', number: true, width: 20 },
          ],
          rows: shown.map((label) =>
            metricRow(label, one.metrics[label.key], other.metrics[label.key], units),
          ),
        });
  });
  return `<section><h2>Figures</h2>
${tables.filter((markup) => markup !== '').join('\n')}
${paragraph('Difference: B less A; in brackets as a share of A, or how many times A where it is ten times and more. A dash: not in that run.', 'muted')}
</section>`;
}

function metricRow(label: MetricLabel, a: Metric, b: Metric, units: UnitSystem): LabelledCell[] {
  return [
    { text: label.label },
    { text: formatMetric(a, label, units), number: true },
    { text: formatMetric(b, label, units), number: true },
    { text: differenceText(label, a, b, units), number: true },
  ];
}

function differenceText(label: MetricLabel, a: Metric, b: Metric, units: UnitSystem): string {
  if (a.value === null || b.value === null) return '—';
  const value = b.value - a.value;
  if (value === 0) return 'none';
  const { multiple: _, ...metric } = a;
  const { suffix: __, ...bare } = label;
  const text = formatMetric({ ...metric, value }, bare, units);
  const signed = value > 0 ? `+${text}` : text;
  // A share of a share would be read as its difference; an angle is counted from a zero that is a convention.
  return a.value === 0 || label.percent === true || a.unit === 'rad'
    ? signed
    : `${signed} (${againstFirst(a.value, b.value)})`;
}
