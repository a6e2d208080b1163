import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../../../src/estimate/parseScenario.ts';
import type { MetricKey } from '../../../../src/measure/metric.ts';
import { simulate } from '../../../../src/measure/simulate.ts';
import { formatMetric } from '../../../../src/report/formatMetric.ts';
import type { UnitSystem } from '../../../../src/report/formatQuantity.ts';
import { comparedNumbers } from '../../../../src/report/live/comparedNumbers.ts';
import { numbersOf } from '../../../../src/report/live/numbersOf.ts';
import type { RunView } from '../../../../src/report/live/runView.ts';
import { METRIC_GROUPS } from '../../../../src/report/metricLabels.ts';
import { metricTables } from '../../../../src/report/reportTables.ts';
import { shortRun } from '../../../support/shortRun.ts';

function viewOf(values: Partial<Record<MetricKey, number | null>>, units: UnitSystem = 'SI'): RunView {
  const rows = Object.entries(values).map(([key, value]) => ({
    key: key as MetricKey,
    label: key,
    text: '',
    value: value ?? null,
    detail: '',
    definition: '',
  }));
  return { units, numbers: [{ title: 'All', rows }] } as unknown as RunView;
}

function change(
  key: MetricKey,
  value: number | null,
  before: number | null,
  units: UnitSystem = 'SI',
): string {
  return comparedNumbers(viewOf({ [key]: value }, units), viewOf({ [key]: before }))[0]!.rows[0]!.changeText;
}

describe('a figure against that of a pinned run', () => {
  it.each([
    ['plugPeakCurrent', 82, 100, '−18 %'],
    ['plugPeakCurrent', 104, 100, '+4.0 %'],
    ['plugMinimumTorque', -300, -200, '+50 %'],
    ['plugMinimumTorque', -100, -200, '−50 %'],
    ['plugRotorHeat', 2280, 100, '22.8 times'],
    ['stopTimeFromTouch', 0.54, 0.42, '+0.120 s'],
    ['partingToTouch', 0.018, 0.021, '−3.00 ms'],
    ['startMinimumTorque', 30, -20, '+50.0 N·m'],
    ['creepRevolutions', 0.5, 0, '+0.500'],
    ['plugVoltageDip', 0.1, 0, '+10.0 %'],
    ['plugPeakCurrent', 100.01, 100, 'unchanged'],
    ['creepRevolutions', 0, 0, 'unchanged'],
    ['creepSpeed', Math.PI, 1e-11, '+30.0 r/min'],
    ['residualAngle', -Math.PI / 6, Math.PI / 3, '−90.0°'],
    ['plugPeakCurrent', 0, 100, '−100 A'],
    ['plugPeakCurrent', null, 100, ''],
    ['plugPeakCurrent', 100, null, ''],
  ] as const)('%s of %s where it was %s: %s', (key, value, before, expected) => {
    expect(change(key, value, before)).toBe(expected);
  });

  it('is in the units of the run that is shown, whatever the other was pinned in', () => {
    // 1 lbf·ft is 1.3558179 N·m.
    expect(change('startMinimumTorque', 1.3558179, -1.3558179, 'us')).toBe('+2.00 lbf·ft');
    const [group] = comparedNumbers(
      viewOf({ plugMinimumTorque: -10 }, 'us'),
      viewOf({ plugMinimumTorque: -13.558179 }),
    );
    expect(group!.rows[0]!.pinnedText).toBe('−10.0 lbf·ft');
  });

  it('says nothing without a pinned run', () => {
    const [group] = comparedNumbers(viewOf({ plugPeakCurrent: 5 }), null);
    expect(group!.rows[0]).toMatchObject({ pinnedText: '', changeText: '' });
  });

  it('that only one of both contains is a dash', () => {
    const [group] = comparedNumbers(viewOf({ plugPeakCurrent: 5 }), viewOf({ startTime: 1 }));
    expect(group!.rows[0]).toMatchObject({ pinnedText: '—', changeText: '' });
  });
});

describe('the numbers of a run', () => {
  const result = simulate(parseScenario(shortRun()));

  it.each(['SI', 'us'] as const)('are those of the report’s table, digit by digit: %s', (units) => {
    const cells = [...metricTables(result, units).matchAll(/<td class="number">([^<]*)<\/td>/gu)].map(
      ([, text]) => text,
    );
    const texts = numbersOf(result, units).flatMap(({ rows }) => rows.map(({ text }) => text));
    expect(texts).toEqual(cells);
    expect(texts.length).toBeGreaterThan(20);
  });

  it('carry the values themselves', () => {
    for (const { title, rows } of numbersOf(result, 'us'))
      for (const row of rows) {
        expect(row.value).toBe(result.metrics[row.key].value);
        const label = METRIC_GROUPS.find((group) => group.title === title)!.rows.find(
          ({ key }) => key === row.key,
        )!;
        expect(row.text).toBe(formatMetric(result.metrics[row.key], label, 'us'));
        expect(row.detail.startsWith('not in this run')).toBe(row.value === null);
      }
  });
});

it('a direction changes by the shorter way round: from 81.7° to −121° it is 157°, not 203°', () => {
  const rad = (degrees: number) => (degrees * Math.PI) / 180;
  expect(change('residualAngle', rad(-121), rad(81.7))).toBe('+157°');
});
