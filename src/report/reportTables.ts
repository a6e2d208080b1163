import type { RunResult } from '../measure/result.ts';
import type { Origin, OriginKind } from '../scenario/origin.ts';
import { isReported } from './elements.ts';
import { eventSentence } from './eventSentence.ts';
import { formatMetric, formatMetricMultiple } from './formatMetric.ts';
import { formatInstant, formatNumber, formatQuantity, type UnitSystem } from './formatQuantity.ts';
import { inputGroups } from './inputRows.ts';
import { ledgerRows } from './ledgerRows.ts';
import { type Cell, groupedTable, paragraph, table } from './markup.ts';
import { METRIC_GROUPS, type MetricLabel } from './metricLabels.ts';
import { RATED_WORDS } from './ratedWords.ts';

/** Events listed in full; a run with more is a survey, not a note. */
const MOST_EVENTS = 200;

/** What the run was computed with. */
export function inputTables(result: RunResult, units: UnitSystem): string {
  const tables = inputGroups(result.scenario, units)
    .map((group) =>
      table({
        caption: group.title,
        head: [{ text: 'Quantity' }, { text: 'Value' }],
        rows: group.rows.map((row) => [{ text: row.label }, { text: row.value, className: 'wide-word' }]),
      }),
    )
    .join('\n');
  return `<div class="inputs">${tables}</div>`;
}

/** Where every input comes from, as it was written. */
export function originTable(origins: readonly Origin[]): string {
  const rows = origins
    .filter((origin) => origin.path !== 'title' && origin.path !== 'description')
    .map((origin): Cell[] => [
      { text: origin.path, className: 'wide-word' },
      { text: origin.value, className: 'wide-word' },
      {
        text: origin.source === undefined ? origin.origin : withWord(origin.origin, origin.source),
        className: 'wide-word',
      },
    ]);
  const used = Object.entries(ORIGIN_WORDS).filter(([kind]) => origins.some(({ origin }) => origin === kind));
  return (
    table({
      folded: true,
      caption: 'Origin of every input, as written in the scenario or filled in',
      head: [{ text: 'Input' }, { text: 'As written' }, { text: 'Origin' }],
      rows,
    }) + paragraph(`Origins: ${used.map(([kind, words]) => `${kind}: ${words}`).join('; ')}.`, 'muted')
  );
}

/** What each word of origin means. */
const ORIGIN_WORDS: Readonly<Record<OriginKind, string>> = {
  given: 'stands in the scenario',
  default: 'not stated, the documented default holds',
  assumed: 'not stated, a typical value stands in',
  derived: 'computed from given values',
  standard: 'not stated, taken from the table of a standard',
  estimated: 'found by fitting a circuit to a nameplate or to tests',
};

/** The base of all multiples. */
export function ratedTable(result: RunResult, units: UnitSystem): string {
  const { rated } = result;
  const show = (value: number | null, unit: string) => formatQuantity(value, unit, { system: units });
  const rows: Cell[][] = [
    [
      { text: 'Current at rated output, r.m.s.' },
      { text: show(rated.current, 'A'), className: 'number' },
      { text: RATED_WORDS[rated.currentOrigin] },
    ],
    [
      { text: 'The same, crest' },
      { text: show(Math.SQRT2 * rated.current, 'A'), className: 'number' },
      { text: '√2 × the r.m.s. value' },
    ],
    [
      { text: 'Torque at rated output' },
      { text: show(rated.torque, 'N·m'), className: 'number' },
      { text: RATED_WORDS[rated.torqueOrigin] },
    ],
    [
      { text: 'Speed at rated output' },
      { text: show(rated.speed, 'rad/s'), className: 'number' },
      { text: '' },
    ],
  ];
  return table({
    caption: 'Base of the multiples',
    head: [{ text: 'Quantity' }, { text: 'Value', className: 'number' }, { text: 'Origin' }],
    rows,
  });
}

/** Every metric that the run contains, with the reason for those it does not contain. */
export function metricTables(result: RunResult, units: UnitSystem): string {
  const head: Cell[] = [
    { text: 'Quantity' },
    { text: 'Value', className: 'number' },
    { text: 'Multiple' },
    { text: 'At' },
    { text: 'Phase' },
    { text: 'Definition' },
  ];
  const row = (label: MetricLabel): Cell[] => {
    const metric = result.metrics[label.key];
    const missing = metric.value === null ? ` Not in this run: ${metric.missing ?? 'no reason stated'}.` : '';
    return [
      { text: label.label },
      { text: formatMetric(metric, label, units), className: 'number' },
      { text: formatMetricMultiple(metric), className: 'words' },
      { text: metric.time === undefined ? '' : formatInstant(metric.time), className: 'at' },
      { text: metric.phase ?? '', className: 'phase' },
      { text: `${metric.definition}${missing}`, className: 'words' },
    ];
  };
  return groupedTable({
    caption: 'All figures of the run',
    head,
    groups: METRIC_GROUPS.map((group) => ({
      title: group.title,
      rows: group.rows.filter(({ key }) => isReported(result, key)).map(row),
    })).filter((group) => group.rows.length > 0),
  });
}

/** Everything discrete that happened, in order. */
export function eventTable(result: RunResult, units: UnitSystem = 'SI'): string {
  const { events } = result.trajectory;
  const more = events.length > MOST_EVENTS ? `, the first ${MOST_EVENTS} of ${events.length}` : '';
  return table({
    folded: true,
    caption: `What happened when${more}`,
    head: [{ text: 'Time', className: 'at' }, { text: 'Event' }],
    rows: events
      .slice(0, MOST_EVENTS)
      .map((event) => [
        { text: formatInstant(event.t), className: 'at' },
        { text: eventSentence(event, units) },
      ]),
  });
}

/** The energy ledger with its residual. */
export function ledgerTable(result: RunResult, units: UnitSystem): string {
  const { ledger } = result;
  const show = (value: number) => formatQuantity(value, 'J', { system: units });
  return table({
    caption: 'Energy over the whole run',
    head: [{ text: 'Term' }, { text: 'Energy', className: 'number' }],
    rows: [
      ...ledgerRows(result).map((row): Cell[] => [
        { text: row.label },
        { text: show(row.value), className: 'number' },
      ]),
      [{ text: 'Throughput: sum of all magnitudes' }, { text: show(ledger.throughput), className: 'number' }],
      [
        { text: 'Residual: larger error of both balances over the throughput' },
        { text: formatNumber(ledger.residual), className: 'number' },
      ],
    ],
  });
}

/** How the run was integrated. */
export function accuracyTable(result: RunResult): string {
  const { stats, segments } = result.trajectory;
  const frames = [...new Set(segments.map((segment) => segment.frame))].join('; ');
  const rows: [string, string][] = [
    ['Relative tolerance', formatNumber(result.scenario.solver.relativeTolerance)],
    ['Integration steps', formatNumber(stats.steps)],
    ['Evaluations of the right-hand side', formatNumber(stats.evaluations)],
    ['Stretches between switchings', String(segments.length)],
    ['Reference frames', frames],
  ];
  return table({
    caption: 'Accuracy and work',
    head: [{ text: 'Setting' }, { text: 'Value' }],
    rows: rows.map(([label, value]) => [{ text: label }, { text: value }]),
  });
}

/** "assumed: typical rotor": the word once, also where the source begins with it. */
function withWord(word: string, source: string): string {
  return source.startsWith(`${word}: `) ? source : `${word}: ${source}`;
}
