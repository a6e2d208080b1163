import type { Criterion } from '../assess/criterion.ts';
import { formatNumber, formatPercent, formatQuantity, type UnitSystem } from './formatQuantity.ts';

/** rad */
const TURN = 2 * Math.PI;

/** Criteria whose ratio people read in per cent. */
const PERCENTAGES: readonly Criterion['key'][] = ['voltageDip', 'lockedRotorWithstand', 'overloadRelay'];

/** Value or limit of a criterion with its unit as the trade writes it; null is "—". */
export function judgedQuantity(
  { key, unit }: Pick<Criterion, 'key' | 'unit'>,
  value: number | null,
  units: UnitSystem,
): string {
  if (value === null) return '—';
  if (!Number.isFinite(value)) return 'no bound';
  if (PERCENTAGES.includes(key)) return formatPercent(value);
  if (key === 'stopAngle') return `${formatNumber(value / TURN)} rev`;
  if (unit === '1') return String(value);
  return countOrQuantity(value, unit, units, key === 'deadTimeMargin');
}

/** A number of operations, a rate per hour, or a quantity with its display unit; null is "—". */
export function countOrQuantity(
  value: number | null,
  unit: string,
  units: UnitSystem,
  milli = false,
): string {
  if (value === null) return '—';
  if (unit === 'operations') return countText(value);
  if (unit === '1/h') return `${formatNumber(value)} /h`;
  return formatQuantity(value, unit, { system: units, milli });
}

/** A number of operations to the three digits that are known of it at most. */
export function countText(count: number | null): string {
  if (count === null) return '—';
  if (!Number.isFinite(count)) return 'no wear';
  return count < 100 ? String(Math.floor(count)) : formatNumber(Number(count.toPrecision(3)));
}
