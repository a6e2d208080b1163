import { METRIC_KEYS, type MetricKey } from '../measure/metric.ts';
import {
  COMPARE_VERSION,
  type ComparedCriterion,
  type ComparedHead,
  type CompareFile,
} from './compareFile.ts';
import { differingInputs } from './differingInputs.ts';
import type { ComparedJudgement } from './renderCompareHtml.ts';
import { fileCriterion } from './renderSuitabilityJson.ts';
import { summaryMetrics } from './renderSummaryJson.ts';

/** Two judgements side by side as JSON text, ending in a line break; the format is documented at `CompareFile`. */
export function renderCompareJson(
  a: ComparedJudgement,
  b: ComparedJudgement,
  options: { readonly version: string },
): string {
  const [one, other] = [summaryMetrics(a.judged.result.metrics), summaryMetrics(b.judged.result.metrics)];
  const metricOf = (key: MetricKey) => ({
    unit: one[key].unit,
    a: { value: one[key].value, missing: one[key].missing },
    b: { value: other[key].value, missing: other[key].missing },
  });
  const inB = new Map(b.judged.suitability.criteria.map((criterion) => [criterion.key, criterion]));
  const file: CompareFile = {
    compareVersion: COMPARE_VERSION,
    program: { name: 'countertorque', version: options.version },
    a: headOf(a),
    b: headOf(b),
    inputs: differingInputs(
      { scenario: a.judged.result.scenario, origins: a.origins },
      { scenario: b.judged.result.scenario, origins: b.origins },
    ),
    metrics: Object.fromEntries(METRIC_KEYS.map((key) => [key, metricOf(key)])) as CompareFile['metrics'],
    criteria: a.judged.suitability.criteria.flatMap((criterion) => {
      const counterpart = inB.get(criterion.key);
      if (counterpart === undefined) return [];
      const { key, unit } = criterion;
      return [{ key, unit, a: criterionOf(criterion), b: criterionOf(counterpart) }];
    }),
  };
  return `${JSON.stringify(file, null, 2)}\n`;
}

function headOf({ name, judged: { result, suitability } }: ComparedJudgement): ComparedHead {
  return {
    file: name,
    title: result.scenario.title,
    usable: result.usable,
    verdict: suitability.verdict,
  };
}

function criterionOf(criterion: Parameters<typeof fileCriterion>[0]): ComparedCriterion {
  const { value, limit, margin, outcome, missing } = fileCriterion(criterion);
  return { value, limit, margin, outcome, missing };
}
