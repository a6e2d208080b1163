import { ADJUSTABLES, type HandRange } from '../../scenario/edit/adjustable.ts';
import type { AdjustableKey } from '../../scenario/edit/edit.ts';
import { readField } from '../../scenario/edit/readField.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import { displayUnit, formatNumber, formatQuantity, type UnitSystem } from '../formatQuantity.ts';

/** Positions of a slider: whole numbers from 0 to this. */
export const SLIDER_POSITIONS = 1000;

/** Digits of a value that a slider gives; a position is about 0.3 % of a value on the longest ranges. */
const SLIDER_DIGITS = 3;

/** VA; from here on a short-circuit power is shown in MVA. */
const MEGAVOLTAMPERE = 1e6;

/**
 * Where a value stands on a slider.
 *
 * @param value SI; beyond the range the nearer end
 * @returns whole number from 0 to `SLIDER_POSITIONS`
 */
export function sliderPosition(value: number, { min, max, log }: HandRange): number {
  const held = Math.min(max, Math.max(min, value));
  const share = log ? Math.log(held / min) / Math.log(max / min) : (held - min) / (max - min);
  return Math.round(share * SLIDER_POSITIONS);
}

/**
 * What a slider's position means.
 *
 * @param position from 0 to `SLIDER_POSITIONS`
 * @returns SI, with few digits but for the ends
 */
export function sliderValue(position: number, { min, max, log }: HandRange): number {
  const share = position / SLIDER_POSITIONS;
  if (share <= 0) return min;
  if (share >= 1) return max;
  const value = log ? min * (max / min) ** share : min + share * (max - min);
  const size = log ? Math.abs(value) : Math.max(Math.abs(min), Math.abs(max));
  return roundTo(value, size);
}

/** Rounds to what the given digits of a size are worth. */
function roundTo(value: number, size: number): number {
  const unit = 10 ** (Math.floor(Math.log10(size)) + 1 - SLIDER_DIGITS);
  return Number((Math.round(value / unit) * unit).toPrecision(12));
}

/** What an element that is put in begins with: the middle of its slider, SI. */
export function firstValue(key: AdjustableKey, scenario: Scenario): number {
  return sliderValue(SLIDER_POSITIONS / 2, ADJUSTABLES[key].range(scenario));
}

/** What a key does to a slider. */
export type SliderKey = 'less' | 'more' | 'muchLess' | 'muchMore' | 'least' | 'most';

/** Keys of a keyboard on a slider. */
export const SLIDER_KEYS: Readonly<Record<string, SliderKey>> = {
  ArrowLeft: 'less',
  ArrowDown: 'less',
  ArrowRight: 'more',
  ArrowUp: 'more',
  PageDown: 'muchLess',
  PageUp: 'muchMore',
  Home: 'least',
  End: 'most',
};

/** Steps over a linear range by small keys, and how many of them a large key is worth. */
const SMALL_STEPS = 100;
const LARGE_STEP = 10;

/** The same in one decade of a logarithmic range. */
const STEPS_IN_DECADE = 40;

/**
 * The value a key leads to, on round numbers: steps of 1, 2 or 5 times a power of ten in the unit that is shown.
 *
 * @param value SI
 * @param perSi shown unit over SI
 * @returns SI
 */
export function sliderStep(value: number, range: HandRange, key: SliderKey, perSi: number): number {
  if (key === 'least') return range.min;
  if (key === 'most') return range.max;
  const many = key === 'muchLess' || key === 'muchMore' ? LARGE_STEP : 1;
  const up = key === 'more' || key === 'muchMore';
  const held = Math.min(range.max, Math.max(range.min, value)) * perSi;
  const span = range.log
    ? held * (10 ** (many / STEPS_IN_DECADE) - 1)
    : ((range.max - range.min) * perSi * many) / SMALL_STEPS;
  const step = roundStep(span);
  // A value that already lies on a step moves by a whole one; one between two goes to the next.
  const slack = 1e-6;
  const count = up ? Math.floor(held / step + slack) + 1 : Math.ceil(held / step - slack) - 1;
  return Math.min(range.max, Math.max(range.min, Number((count * step).toPrecision(12)) / perSi));
}

/** The largest of 1, 2 and 5 times a power of ten that is not above a span. */
function roundStep(span: number): number {
  const decade = 10 ** Math.floor(Math.log10(span));
  const mantissa = span / decade;
  return decade * (mantissa >= 5 ? 5 : mantissa >= 2 ? 2 : 1);
}

/** Unit that stands beside a field, in a spelling that is read back, and shown unit over SI. */
export function fieldUnit(
  key: AdjustableKey,
  scenario: Scenario,
  units: UnitSystem,
): { readonly label: string; readonly perSi: number } {
  const unit = ADJUSTABLES[key].unit(scenario);
  if (unit === 'VA') return { label: 'MVA', perSi: 1 / MEGAVOLTAMPERE };
  return displayUnit(unit, { system: units, milli: true });
}

/** An adjustable value as a person reads it, or what its absence is called. */
export function adjustableText(
  key: AdjustableKey,
  value: number | null,
  scenario: Scenario,
  units: UnitSystem,
): string {
  const { absentWords, unit } = ADJUSTABLES[key];
  if (value === null) return absentWords ?? '—';
  const si = unit(scenario);
  if (si === 'VA') return `${formatNumber(value / MEGAVOLTAMPERE)} MVA`;
  return formatQuantity(value, si, { system: units, milli: true });
}

/** A field's own text: the number and the unit, as it can be typed again. */
export function fieldText(
  key: AdjustableKey,
  value: number | null,
  scenario: Scenario,
  units: UnitSystem,
): string {
  if (value === null) return '';
  const { label, perSi } = fieldUnit(key, scenario, units);
  return `${Number((value * perSi).toPrecision(4))} ${label}`;
}

/** Reads what was typed into the field of an adjustable quantity; SI, or a sentence that says what is wrong and what may be typed. */
export function fieldValue(
  key: AdjustableKey,
  typed: string,
  scenario: Scenario,
  units: UnitSystem,
): number | { readonly message: string } {
  const { dimension, allowed } = ADJUSTABLES[key];
  const value = readField(typed, dimension(scenario), fieldUnit(key, scenario, units).label);
  if (typeof value !== 'number') return value;
  const { min, max, aboveMin } = allowed(scenario);
  if (value >= min && value <= max && (aboveMin !== true || value > min)) return value;
  const words = (si: number) => adjustableText(key, si, scenario, units);
  const least = aboveMin === true ? `more than ${words(min)}, at most` : `${words(min)} to`;
  return { message: `${words(value)} is out of range; expected ${least} ${words(max)}` };
}

/** A time as it can be typed again: "12.5 ms". */
export function timeText(seconds: number): string {
  return `${Number((seconds * 1e3).toPrecision(6))} ms`;
}
