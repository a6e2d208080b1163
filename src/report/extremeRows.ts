import type { Extreme } from '../survey/inverse/extreme.ts';
import type { UnitSystem } from './formatQuantity.ts';
import { countOrQuantity } from './judgedQuantity.ts';
import { EXTREME_LABELS } from './judgementWords.ts';
import type { TerminalRow } from './terminalRows.ts';

/** How far each quantity may go until a criterion fails, as rows for the terminal. */
export function extremeRows(extremes: readonly Extreme[], units: UnitSystem): TerminalRow[] {
  return extremes.map(({ name, unit, present, boundary, missing, remark }) => {
    const show = (value: number | null) => countOrQuantity(value, unit, units, DEAD_TIMES.includes(name));
    const now = present === null ? '' : `now ${show(present)}`;
    const notes =
      boundary === null ? [`not answered: ${missing ?? ''}`] : [boundaryWords(boundary, show), now, remark];
    return {
      label: EXTREME_LABELS[name],
      value: show(boundary?.value ?? null),
      note: notes.filter((note) => note !== '').join('; '),
    };
  });
}

const DEAD_TIMES: readonly Extreme['name'][] = ['shortestDeadTime', 'longestDeadTime'];

function boundaryWords(
  { kind, beyond, binding }: NonNullable<Extreme['boundary']>,
  show: (value: number | null) => string,
): string {
  const [first] = binding;
  switch (kind) {
    case 'found':
      return `beyond it: ${first ?? 'a criterion'}`;
    case 'everything':
      return 'nothing tried fails: more may pass';
    case 'nothing':
      return `nothing tried passes; at ${show(beyond)}: ${first ?? 'a criterion'}`;
    default:
      return kind satisfies never;
  }
}
