import type { FailureConsequences } from '../../assess/stop/failureConsequences.ts';
import { list, paragraph } from '../markup.ts';

/** What happens where supply, reversing contactor or zero-speed switch fails. */
export function consequencesSection(consequences: FailureConsequences | null): string {
  const body =
    consequences === null
      ? paragraph('Not judged because no plug or reversal takes place in the run.')
      : list(consequences.sentences);
  return `<section><h2>If supply, contactor or switch fails</h2>\n${body}\n</section>`;
}
