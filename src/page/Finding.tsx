import { CAUTIONS } from '../report/cautions.ts';
import { isCovered } from '../report/lesson/lesson.ts';
import { formatProblem } from '../scenario/problem.ts';
import type { PageProps } from './actions.ts';

/** What the run shows, in sentences; before it what must be known first, after it the cautions. */
export function Finding({ state }: PageProps) {
  // While a class predicts the run, nothing may tell what it does.
  const view = isCovered(state.lesson.value) ? null : state.view.value;
  const problems = state.problems.value;
  return (
    <div class="finding" aria-live="polite">
      {state.trouble.value === '' ? null : (
        <p class="alarm" role="alert">
          {state.trouble.value}
        </p>
      )}
      {problems.length === 0 ? null : (
        <div class="alarm" role="alert">
          <p>This is no scenario that can be run; the pictures still show the last one that was.</p>
          <ul>
            {problems.slice(0, 5).map((problem) => (
              <li key={formatProblem(problem)}>{formatProblem(problem)}</li>
            ))}
          </ul>
        </div>
      )}
      {view?.alarms.map((text) => (
        <p class="alarm" key={text}>
          {text}
        </p>
      ))}
      {state.linkTrouble.value === '' ? null : (
        <p class="alarm" role="alert">
          {state.linkTrouble.value}
        </p>
      )}
      <p>
        {state.view.value === null ? 'Computing the first run …' : (view?.finding ?? '')}{' '}
        <small class="cautions">{CAUTIONS.join(' ')}</small>
      </p>
    </div>
  );
}
