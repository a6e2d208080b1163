import type { Estimation, NameplateItem } from '../scenario/nameplate.ts';
import { formatDeviation, formatPercent, formatQuantity, type UnitSystem } from './formatQuantity.ts';

/** What the circuit was found from, in words. */
export const ESTIMATED_FROM = { nameplate: 'nameplate', tests: 'tests' } as const;

/** Words before a value that is a limit. */
export const LIMIT_WORDS = { value: '', least: 'at least ', most: 'at most ' } as const;

/** Heading of what the report says about the estimation. */
export function estimationTitle(estimation: Estimation): string {
  return `From ${ESTIMATED_FROM[estimation.from]} to circuit`;
}

/** A value of an item with its unit: "58.6 A", "92.4 %" for an efficiency, "0.860" for another ratio. */
export function formatItem(item: NameplateItem, value: number | null, units: UnitSystem): string {
  if (value !== null && item.unit === '1' && /efficiency/u.test(item.name)) return formatPercent(value);
  return formatQuantity(value, item.unit, { system: units });
}

/** "given", as written on the plate, in contrast to what a table or an assumption filled in. */
export function isGiven({ source }: NameplateItem): boolean {
  return /^given\b/u.test(source);
}

/** What a reader of the terminal needs to know of the estimation: how well it does, and what was not given. */
export function estimationLines(estimation: Estimation, units: UnitSystem): string[] {
  const aimed = estimation.items.filter((item) => item.target !== null);
  const size = ({ error }: NameplateItem) => Math.abs(error ?? 0);
  const worst = aimed
    .filter((item) => item.error !== null)
    .reduce<NameplateItem | null>(
      (most, item) => (most === null || size(item) > size(most) ? item : most),
      null,
    );
  const filled =
    estimation.from === 'tests'
      ? []
      : estimation.items.filter((item) => item.target !== null && !isGiven(item));
  const fit =
    worst === null || estimation.changedBy !== undefined
      ? ''
      : ` Largest deviation: ${worst.name} ${formatItem(worst, worst.reproduced, units)} for ${LIMIT_WORDS[worst.kind]}${formatItem(worst, worst.target, units)}, ${formatDeviation(worst.error)}.`;
  return [
    `Circuit estimated from the ${ESTIMATED_FROM[estimation.from]}, ${aimed.length} items aimed at.${fit}`,
    ...(filled.length === 0
      ? []
      : [`Not given: ${filled.map((item) => `${item.name} (${item.source})`).join('; ')}.`]),
    ...estimation.remarks,
  ];
}
