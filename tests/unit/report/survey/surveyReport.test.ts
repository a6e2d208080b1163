import { describe, expect, it } from 'vitest';
import { METRIC_KEYS } from '../../../../src/measure/metric.ts';
import { displayWidth } from '../../../../src/report/displayWidth.ts';
import { buildSurveyFiles } from '../../../../src/report/survey/buildSurveyFiles.ts';
import { fieldUnit } from '../../../../src/report/survey/fieldUnit.ts';
import { fieldWords } from '../../../../src/report/survey/fieldWords.ts';
import { renderSurveyHtml } from '../../../../src/report/survey/renderSurveyHtml.ts';
import { renderSurveyTerminal } from '../../../../src/report/survey/renderSurveyTerminal.ts';
import { shownMetric } from '../../../../src/report/survey/shownMetric.ts';
import { fieldSentence } from '../../../../src/report/survey/spreadWords.ts';
import { surveyFindings } from '../../../../src/report/survey/surveyFindings.ts';
import type { Survey, SurveyRow, VariedField } from '../../../../src/survey/spec/survey.ts';
import { sensitivityOf } from '../../../../src/survey/spread/sensitivity.ts';
import { type Quantile, summaryOf } from '../../../../src/survey/spread/summary.ts';
import { HOSTILE_TEXTS } from '../hostile.ts';
import * as fake from './fakeSurvey.ts';

const OPTIONS = { units: 'SI', version: '1.2.3', shard: null, surveyFile: 'closing.yaml' } as const;
const RANDOM = fake.fakeSurvey();
const ROWS = fake.drawnRows(RANDOM, 1500);
const page = (survey: Survey, rows: readonly SurveyRow[], options = {}) =>
  renderSurveyHtml(survey, fake.source(rows), { ...OPTIONS, ...options });
const terminal = (survey: Survey, rows: readonly SurveyRow[], options = {}) =>
  renderSurveyTerminal(survey, surveyFindings(survey, fake.source(rows)), { ...OPTIONS, ...options });
const shownText = (html: string) =>
  html
    .replace(/<style>.*?<\/style>/su, '')
    .replaceAll(/<[^>]*>/gu, ' ')
    .replaceAll(/\s+/gu, ' ');
/** Cells of the rows of a table, by its caption. */
function tableAfter(html: string, caption: string): string[][] {
  const from = html.indexOf(`<caption>${caption}`);
  if (from < 0) throw new Error(`no table ${caption}`);
  const body = html.slice(from, html.indexOf('</table>', from)).split('<tbody>')[1]!;
  return [...body.matchAll(/<tr>(.*?)<\/tr>/gsu)].map(([, row]) =>
    [...row!.matchAll(/<t[hd][^>]*>(.*?)<\/t[hd]>/gsu)].map(([, cell]) => cell!.replaceAll(/<[^>]*>/gu, '')),
  );
}

const WORST = fake.fakeSurvey({ task: fake.WORST, metrics: ['plugMinimumTorque'] });
const SENSITIVITY = fake.fakeSurvey({ task: { kind: 'sensitivity', samples: 32, sequence: 'quasi' } });
const LIMIT = fake.fakeSurvey({
  fields: [fake.INERTIA_GRID, fake.TORQUE_GRID],
  task: { kind: 'limitMap' },
});
const SWEEP = fake.fakeSurvey({ fields: [fake.INERTIA_GRID], task: { kind: 'sweep' } });
const SWEEP_ROWS = fake.gridValues(fake.INERTIA_GRID).map(
  (inertia, run): SurveyRow => ({
    run,
    values: [inertia],
    status: 'good',
    reason: null,
    metrics: [-150, 200, inertia],
    verdict: null,
  }),
);
const FEW = ROWS.slice(0, 250);
const STATES: readonly (readonly [name: string, survey: Survey, rows: readonly SurveyRow[]])[] = [
  ['random draws', RANDOM, FEW],
  [
    'random draws with verdicts',
    fake.fakeSurvey({ verdict: true }),
    fake.drawnRows(fake.fakeSurvey({ verdict: true }), 300),
  ],
  ['a worst case', WORST, fake.drawnRows(WORST, 300)],
  ['a worst case of which nothing was found', WORST, []],
  ['a sensitivity', SENSITIVITY, fake.sensitivityRows(SENSITIVITY, 32)],
  ['a sensitivity cut short', SENSITIVITY, fake.sensitivityRows(SENSITIVITY, 32).slice(3, 20)],
  ['a limit map', LIMIT, fake.gridRows(LIMIT)],
  ['a sweep over two fields', { ...LIMIT, task: { kind: 'sweep' } }, fake.gridRows(LIMIT)],
  ['a sweep over one field', SWEEP, SWEEP_ROWS],
  ['no run', RANDOM, []],
  ['one run', RANDOM, ROWS.slice(0, 1)],
  ['no good run', RANDOM, [fake.badRow(0, [1, 0.05, 18], RANDOM, 'failed', 'Short circuit at t = 1.02 s.')]],
  [
    'a metric that no run has',
    RANDOM,
    FEW.map((row) => ({ ...row, metrics: row.metrics.map((v, k) => (k === 1 ? null : v)) })),
  ],
  [
    'a metric that is the same in every run',
    RANDOM,
    FEW.map((row) => (row.status === 'good' ? { ...row, metrics: [-180, 0, 0.2] } : row)),
  ],
];

describe('the page', () => {
  const html = page(RANDOM, ROWS);
  const summary = summaryOf(RANDOM, fake.source(ROWS));

  it('has in its tables the numbers of the summary', () => {
    RANDOM.metrics.forEach((key, m) => {
      const metric = summary.metrics[m]!;
      const { text, difference } = shownMetric(key, 'SI');
      const section = html.slice(html.indexOf(`id="metric-${key}"`));
      expect(tableAfter(section, `Quantiles, ${metric.count} runs`)).toEqual([
        ...metric.quantiles.map(({ percent, value, low, high }) => [
          percent === 50 ? '50 % (median)' : `${percent} %`,
          text(value),
          `${text(low)} … ${text(high)}`,
        ]),
        ['Mean', text(metric.mean), '—'],
        ['Standard deviation', difference(metric.deviation!), '—'],
      ]);
      const [smallest, largest] = tableAfter(section, 'Extreme runs');
      expect(smallest!.slice(0, 3)).toEqual([
        'Smallest',
        text(metric.smallest!.value),
        String(metric.smallest!.run),
      ]);
      expect(largest!.slice(0, 3)).toEqual([
        'Largest',
        text(metric.largest!.value),
        String(metric.largest!.run),
      ]);
      const values = ROWS[metric.largest!.run]!.values;
      expect(largest![3]).toContain(`closing time of the contactors: ${values[2]}.0 ms`);
      expect(largest![3]).toContain(
        `npm start --silent -- survey closing.yaml --run ${metric.largest!.run} &gt; run-${metric.largest!.run}.yaml`,
      );
    });
  });

  it('states median and mean that a plain sort and sum of the rows give', () => {
    const values = ROWS.flatMap(({ metrics }) => metrics[2] ?? []).sort((a, b) => a - b);
    const { text } = shownMetric('stopTimeFromTouch', 'SI');
    const table = tableAfter(html.slice(html.indexOf('id="metric-stopTimeFromTouch"')), 'Quantiles');
    const middle =
      (values[Math.floor((values.length - 1) / 2)]! + values[Math.ceil((values.length - 1) / 2)]!) / 2;
    expect(table[3]![1]).toBe(text(middle));
    expect(table[8]![1]).toBe(text(values.reduce((a, b) => a + b, 0) / values.length));
  });

  it('says what was asked, what is assumed, and what is left out', () => {
    const text = shownText(html);
    for (const words of [
      'Scenario: Tea-withering belt, 7.5 kW (belt.yaml)',
      'Supply angle at t = 0, evenly spread over 0 … 360°.',
      'normally distributed around 0.05 kg·m² with a standard deviation of 0.005 kg·m², cut off outside 0.035 … 0.065 kg·m²',
      'Closing time of the contactors, one of 18, 20, 24 ms, each as likely as the others.',
      'Seed 7',
      '1500 runs were made; 22 cannot be used (15 ended badly, 7 have values that no scenario can have) and are left out',
      'no probability of anything in the plant',
      'drawn independently of each other',
      'assume independent draws',
      'Plugging stresses people, shafts and contactors.',
      'If they fail where the figures are worst',
      '30 runs do not contain it',
    ])
      expect(text).toContain(words);
    expect(tableAfter(html, 'Grouped by reason').map((row) => row.slice(1))).toEqual([
      ['ended badly', '15', '96'],
      ['no such scenario', '7', '200'],
    ]);
  });

  it('does not grow with the number of runs', () => {
    const more = page(RANDOM, fake.drawnRows(RANDOM, 3000));
    expect(more.length / html.length).toBeLessThan(1.1);
  });

  it('is in the units of the United States throughout where they are asked for', () => {
    const text = shownText(page(SENSITIVITY, fake.sensitivityRows(SENSITIVITY, 32), { units: 'us' }));
    expect(text).toContain('lbf·ft');
    expect(text).toContain('lb·ft²');
    expect(text).not.toMatch(/N·m|kg·m²/u);
    // 1 lb·ft² = 0.0421401100938048 kg·m² (NIST SP 811, B.8): 0.05 kg·m² is 1.18652 lb·ft².
    expect(text).toContain('normally distributed around 1.18652 lb·ft²');
  });

  it('has the indices as computed', () => {
    const rows = fake.sensitivityRows(SENSITIVITY, 32);
    const [first] = tableAfter(page(SENSITIVITY, rows), 'Indices with intervals of 95 %, from 32 samples');
    const { total } = sensitivityOf(SENSITIVITY, fake.source(rows))!.metrics[0]!.fields[0]!;
    const percent = (share: number) => `${Math.round(100 * share)} %`;
    expect(first![2]).toBe(`${percent(total!.value)} (${percent(total!.low)} … ${percent(total!.high)})`);
  });

  it('says where the worst is, how it compares, and at which edge', () => {
    const rows = fake
      .drawnRows(WORST, 300)
      .map((row) => (row.run === 12 ? { ...row, values: [360, 0.05, 24], metrics: [-400] } : row));
    const text = shownText(page(WORST, rows, { worst: { asWritten: -200 } }));
    expect(text).toContain('the smallest found in 300 runs is −400 N·m, in run 12.');
    expect(text).toContain('The scenario as written has −200 N·m; the worst found lies 100 % below it.');
    expect(text).toContain('0° … 360°, at its edge');
    expect(text).toContain('worst.yaml, beside this page, is its scenario.');
    expect(shownText(page(WORST, rows, { worst: { asWritten: -25 } }))).toContain('is 16.0 times that');
  });

  it('says where the verdict changes and what decides', () => {
    const html = page(LIMIT, fake.gridRows(LIMIT));
    expect(shownText(html)).toContain(
      'plugging is suitable in 62, not suitable in 35 and not judged in 1; runs without a verdict: 1',
    );
    // Without friction 2·(J + 0.05) passes 1.5 between 0.631 and 1.
    expect(tableAfter(html, 'Along load inertia')[0]).toEqual([
      '0 N·m',
      '0.100 kg·m² … 0.631 kg·m²',
      'between 0.631 kg·m² and 1.00 kg·m²: suitable to not suitable (time to zero speed)1 without a verdict',
    ]);
    expect(tableAfter(html, 'What decides')).toEqual([
      ['Time to zero speed', '35', '1', '62'],
      ['Winding temperature', '8', '0', '0'],
    ]);
  });

  it('names the part where it is one', () => {
    expect(shownText(page(RANDOM, ROWS, { shard: { index: 2, of: 5 } }))).toContain('This is part 2 of 5');
  });

  it.each(HOSTILE_TEXTS)('keeps a hostile text as text: %s', (text) => {
    const field: VariedField = { ...fake.ANGLE, path: `load.${text}`, unit: text };
    const survey = fake.fakeSurvey({
      title: text,
      description: text,
      fields: [field],
      base: { fileName: text, text: `title: ${JSON.stringify(text)}` },
      task: { kind: 'sensitivity', samples: 8, sequence: 'quasi' },
    });
    const rows = fake
      .drawnRows(survey, 40)
      .map((row) => (row.run === 3 ? fake.badRow(3, row.values, survey, 'failed', text) : row));
    const made = page(survey, rows, { surveyFile: text });
    expect(made).not.toMatch(/<script|<img|<b>/iu);
    for (const [tag] of made.matchAll(/<[a-z][^>]*>/gu))
      expect(tag.replaceAll(/"[^"]*"/gu, '')).not.toMatch(/'|\son\w+=/u);
    expect(made).not.toMatch(/(?!\n)\p{Cc}|\p{Surrogate}|[\u202E\u2066]/u);
    const lines = terminal(survey, rows).split('\n');
    for (const line of lines) expect(line).not.toMatch(/\p{Cc}|[\u202E\u2066]/u);
  });
});

describe.each(STATES)('%s', (_name, survey, rows) => {
  it.each(['SI', 'us'] as const)(
    'has a page that asks for nothing and shows no broken number (%s)',
    (units) => {
      const html = page(survey, rows, { units });
      expect(html).not.toMatch(/NaN|undefined|Infinity|not a number/u);
      expect(shownText(html)).not.toMatch(/\bnull\b/u);
      expect(html).not.toMatch(/<script|(?:src|href)=/u);
      expect(html.match(/<section/gu)?.length).toBe(html.match(/<\/section>/gu)?.length);
      const ids = [...html.matchAll(/\sid="([^"]+)"/gu)].map(([, id]) => id);
      expect(new Set(ids).size).toBe(ids.length);
      for (const [, target] of html.matchAll(/url\(#([^)]+)\)/gu)) expect(ids).toContain(target);
      if (!rows.some(({ status }) => status === 'good')) expect(html).toContain('role="alert"');
    },
  );

  it('fits a terminal of 80 columns', () => {
    const text = terminal(survey, rows, { worst: { asWritten: -1 } });
    for (const line of text.split('\n')) expect(displayWidth(line)).toBeLessThanOrEqual(80);
    expect(text).not.toMatch(/NaN|undefined|null|Infinity|not a number/u);
    expect(text).toContain('Local codes');
  });
});

it('the terminal has the numbers of the summary', () => {
  const { smallest, quantiles } = summaryOf(RANDOM, fake.source(ROWS)).metrics[0]!;
  const { text } = shownMetric('plugMinimumTorque', 'SI');
  const mark = (name: string, { value, low, high }: Quantile) =>
    `${name} ${text(value)} (${text(low)} … ${text(high)})`;
  const shown = terminal(RANDOM, ROWS).replaceAll(/\n\s*/gu, ' ');
  expect(shown).toContain(
    `smallest ${text(smallest!.value)} (run ${smallest!.run}), ${mark('5 %', quantiles[1]!)}, ${mark('median', quantiles[3]!)}, ${mark('95 %', quantiles[6]!)}`,
  );
});

describe('words', () => {
  it.each<[string, string]>([
    ['load.inertia', 'load inertia'],
    ['load.torque.1.torque', 'load torque 2'],
    ['actions.1.at', 'instant of action 2'],
    ['starter.closingScatter.2', 'closing scatter of pole 3'],
    ['limits.contactLife', 'operations the contacts must last'],
    ['contactors.lifeTable.1.current', 'breaking current of entry 2 of the life table'],
    ['contactors.reverse.lifeAc4', 'life in AC-4 of the reversing contactor'],
    ['solver.maxSteps', 'solver.maxSteps'],
  ])('of %s: %s', (path, words) => {
    expect(fieldWords(path)).toBe(words);
  });

  it.each<[VariedField['spread'], string]>([
    [{ kind: 'logUniform', from: 1, to: 100 }, 'spread over 1 … 100 ms, equal ratios being equally likely'],
    [
      { kind: 'triangular', from: 16, peak: 18, to: 24 },
      'triangularly distributed over 16 … 24 ms, most likely 18 ms',
    ],
    [
      { kind: 'grid', from: 0.1, to: 0.3, count: 3, spacing: 'linear' },
      '3 values over 0.1 … 0.3 ms, equal steps apart',
    ],
    [
      { kind: 'values', values: [1, 2, 3, 4, 5, 6, 7, 8, 9] },
      'one of 9 values in 1 … 9 ms, each as likely as the others',
    ],
    [{ kind: 'uniform', from: 3 * 0.1, to: 1 }, 'evenly spread over 0.3 … 1 ms'],
  ])('of a spread: %o', (spread, words) => {
    expect(fieldSentence({ ...fake.CLOSING, spread }, RANDOM.task, 'SI')).toBe(
      `Closing time of the contactors, ${words}.`,
    );
  });

  it('of units: as they are printed', () => {
    const label = (unit: string) => fieldUnit(unit, 'SI').label;
    expect(['deg', 'N m s/rad', 'ohm/km', 'mohm', 'degC', '%', ''].map(label)).toEqual([
      '°',
      'N·m·s/rad',
      'Ω/km',
      'mΩ',
      '°C',
      '%',
      '',
    ]);
    // 1 kN·m = 737.562 lbf·ft (NIST SP 811, B.8).
    expect(fieldUnit('kN m', 'us').perWritten).toBeCloseTo(737.562, 3);
    expect(fieldUnit('ms', 'us')).toEqual({ label: 'ms', perWritten: 1 });
  });

  it('tell every metric from every other', () => {
    expect(new Set(METRIC_KEYS.map((key) => shownMetric(key, 'SI').name)).size).toBe(METRIC_KEYS.length);
  });
});

it('the folder holds the page and both tables; without a row there is no Parquet file', () => {
  const files = buildSurveyFiles(RANDOM, fake.source(ROWS), OPTIONS);
  expect(files.map(({ name }) => name)).toEqual(['survey.html', 'survey.csv', 'survey.parquet']);
  const [html, csv, parquet] = files.map(({ content }) => content);
  expect(html).toBe(page(RANDOM, ROWS));
  expect([...(csv as Iterable<string>)]).toHaveLength(ROWS.length + 1);
  expect(
    Buffer.concat([...(parquet as Iterable<Uint8Array>)])
      .subarray(0, 4)
      .toString(),
  ).toBe('PAR1');
  expect(buildSurveyFiles(RANDOM, fake.source([]), OPTIONS).map(({ name }) => name)).toEqual([
    'survey.html',
    'survey.csv',
  ]);
});
