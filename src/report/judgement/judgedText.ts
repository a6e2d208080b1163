import type { CountRange, DateRange } from '../../assess/wear/contactWearTypes.ts';
import {
  displayUnit,
  formatMultiple,
  formatNumber,
  formatPercent,
  formatQuantity,
  type UnitSystem,
} from '../formatQuantity.ts';
import { countText } from '../judgedQuantity.ts';

/** "183 000 (63 700 … 366 000)"; null is `otherwise`. */
export function countRangeText(range: CountRange | null, otherwise: string): string {
  if (range === null) return otherwise;
  return `${countText(range.value)} (${countText(range.low)} … ${countText(range.high)})`;
}

/** "2026-12-02 (2026-02-07 … 2028-03-04)"; null is `otherwise`. */
export function dateRangeText(range: DateRange | null, otherwise: string): string {
  if (range === null) return otherwise;
  const day = (date: string | null) => date ?? 'after 9999-12-31';
  return `${day(range.value)} (${day(range.low)} … ${day(range.high)})`;
}

/** A temperature or rise; one that grows for ever is "without bound". */
export function heatText(value: number, unit: '°C' | 'K', units: UnitSystem): string {
  return Number.isFinite(value) ? formatQuantity(value, unit, { system: units }) : 'without bound';
}

/** How many operations: whole ones, or that they may go on for ever. */
export function operationsText(count: number): string {
  return Number.isFinite(count) ? countText(count) : 'any number';
}

/** An excess of more than so many times the limit is told as a multiple of it. */
const LARGEST_EXCESS = 1;

/** What is left between a value and its limit: a share of the limit, of temperatures a difference; a multiple far beyond it. */
export function leftText(
  {
    value,
    limit,
    limitIs,
    margin,
    unit,
  }: {
    readonly value: number | null;
    readonly limit: number | null;
    readonly limitIs: 'most' | 'least';
    readonly margin: number | null;
    readonly unit: string;
  },
  units: UnitSystem,
): string {
  if (value === null || limit === null || margin === null) return '—';
  const left = limitIs === 'most' ? limit - value : value - limit;
  if (!Number.isFinite(left)) return left > 0 ? 'without bound' : 'exceeded without bound';
  if (limit === 0) return '—';
  if (unit === '°C') {
    const { label, perSi } = displayUnit('K', { system: units });
    return `${formatNumber(left * perSi)} ${label}`;
  }
  if (limitIs === 'most' && margin < -LARGEST_EXCESS) return formatMultiple(value / limit, 'limit');
  return formatPercent(margin);
}

/** First letter as a capital. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Ends with a full stop. */
export function fullStop(text: string): string {
  return /[.!?]$/u.test(text) ? text : `${text}.`;
}

/** A sentence out of words. */
export function sentenceOf(text: string): string {
  return fullStop(capital(text));
}
