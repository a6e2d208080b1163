import type { Suitability } from '../../assess/suitability.ts';
import type { UnitSystem } from '../formatQuantity.ts';
import { judgedQuantity } from '../judgedQuantity.ts';
import { CRITERION_LABELS, outcomeWords } from '../judgementWords.ts';
import type { LiveVerdict } from './runView.ts';

/** A verdict and its criteria in words, in the order of presentation. */
export function liveVerdict({ verdict, criteria }: Suitability, units: UnitSystem): LiveVerdict {
  return {
    outcome: verdict.outcome,
    sentence: verdict.sentence,
    criteria: criteria.map((criterion) => ({
      key: criterion.key,
      name: CRITERION_LABELS[criterion.key],
      outcome: criterion.outcome,
      words: outcomeWords(criterion),
      value: judgedQuantity(criterion, criterion.value, units),
      limit: judgedQuantity(criterion, criterion.limit, units),
      limitIs: criterion.limitIs,
      remark: criterion.remark,
    })),
  };
}
