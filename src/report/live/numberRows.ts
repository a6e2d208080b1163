import type { MetricKey } from '../../measure/metric.ts';

/** Metrics under one heading. */
export interface NumberGroup {
  readonly title: string;
  readonly rows: readonly NumberRow[];
}

/** One metric as it is shown, with the number behind it. */
export interface NumberRow {
  readonly key: MetricKey;
  readonly label: string;
  /** With unit, as in the terminal and the report. */
  readonly text: string;
  /** SI; null: missing, `text` then is a dash. */
  readonly value: number | null;
  /** "18.1 × rated, phase B", or why it is missing. */
  readonly detail: string;
  readonly definition: string;
}
