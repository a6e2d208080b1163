import type { Prediction } from '../../survey/laboratory/laboratory.ts';
import type { QuantityKey } from '../../survey/laboratory/quantities.ts';
import { type DisplayUnit, displayUnit, formatNumber, type UnitSystem } from '../formatQuantity.ts';

/** Times whose whole range is shorter than this are written in ms, s. */
const SHORT = 0.1;

/** Causes of a range that are named on paper. */
const MOST_PARTS = 4;

/** Words behind the unit. */
const SUFFIX: Partial<Readonly<Record<QuantityKey, string>>> = {
  startPeakCurrent: 'crest',
  plugPeakCurrent: 'crest',
  startWorstCycleCurrent: 'r.m.s.',
  noLoadCurrent: 'r.m.s.',
  stopRevolutions: 'rev',
  stopToStartTime: 'times',
  reversalToStartTime: 'times',
  startHeatMultiple: 'times',
  plugHeatMultiple: 'times',
  reversalHeatMultiple: 'times',
};

/** "31.3 A crest": what a reading should be. */
export function predictedText(prediction: Prediction, units: UnitSystem): string {
  return withUnit(formatNumber(prediction.predicted * unitOf(prediction, units).perSi), prediction, units);
}

/** "18.9 … 41.9 A crest": within which limits. */
export function rangeText(prediction: Prediction, units: UnitSystem): string {
  return between(prediction.low, prediction.high, prediction, units);
}

/** The scatter over closing instants alone; '' where the closing instant moves nothing that could be read. */
export function scatterText(prediction: Prediction, units: UnitSystem): string {
  const { low, high } = prediction.scatter;
  if (formatNumber(low) === formatNumber(high)) return '';
  return between(low, high, prediction, units);
}

/** The largest causes of a range, the largest first: "closing instant −7.13/+4.79, …", in the unit of the reading. */
export function partsText(prediction: Prediction, units: UnitSystem): string {
  const { perSi } = unitOf(prediction, units);
  return prediction.parts
    .slice(0, MOST_PARTS)
    .map(({ words, down, up }) => `${words} −${formatNumber(down * perSi)}/+${formatNumber(up * perSi)}`)
    .join(', ');
}

/** Unit of a reading with its suffix: "A crest", "r/min". */
export function unitText(prediction: Prediction, units: UnitSystem): string {
  return [unitOf(prediction, units).label, SUFFIX[prediction.key] ?? ''].filter(Boolean).join(' ');
}

function between(low: number, high: number, prediction: Prediction, units: UnitSystem): string {
  const { perSi } = unitOf(prediction, units);
  return withUnit(`${formatNumber(low * perSi)} … ${formatNumber(high * perSi)}`, prediction, units);
}

function withUnit(number: string, prediction: Prediction, units: UnitSystem): string {
  const unit = unitText(prediction, units);
  return unit.startsWith('°') ? `${number}°` : `${number} ${unit}`.trim();
}

function unitOf({ unit, high }: Prediction, system: UnitSystem): DisplayUnit {
  // Power meters show watts wherever they stand.
  if (unit === 'W') return { label: 'W', perSi: 1 };
  return displayUnit(unit, { system, milli: unit === 's' && high < SHORT });
}
