import { CAUTIONS } from '../report/cautions.ts';
import { isCovered } from '../report/lesson/lesson.ts';
import { formatProblem } from '../scenario/problem.ts';
import type { PageProps } from './actions.ts';

/** Problems of a text that are named at the top; the editor has them all. */
const MOST_NAMED = 5;

/** What must be known before anything else: what cannot be run and why, how the run ended, and the cautions. */
export function Alarms({ state, act }: PageProps) {
  // While a class predicts the run, nothing may tell what it does.
  const view = isCovered(state.lesson.value) ? null : state.view.value;
  const problems = state.problems.value;
  return (
    <aside class="alarms" aria-label="Messages and cautions">
      <div role="alert">
        {[state.linkTrouble.value, state.trouble.value]
          .filter((text) => text !== '')
          .map((text) => (
            <p class="alarm" key={text}>
              {text}
            </p>
          ))}
        {problems.length === 0 ? null : (
          <div class="alarm">
            <p>
              This is no scenario that can be run
              {state.view.value === null
                ? ': mend its text below, or choose another one.'
                : '; pictures and numbers are still those of the last one that was.'}
            </p>
            <ul>
              {problems.slice(0, MOST_NAMED).map((problem) => (
                <li key={formatProblem(problem)}>{formatProblem(problem)}</li>
              ))}
            </ul>
          </div>
        )}
        {state.isLong.value ? (
          <p class="alarm">
            Still computing.{' '}
            <button type="button" onClick={() => act.stop()}>
              Stop this run
            </button>
          </p>
        ) : null}
        {view?.alarms.map((text) => (
          <p class="alarm" key={text}>
            {text}
          </p>
        ))}
      </div>
      {view?.estimated.map((text) => (
        <p class="estimated" key={text}>
          {text}
        </p>
      ))}
      <p class="cautions">Caution: {CAUTIONS.join(' ')}</p>
    </aside>
  );
}
