import type { SensitivityIndex } from '../../survey/spread/sensitivity.ts';

/** Shares below this are given with one more digit. */
const SMALL_SHARE = 0.01;

/** "62 %", "0.4 %": more digits than the intervals allow would say nothing. */
export function percentText(share: number): string {
  const digits = Math.abs(share) < SMALL_SHARE ? 1 : 0;
  return `${String(Number((100 * share).toFixed(digits)) + 0).replace('-', '−')} %`;
}

/** "62 % (55 % … 69 %)"; null is a dash. */
export function indexText(index: SensitivityIndex | null): string {
  if (index === null) return '—';
  return `${percentText(index.value)} (${percentText(index.low)} … ${percentText(index.high)})`;
}
