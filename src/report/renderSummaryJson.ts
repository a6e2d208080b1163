import { METRIC_KEYS, type Metric, type MetricKey, type Metrics } from '../measure/metric.ts';
import type { RunResult } from '../measure/result.ts';
import { finding } from './findings.ts';
import { traceStep } from './renderTraceCsv.ts';
import type { ReportBackground } from './reportBackground.ts';
import { SUMMARY_VERSION, type SummaryFile, type SummaryMetric } from './summaryFile.ts';

/** What the summary needs besides the run. */
export interface SummaryOptions extends ReportBackground {
  /** Version of the program. */
  readonly version: string;
}

/** The summary of a run as JSON text, ending in a line break; the format is documented at `SummaryFile`. */
export function renderSummaryJson(result: RunResult, options: SummaryOptions): string {
  return `${JSON.stringify(summaryOf(result, options), null, 2)}\n`;
}

/** The summary of a run as data. */
export function summaryOf(result: RunResult, options: SummaryOptions): SummaryFile {
  const { trajectory } = result;
  return {
    summaryVersion: SUMMARY_VERSION,
    program: { name: 'countertorque', version: options.version },
    scenario: result.scenario,
    status: { ...result.status, successful: result.usable },
    finding: finding(result, 'SI'),
    metrics: summaryMetrics(result.metrics),
    ledger: result.ledger,
    estimation: options.estimation ?? null,
    nameplate: options.nameplate ?? null,
    bands: options.bands ?? null,
    rated: result.rated,
    events: trajectory.events,
    commands: trajectory.commands,
    channels: trajectory.channels,
    controlFindings: result.controlFindings,
    integration: {
      evaluations: trajectory.stats.evaluations,
      steps: trajectory.stats.steps,
      segments: trajectory.segments.map(({ t0, t1, kind, openPhase, frame }) => ({
        t0,
        t1,
        kind,
        openPhase,
        frame,
      })),
    },
    traceStep: traceStep(result),
    warnings: result.warnings,
  };
}

/** Every metric with every field present. */
export function summaryMetrics(metrics: Metrics): Readonly<Record<MetricKey, SummaryMetric>> {
  return Object.fromEntries(
    METRIC_KEYS.map((key): [MetricKey, SummaryMetric] => [key, summaryMetric(metrics[key])]),
  ) as Record<MetricKey, SummaryMetric>;
}

function summaryMetric(metric: Metric): SummaryMetric {
  const usable = metric.value !== null && Number.isFinite(metric.value);
  return {
    value: usable ? metric.value : null,
    unit: metric.unit,
    time: metric.time ?? null,
    phase: metric.phase ?? null,
    multiple: metric.multiple ?? null,
    definition: metric.definition,
    missing: usable ? null : (metric.missing ?? 'the value is not a finite number'),
  };
}
