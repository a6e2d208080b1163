import type { VerdictOutcome } from '../assess/verdict.ts';
import { isConcealing } from '../report/lesson/lesson.ts';
import { keyChanges, rawNumber } from '../report/live/comparedNumbers.ts';
import type { PageProps } from './actions.ts';

const VERDICT_WORDS: Readonly<Record<VerdictOutcome, string>> = {
  suitable: 'suitable by the criteria',
  notSuitable: 'not suitable by the criteria',
  notJudged: 'could not be judged',
};

/** The four numbers that matter most and the verdict of this run alone, in one strip above the pictures. */
export function KeyNumbers({ state }: PageProps) {
  const view = state.view.value;
  if (view === null) return null;
  const verdict = state.verdict.value;
  const changes = keyChanges(view, state.pinned.value);
  return (
    <section aria-label="Key numbers">
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
        <div class="strip-verdict" data-outcome={verdict?.outcome}>
          <dt>Plugging, at this closing angle</dt>
          <dd>
            <strong>
              {isConcealing(state.lesson.value)
                ? 'not judged in this task'
                : verdict === null
                  ? '…'
                  : VERDICT_WORDS[verdict.outcome]}
            </strong>
            <small>
              <button
                type="button"
                class="as-link"
                onClick={() => {
                  state.task.value = 'judge';
                }}
              >
                why, and at other angles
              </button>
            </small>
          </dd>
        </div>
      </dl>
    </section>
  );
}
