import { describe, expect, it } from 'vitest';
import { METRIC_KEYS } from '../../../src/measure/metric.ts';
import { METRIC_GROUPS } from '../../../src/report/metricLabels.ts';
import { renderSummaryJson } from '../../../src/report/renderSummaryJson.ts';
import { fakeMetrics, fakeRun, fakeScenario } from './fakeRun.ts';
import { HOSTILE_TEXTS } from './hostile.ts';

const summary = JSON.parse(renderSummaryJson(fakeRun(), { version: '1.2.3' }));

describe('summary.json', () => {
  it('has the keys of version 1, in this order', () => {
    expect(summary.summaryVersion).toBe(1);
    expect(Object.keys(summary)).toEqual([
      'summaryVersion',
      'program',
      'scenario',
      'status',
      'finding',
      'metrics',
      'ledger',
      'estimation',
      'nameplate',
      'bands',
      'rated',
      'events',
      'commands',
      'channels',
      'controlFindings',
      'integration',
      'traceStep',
      'warnings',
    ]);
  });

  it('has every metric, each with every field', () => {
    expect(Object.keys(summary.metrics)).toEqual([...METRIC_KEYS]);
    for (const key of METRIC_KEYS) {
      expect(Object.keys(summary.metrics[key])).toEqual([
        'value',
        'unit',
        'time',
        'phase',
        'multiple',
        'definition',
        'missing',
      ]);
    }
  });

  it('says which program and scenario made it', () => {
    expect(summary.program).toEqual({ name: 'countertorque', version: '1.2.3' });
    expect(summary.scenario).toEqual(fakeScenario());
  });

  it('turns a value that is not finite into null with a reason', () => {
    const metrics = { ...fakeMetrics() };
    metrics.plugPeakCurrent = { ...metrics.plugPeakCurrent, value: Number.NaN };
    const text = renderSummaryJson(fakeRun({ metrics }), { version: '0' });
    const metric = JSON.parse(text).metrics.plugPeakCurrent;
    expect(metric.value).toBeNull();
    expect(metric.missing).toBe('the value is not a finite number');
  });

  it.each(HOSTILE_TEXTS.filter((text) => !text.includes('\uD800')))(
    'keeps the title %j as it is',
    (title) => {
      const text = renderSummaryJson(fakeRun({ scenario: fakeScenario(title) }), { version: '0' });
      expect(JSON.parse(text).scenario.title).toBe(title);
    },
  );

  it('the tables of the report present every metric once', () => {
    const shown = METRIC_GROUPS.flatMap((group) => group.rows).map((row) => row.key);
    expect(shown.toSorted()).toEqual([...METRIC_KEYS].toSorted());
  });
});
