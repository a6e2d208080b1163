import type { Metric } from '../../measure/metric.ts';
import type { RunResult } from '../../measure/result.ts';
import { againstGiven, type Found } from '../againstLimit.ts';
import type { Criterion } from '../criterion.ts';
import { joinRemarks, saturationRemark } from '../saturationRemark.ts';

/** Criteria of protection and supply: an instantaneous trip that must not trip, and the dip of the voltage. */
export function protectionCriteria(result: RunResult): readonly Criterion[] {
  return [instantaneousTrip(result), voltageDip(result)];
}

/** Largest crest of start and plug against the crest of the setting. */
function instantaneousTrip({ metrics, scenario }: RunResult): Criterion {
  const { found, remark } = larger(metrics.startPeakCurrent, metrics.plugPeakCurrent);
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
