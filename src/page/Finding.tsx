import type { PageProps } from './actions.ts';

/** What the run shows, in sentences. */
export function Finding({ state }: PageProps) {
  const view = state.view.value;
  return view === null ? null : <p class="finding">{view.finding}</p>;
}
