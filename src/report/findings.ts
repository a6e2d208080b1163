import type { RunResult } from '../measure/result.ts';
import { formatMetric, formatMetricMultiple } from './formatMetric.ts';
import { formatInstant, formatNumber, formatQuantity, type UnitSystem } from './formatQuantity.ts';
import { metricLabel, peakCurrentKey, worstTorqueKey } from './keyNumbers.ts';

/** The question the run answers, from its scenario. */
export function question(result: RunResult): string {
  if (result.operations.reversal !== null) return 'What happens when this machine is plugged?';
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
  const { metrics, trajectory, operations } = result;
  const { reversal } = operations;
  const show = { system: units };
  const speedAt = (t: number) => formatQuantity(Math.abs(trajectory.at(t, 'left').speed), 'rad/s', show);
  if (reversal === null) {
    if (operations.start === null)
      return `Nothing is started or plugged in this run; at its end the shaft turns at ${speedAt(trajectory.tEnd)}.`;
    const start = metrics.startTime.value;
    return start === null
      ? `The machine does not come up to speed; it turns at ${speedAt(operations.start.to)} when its start ends.`
      : `The machine runs up in ${formatQuantity(start, 's', show)} (to 95 % of its steady speed).`;
  }
  const from = speedAt(reversal.command);
  const { shortCircuit } = trajectory;
  if (shortCircuit !== null) {
    return `Plugged at ${from}, the contactors short-circuit two phases at ${formatInstant(shortCircuit.t)}; nothing after that is computed.`;
  }
  const stop = metrics.stopTimeFromParting.value ?? metrics.stopTimeFromTouch.value;
  const { zero, touch } = reversal;
  if (stop === null && zero !== null)
    return `Plugged at ${from}, the shaft comes to rest by itself${touch === null ? '' : ' before the reversing contactor closes'}: nothing of the stop is due to plugging.`;
  if (stop === null) {
    const end = reversal.to < trajectory.tEnd ? 'the next action' : 'the end of the run';
    return `Plugged at ${from}, the machine does not come to zero speed before ${end}; it turns at ${speedAt(reversal.to)} then.`;
  }
  return `Plugging brings the machine from ${from} to ${stays(result) ? 'rest' : 'zero speed'} in ${formatQuantity(stop, 's', show)}${onwards(result, units)}.`;
}

/** True when the shaft is still where the stop left it: held, or as good as standing. */
export function stays({ trajectory, operations }: RunResult): boolean {
  const { supply, machine } = trajectory.scenario;
  const synchronous = (2 * Math.PI * supply.frequency) / machine.polePairs;
  const end = operations.reversal?.to ?? trajectory.tEnd;
  return Math.abs(trajectory.at(end, 'left').speed) < RESTING_FRACTION * synchronous;
}

/** Below this fraction of synchronous speed the words say "rest". */
const RESTING_FRACTION = 0.01;
/** A stop whose last part without plugging is longer than this fraction of it is said to coast. */
const COASTING_FRACTION = 0.1;

/** What belongs to the stop: how long it coasted at its end, or that it went on into full reversal. */
function onwards({ metrics, operations }: RunResult, units: UnitSystem): string {
  const show = { system: units };
  const reversal = metrics.reversalTime.value;
  if (reversal !== null)
    return `, counted from the parting of the contacts, and on to 95 % of full reverse speed ${formatQuantity(reversal, 's', show)} after the reversing contactor closes`;
  const { zero, switchOpening, command } = operations.reversal ?? {};
  if (zero == null || switchOpening == null || command === undefined) return '';
  const coasting = zero - switchOpening;
  if (coasting < COASTING_FRACTION * (zero - command)) return '';
  return `, the last ${formatQuantity(coasting, 's', show)} of it coasting after the zero-speed switch has opened`;
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

function heatSentence({ metrics }: RunResult): string {
  const whole = metrics.reversalToStartHeatRatio.value;
  if (whole !== null)
    return `In the whole reversal the rotor takes ${formatNumber(whole)} times the heat of a start.`;
  const ratio = metrics.plugToStartHeatRatio.value;
  if (ratio !== null) return `The rotor takes ${formatNumber(ratio)} times the heat of a start.`;
  const kinetic = metrics.reversalRotorHeatMultiple.value ?? metrics.plugRotorHeatMultiple.value;
  return kinetic === null ? '' : `The rotor takes ${formatNumber(kinetic)} times the kinetic energy as heat.`;
}

function withMultiple(value: string, multiple: string): string {
  return multiple === '' ? value : `${value} (${multiple})`;
}
