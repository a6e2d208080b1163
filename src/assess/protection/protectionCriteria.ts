import type { MeanDuties } from '../../measure/meanDuties.ts';
import type { Metric } from '../../measure/metric.ts';
import type { RunResult } from '../../measure/result.ts';
import { againstGiven, type Found } from '../againstLimit.ts';
import type { Criterion } from '../criterion.ts';
import { joinRemarks, saturationRemark } from '../saturationRemark.ts';

/**
 * Criteria of protection and supply: an instantaneous trip that must not trip, and the dip of the voltage.
 *
 * @param worst the run at the closing angle with the largest torque
 * @param means what the contactors make over closing angles; null: not known
 */
export function protectionCriteria(
  result: RunResult,
  worst: RunResult = result,
  means: MeanDuties | null = null,
): readonly Criterion[] {
  return [instantaneousTrip(result, worst, means), voltageDip(result)];
}

/** Largest crest of start and plug, of this and of the worst closing angle, against the crest of the setting. */
function instantaneousTrip(
  { metrics, scenario }: RunResult,
  worst: RunResult,
  means: MeanDuties | null,
): Criterion {
  const own = larger(metrics.startPeakCurrent, metrics.plugPeakCurrent);
  const others = [
    worst.metrics.startPeakCurrent.value ?? 0,
    worst.metrics.plugPeakCurrent.value ?? 0,
    ...(means?.makings ?? []).flatMap(({ poles }) => poles.map(({ worstCrest }) => worstCrest)),
  ];
  const highest = Math.max(...others);
  const elsewhere = 'value' in own.found && highest > own.found.value;
  const found: Found = elsewhere ? { value: highest } : own.found;
  const remark = elsewhere ? 'at the worst of the closing angles' : own.remark;
  return againstGiven(
    {
      key: 'instantaneousTrip',
      name: 'crest of the current against the instantaneous trip',
      unit: 'A',
      limitIs: 'most',
      required: false,
      remark: joinRemarks(remark, saturationRemark(scenario)),
    },
    found,
    scenario,
    'instantaneousTrip',
    (setting) => Math.SQRT2 * setting,
  );
}

/** Deepest dip of start and plug. A supply without impedance does not dip: that is missing data, not a good supply. */
function voltageDip({ metrics, scenario }: RunResult): Criterion {
  const { found, remark } = larger(metrics.startVoltageDip, metrics.plugVoltageDip);
  const { supply, starter } = scenario;
  const stiff = supply.sourceResistance === 0 && supply.sourceInductance === 0 && supply.cable === undefined;
  const resistors = starter.lineResistors === undefined ? '' : 'the drop across the line resistors counts in';
  return againstGiven(
    {
      key: 'voltageDip',
      name: 'dip of the voltage at the motor',
      unit: '1',
      limitIs: 'most',
      required: false,
      remark: joinRemarks(remark, resistors),
    },
    stiff ? { missing: 'the impedance of the supply is missing (its short-circuit power)' } : found,
    scenario,
    'voltageDip',
  );
}

/** The larger of what start and plug show, and which of them it is. */
function larger(start: Metric, plug: Metric): { readonly found: Found; readonly remark: string } {
  if (start.value === null && plug.value === null)
    return { found: { missing: plug.missing ?? 'the run shows neither a start nor a plug' }, remark: '' };
  const inStart = start.value !== null && (plug.value === null || start.value > plug.value);
  const value = (inStart ? start.value : plug.value) ?? Number.NaN;
  const alone =
    start.value === null
      ? '; the run contains no start'
      : plug.value === null
        ? '; the run contains no plug'
        : '';
  return { found: { value }, remark: `${inStart ? 'in the start' : 'in the plug'}${alone}` };
}
