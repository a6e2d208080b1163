import type { RevealedRun } from '../../report/lesson/seenAnswer.ts';
import type { PageState } from '../state.ts';

/** The run that answers are revealed from: the one that is shown, with the text that made it; null before the first. */
export function runToReveal({ view, viewText }: PageState): RevealedRun | null {
  if (view.value === null) return null;
  const { numbers, units, scenario } = view.value;
  return { numbers, units, title: scenario.title, text: viewText.value };
}
