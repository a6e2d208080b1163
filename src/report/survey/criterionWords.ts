import type { CriterionKey } from '../../assess/criterion.ts';
import { CRITERION_LABELS } from '../judgementWords.ts';

/** What decides where no criterion does. */
export const RUN_ITSELF = 'how the run itself ends or what its control does';

/** What a criterion of a verdict is called. */
export function criterionWords(key: string): string {
  return CRITERION_LABELS[key as CriterionKey] ?? key;
}
