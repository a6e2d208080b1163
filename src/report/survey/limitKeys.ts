import type { RowVerdict } from '../../survey/spec/survey.ts';

/** Letters for what decides in the cells of a limit map. */
export interface LimitKeys {
  /** In the order of their letters. */
  readonly entries: readonly LimitKey[];
  /** Letters of a cell: "ac"; empty where nothing is known to decide. */
  readonly of: (verdict: RowVerdict | null) => string;
}

/** A letter and what it stands for. */
export interface LimitKey {
  readonly letter: string;
  /** Key of the criterion; empty: no criterion, but how the run itself goes. */
  readonly criterion: string;
}

/** Where no criterion decides but how the run ends or what its control does. */
const RUN_ITSELF = '*';
const FIRST_LETTER = 'a'.codePointAt(0)!;

/** The criterion that decides in most cells comes first. */
export function limitKeys(verdicts: readonly (RowVerdict | null)[]): LimitKeys {
  const counts = new Map<string, number>();
  for (const verdict of verdicts)
    for (const key of keysOf(verdict)) counts.set(key, (counts.get(key) ?? 0) + 1);
  const criteria = [...counts].sort((a, b) => b[1] - a[1]).map(([key]) => key);
  const letters = new Map(criteria.map((key, k) => [key, String.fromCodePoint(FIRST_LETTER + k)]));
  const of = (verdict: RowVerdict | null): string =>
    isRunItself(verdict)
      ? RUN_ITSELF
      : keysOf(verdict)
          .map((key) => letters.get(key)!)
          .sort()
          .join('');
  return {
    of,
    entries: [
      ...criteria.map((criterion) => ({ letter: letters.get(criterion)!, criterion })),
      ...(verdicts.some(isRunItself) ? [{ letter: RUN_ITSELF, criterion: '' }] : []),
    ],
  };
}

function keysOf(verdict: RowVerdict | null): string[] {
  return (verdict?.decisive ?? '').split(' ').filter((key) => key !== '');
}

function isRunItself(verdict: RowVerdict | null): boolean {
  return verdict !== null && verdict.outcome !== 'suitable' && keysOf(verdict).length === 0;
}
