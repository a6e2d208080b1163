import { isCovered, withRevealed } from '../../report/lesson/lesson.ts';
import type { LessonProps } from './Lesson.tsx';
import { QuestionField } from './QuestionField.tsx';
import { runToReveal } from './runToReveal.ts';

/** Predictions before the run is seen, and afterwards what became of them. */
export function Predict({ state, act, lesson }: LessonProps) {
  const now = lesson.value;
  const run = runToReveal(state);
  if (now === null || run === null) return null;
  return (
    <section aria-label="Predictions">
      <h3>Predict</h3>
      {isCovered(now) ? (
        <p>
          Answer before you see the run. Its numbers and pictures are covered until every answer is revealed;
          a revealed prediction is locked.
        </p>
      ) : null}
      <ol class="questions">
        {now.questions.map((key) => (
          <QuestionField key={key} question={key} state={state} act={act} lesson={lesson} />
        ))}
      </ol>
      {isCovered(now) ? (
        <button
          type="button"
          disabled={state.pending.value}
          onClick={() => {
            lesson.value = withRevealed(now, run);
          }}
        >
          Reveal all answers
        </button>
      ) : null}
    </section>
  );
}
