import type { Survey } from '../../../src/survey/spec/survey.ts';

/** How the runner of the tests misbehaves. */
export interface RunOrders {
  /** ms that every run takes. */
  readonly slow?: number;
  readonly throws?: readonly number[];
  /** Runs that end their thread. */
  readonly dies?: readonly number[];
  /** Run that ends its thread unless a file is there, which it makes. */
  readonly diesOnce?: { readonly run: number; readonly mark: string };
  /** Run that takes all memory. */
  readonly exhausts?: number;
  /** Runs whose figure is no number. */
  readonly endless?: readonly number[];
  /** Runs that claim to be another. */
  readonly foreign?: readonly number[];
  /** Runs that give what is no row at all. */
  readonly nonsense?: readonly number[];
  /** Runs that throw what is no error. */
  readonly thrown?: readonly number[];
  /** The survey cannot be prepared. */
  readonly broken?: boolean;
  /** The survey cannot be prepared in a worker thread. */
  readonly brokenInThread?: boolean;
}

/** URL of the module that makes runs in these tests. */
export const TEST_RUNNER = new URL('./testRunner.ts', import.meta.url).href;

/** A survey of `count` runs for the runner of the tests. */
export function testSurvey(count: number, orders: RunOrders = {}): Survey {
  return {
    title: 'Arithmetic',
    description: JSON.stringify(orders),
    base: { fileName: 'base.yaml', text: 'title: ä base\n' },
    fields: [
      {
        path: 'load.inertia',
        unit: 'kg m^2',
        spread: { kind: 'grid', from: 0.1, to: 0.7, count, spacing: 'linear' },
      },
    ],
    metrics: ['plugMinimumTorque', 'plugPeakCurrent'],
    verdict: false,
    seed: 1,
    task: { kind: 'sweep' },
  };
}
