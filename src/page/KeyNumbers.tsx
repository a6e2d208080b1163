import { keyChanges, rawNumber } from '../report/live/comparedNumbers.ts';
import type { PageProps } from './actions.ts';

/** The four numbers that matter most and the verdict of this run alone, in one strip above the pictures. */
export function KeyNumbers({ state }: PageProps) {
  const view = state.view.value;
  if (view === null) return null;
  const changes = keyChanges(view, state.pinned.value);
  return (
    <dl class="strip">
      {view.keyNumbers.map(({ key, label, value, detail }, i) => (
        <div key={label}>
          <dt>{label}</dt>
          <dd>
            <data value={rawNumber(view, key)} data-key-number={key ?? ''}>
              {value}
            </data>{' '}
            {changes[i] === '' ? null : <span class="change">{changes[i]}</span>}
            <small>{detail}</small>
          </dd>
        </div>
      ))}
      <div class="strip-verdict" data-outcome={view.verdict.outcome}>
        <dt>Verdict at this closing angle</dt>
        <dd>{view.verdict.sentence}</dd>
      </div>
    </dl>
  );
}
