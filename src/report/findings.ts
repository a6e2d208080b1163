import type { RunResult } from '../measure/result.ts';
import { controlSentences } from './controlSentences.ts';
import { formatMetric, formatMetricMultiple } from './formatMetric.ts';
import { formatInstant, formatNumber, formatQuantity, type UnitSystem } from './formatQuantity.ts';
import { metricLabel, peakCurrentKey, worstCouplingKey, worstTorqueKey } from './keyNumbers.ts';
import { faultSentence, saturationSentence } from './modelNotes.ts';

/** The question the run answers, from its scenario. */
export function question(result: RunResult): string {
  if (result.operations.reversal !== null) return 'What happens when this machine is plugged?';
  const starts = result.trajectory.commands.some((command) => command.do.startsWith('start'));
  return starts ? 'What happens when this machine is started?' : 'What does this machine do in this run?';
}

/** What the run shows, in sentences made of its numbers. No judgement of suitability. */
export function finding(result: RunResult, units: UnitSystem): string {
  return [
    controlSentences(result, units),
    motionSentence(result, units),
    faultSentence(result),
    violenceSentence(result, units),
    saturationSentence(result),
    heatSentence(result),
  ]
    .filter((sentence) => sentence !== '')
    .join(' ');
}

/** "Plugging brings the machine from 1788 r/min to rest in 0.42 s." */
export function motionSentence(result: RunResult, units: UnitSystem): string {
  const { metrics, trajectory, operations } = result;
  const { reversal } = operations;
  const show = { system: units };
  const speedAt = (t: number) => formatQuantity(Math.abs(trajectory.at(t, 'left').speed), 'rad/s', show);
  if (reversal === null && trajectory.shortCircuit !== null)
    return `The contactors short-circuit two phases at ${formatInstant(trajectory.shortCircuit.t)}; nothing after that is computed.`;
  if (reversal === null) {
    const refused = trajectory.events.some((event) => event.kind === 'plugRefused');
    const nothing = refused ? ' The plug command comes to nothing.' : '';
    if (operations.start === null)
      return `Nothing is started or plugged in this run; at its end the shaft turns at ${speedAt(trajectory.tEnd)}.${nothing}`;
    const start = metrics.startTime.value;
    return start === null
      ? `The machine does not come up to speed; it turns at ${speedAt(operations.start.to)}${backwards(result)} when its start ends.${nothing}`
      : `The machine runs up in ${formatQuantity(start, 's', show)} (to 95 % of its steady speed).${nothing}`;
  }
  const from = speedAt(reversal.command);
  const { shortCircuit } = trajectory;
  if (shortCircuit?.welded === true) {
    const { phase, t } = shortCircuit;
    return `Plugged at ${from}, the ${reversal.incoming} contactor closes at ${formatInstant(t)} while pole ${phase} of the ${reversal.outgoing} contactor is welded: two phases are short-circuited, and no dead time would have prevented it; nothing after that is computed.`;
  }
  if (shortCircuit !== null) {
    return `Plugged at ${from}, the contactors short-circuit two phases at ${formatInstant(shortCircuit.t)}; nothing after that is computed.`;
  }
  const { zero, touch, parting, command } = reversal;
  // After coasting the contacts parted long before the command: the stop then counts from the closing.
  const coasted = parting !== null && parting < command;
  const fromTouch = metrics.stopTimeFromTouch.value;
  const stop = coasted ? fromTouch : (metrics.stopTimeFromParting.value ?? fromTouch);
  if (stop === null && zero !== null)
    return `Plugged at ${from}, the shaft comes to rest by itself${touch === null ? '' : ' before the reversing contactor closes'}: nothing of the stop is due to plugging.`;
  if (stop === null) {
    const end = reversal.to < trajectory.tEnd ? 'the next action' : 'the end of the run';
    return `Plugged at ${from}, the machine does not come to zero speed before ${end}; it turns at ${speedAt(reversal.to)} then.`;
  }
  return `Plugging brings the machine from ${from} to ${stays(result) ? 'rest' : 'zero speed'} in ${formatQuantity(stop, 's', show)}${coasted ? ' after the reversing contactor closes' : ''}${onwards(result, units, coasted)}.`;
}

/** " backwards" where a load turns the shaft against the start. */
function backwards({ trajectory, operations }: RunResult): string {
  const { start } = operations;
  return start !== null && start.direction * trajectory.at(start.to, 'left').speed < 0 ? ' backwards' : '';
}

/** True when dry friction holds the shaft from its first passage through zero speed on. */
export function stays({ trajectory, operations }: RunResult): boolean {
  const zero = operations.reversal?.zero;
  return trajectory.events.some((event) => event.kind === 'shaftHeld' && event.t === zero);
}

/** A stop whose last part without plugging is longer than this fraction of it is said to coast. */
const COASTING_FRACTION = 0.1;

/** What belongs to the stop: how long it coasted at its end, or that it went on into full reversal. */
function onwards(
  { metrics, operations, trajectory }: RunResult,
  units: UnitSystem,
  coasted: boolean,
): string {
  const show = { system: units };
  const reversal = metrics.reversalTime.value;
  if (reversal !== null)
    return `${coasted ? '' : ', counted from the parting of the contacts'}, and on to 95 % of full reverse speed ${formatQuantity(reversal, 's', show)} after ${coasted ? 'it' : 'the reversing contactor closes'}`;
  const { zero, command, incoming } = operations.reversal ?? {};
  if (zero == null || command === undefined) return '';
  const cleared = trajectory.events.findLast(
    (event) =>
      event.kind === 'poleClears' && event.contactor === incoming && event.t > command && event.t < zero,
  );
  const coasting = cleared === undefined ? 0 : zero - cleared.t;
  if (coasting < COASTING_FRACTION * (zero - command)) return '';
  return `, the last ${formatQuantity(coasting, 's', show)} of it coasting with all poles open`;
}

/** Torques below this share of the rated one are rounding. */
const ROUNDING_TORQUE = 1e-9;

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
  if (
    torque !== null &&
    Math.abs(result.metrics[torque].value ?? 0) > ROUNDING_TORQUE * result.rated.torque
  ) {
    const metric = result.metrics[torque];
    parts.push(
      `the air-gap torque reaches ${withMultiple(formatMetric(metric, metricLabel(torque), units), formatMetricMultiple(metric))}`,
    );
  }
  const coupling = worstCouplingKey(result.metrics);
  if (coupling !== null && result.scenario.load.coupling !== undefined) {
    const metric = result.metrics[coupling];
    parts.push(
      `the coupling carries up to ${withMultiple(formatMetric(metric, metricLabel(coupling), units), formatMetricMultiple(metric))}`,
    );
  }
  if (parts.length === 0) return '';
  const where = result.operations.otherActions > 0 ? 'in the first start and the first reversal ' : '';
  const text = `${where}${parts.join('; ')}`;
  return `${text[0]?.toUpperCase()}${text.slice(1)}.`;
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
