import type { RunResult } from '../measure/result.ts';
import type { Estimation, NameplateItem } from '../scenario/nameplate.ts';
import type { PlugBand, PlugBands } from '../survey/plugBands.ts';
import { circuitRows } from './circuitRows.ts';
import { ESTIMATED_FROM, estimationTitle, formatItem, LIMIT_WORDS } from './estimationText.ts';
import { formatMetric, formatRange } from './formatMetric.ts';
import { formatDeviation, formatNumber, type UnitSystem } from './formatQuantity.ts';
import { metricLabel } from './keyNumbers.ts';
import { type Cell, groupedTable, paragraph, table } from './markup.ts';
import { METRIC_GROUPS } from './metricLabels.ts';
import type { ReportBackground } from './reportBackground.ts';

/** How the circuit was found and what that leaves open; nothing where the circuit was given. */
export function estimationSection(
  result: RunResult,
  { estimation, bands }: ReportBackground,
  units: UnitSystem,
): string {
  const found = estimation == null ? '' : foundSection(result, estimation, units);
  const source = ESTIMATED_FROM[estimation?.from ?? 'nameplate'];
  const open = bands == null ? '' : bandsPart(result, bands, source, units);
  if (found === '' && open === '') return '';
  const title = estimation == null ? 'What the data leave open' : estimationTitle(estimation);
  return `<section><h2>${title}</h2>\n${found}\n${open}\n</section>`;
}

function foundSection({ scenario }: RunResult, estimation: Estimation, units: UnitSystem): string {
  const source = ESTIMATED_FROM[estimation.from];
  const aimed = estimation.items.filter((item) => item.target !== null);
  const free = estimation.items.filter((item) => item.target === null);
  const groups = [
    { title: 'Aimed at', rows: aimed.map((item) => itemRow(item, units)) },
    { title: 'Neither stated nor in a table', rows: free.map((item) => itemRow(item, units)) },
  ].filter((group) => group.rows.length > 0);
  const { frequency } = scenario.supply;
  const items = groupedTable({
    caption: `The ${source} beside what the circuit gives`,
    head: [
      { text: 'Item' },
      { text: 'Stated or from a table', className: 'number' },
      { text: 'The circuit gives', className: 'number' },
      { text: 'Error', className: 'number' },
      { text: 'Source of the aim' },
    ],
    groups,
  });
  const circuit = table({
    caption: `Circuit found, per phase of the equivalent star, reactances at ${formatNumber(frequency)} Hz`,
    head: [{ text: 'Element' }, { text: 'Value' }],
    rows: circuitRows(scenario.machine, frequency).map((row): Cell[] => [
      { text: row.label },
      { text: row.value, className: 'wide-word' },
    ]),
  });
  return [
    paragraph(
      `The circuit of this run was not given: it was estimated from the ${source}, as the one that meets the items below best. Root mean square of the weighted errors: ${formatNumber(estimation.misfit)}.`,
    ),
    ...estimation.remarks.map((remark) => paragraph(remark, 'note')),
    items,
    circuit,
  ].join('\n');
}

function itemRow(item: NameplateItem, units: UnitSystem): Cell[] {
  return [
    { text: item.name },
    { text: `${LIMIT_WORDS[item.kind]}${formatItem(item, item.target, units)}`, className: 'number stated' },
    { text: formatItem(item, item.reproduced, units), className: 'number reproduced' },
    {
      text: item.kind !== 'value' && item.error === null ? 'kept' : formatDeviation(item.error),
      className: 'number error',
    },
    { text: item.source, className: 'words' },
  ];
}

function bandsPart(result: RunResult, bands: PlugBands, source: string, units: UnitSystem): string {
  const bandTable = groupedTable({
    caption: `Figures over ${bands.members} circuits that the data allow`,
    head: [
      { text: 'Quantity' },
      { text: 'This run', className: 'number' },
      { text: 'Over all circuits', className: 'number' },
      { text: 'Lowest with; highest with' },
    ],
    groups: METRIC_GROUPS.map((group) => ({
      title: group.title,
      rows: group.rows.flatMap(({ key }) => {
        const band = bands.bands.find((other) => other.key === key);
        return band === undefined ? [] : [bandRow(result, band, units)];
      }),
    })).filter((group) => group.rows.length > 0),
  });
  const leaves = source === 'tests' ? 'tests leave' : `${source} leaves`;
  return `<h3>What the ${leaves} open</h3>\n${paragraph(bands.sentence)}\n${bandTable}`;
}

function bandRow(result: RunResult, band: PlugBand, units: UnitSystem): Cell[] {
  const metric = result.metrics[band.key];
  const label = metricLabel(band.key);
  return [
    { text: label.label },
    { text: formatMetric(metric, label, units), className: 'number' },
    { text: formatRange(band.low, band.high, metric, label, units), className: 'number' },
    { text: `lowest: ${band.lowFrom}; highest: ${band.highFrom}`, className: 'words' },
  ];
}
