import type { RunResult } from '../measure/result.ts';
import { findPlugging } from './closings.ts';
import { formatMetric, formatMetricMultiple } from './formatMetric.ts';
import { formatInstant, formatNumber, formatQuantity, type UnitSystem } from './formatQuantity.ts';
import { metricLabel, peakCurrentKey, worstTorqueKey } from './keyNumbers.ts';

/** The question the run answers, from its scenario. */
export function question(result: RunResult): string {
  const plugging = findPlugging(result.trajectory);
  if (plugging !== undefined) return 'What happens when this machine is plugged?';
  const starts = result.scenario.actions.some((action) => action.do.startsWith('start'));
  return starts ? 'What happens when this machine is started?' : 'What does this machine do in this run?';
}

/** What the run shows, in sentences made of its numbers. No judgement of suitability. */
export function finding(result: RunResult, units: UnitSystem): string {
  return [motionSentence(result, units), violenceSentence(result, units), heatSentence(result)]
    .filter((sentence) => sentence !== '')
    .join(' ');
}

/** "Plugging brings the machine from 1788 r/min to rest in 0.42 s." */
export function motionSentence(result: RunResult, units: UnitSystem): string {
  const { metrics, trajectory } = result;
  const plugging = findPlugging(trajectory);
  const show = { system: units };
  if (plugging === undefined) {
    const start = metrics.startTime.value;
    const top = trajectory.at(trajectory.tEnd).speed;
    if (start !== null) return `The machine runs up in ${formatQuantity(start, 's', show)}.`;
    return `There is no plugging in this run; at its end the shaft turns at ${formatQuantity(top, 'rad/s', show)}.`;
  }
  const from = formatQuantity(Math.abs(plugging.speedBefore), 'rad/s', show);
  const { shortCircuit } = trajectory;
  if (shortCircuit !== null) {
    return `Plugged at ${from}, the contactors short-circuit two phases at ${formatInstant(shortCircuit.t)}; nothing after that is computed.`;
  }
  const stop = metrics.stopTimeFromParting.value ?? metrics.stopTimeFromTouch.value;
  if (stop === null) {
    const left = formatQuantity(Math.abs(trajectory.at(trajectory.tEnd).speed), 'rad/s', show);
    return `Plugged at ${from}, the machine does not come to rest in this run; ${left} remain at its end.`;
  }
  const reversal = metrics.reversalTime.value;
  const onwards =
    reversal === null
      ? ''
      : ` and carries it on to full reverse speed, ${formatQuantity(reversal, 's', show)} in all`;
  return `Plugging brings the machine from ${from} to rest in ${formatQuantity(stop, 's', show)}${onwards}.`;
}

function violenceSentence(result: RunResult, units: UnitSystem): string {
  const current = peakCurrentKey(result.metrics);
  const torque = worstTorqueKey(result.metrics);
  const parts: string[] = [];
  if (current !== null) {
    const metric = result.metrics[current];
    const phase = metric.phase === undefined ? '' : ` in phase ${metric.phase}`;
    parts.push(
      `the current peaks at ${withMultiple(formatMetric(metric, metricLabel(current), units), formatMetricMultiple(metric))}${phase}`,
    );
  }
  if (torque !== null) {
    const metric = result.metrics[torque];
    parts.push(
      `the air-gap torque reaches ${withMultiple(formatMetric(metric, metricLabel(torque), units), formatMetricMultiple(metric))}`,
    );
  }
  const text = parts.join('; ');
  return text === '' ? '' : `${text[0]?.toUpperCase()}${text.slice(1)}.`;
}

function heatSentence(result: RunResult): string {
  const ratio = result.metrics.plugToStartHeatRatio.value;
  if (ratio !== null) return `The rotor takes ${formatNumber(ratio)} times the heat of a start.`;
  const kinetic = result.metrics.plugRotorHeatMultiple.value;
  return kinetic === null ? '' : `The rotor takes ${formatNumber(kinetic)} times the kinetic energy as heat.`;
}

function withMultiple(value: string, multiple: string): string {
  return multiple === '' ? value : `${value} (${multiple})`;
}
