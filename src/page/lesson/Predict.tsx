import { answersOf } from '../../report/lesson/answers.ts';
import { comparisonRows } from '../../report/lesson/comparisonRows.ts';
import { isCovered, withRevealed } from '../../report/lesson/lesson.ts';
import type { LessonProps } from './Lesson.tsx';
import { QuestionField } from './QuestionField.tsx';

/** Predictions before the run is seen, and afterwards what became of them. */
export function Predict({ state, act, lesson }: LessonProps) {
  const now = lesson.value;
  const view = state.view.value;
  if (now === null || view === null) return null;
  const answers = answersOf(view);
  const rows = comparisonRows(now, answers, state.units.value);
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
            lesson.value = withRevealed(now);
          }}
        >
          Reveal all answers
        </button>
      ) : null}
      <div aria-live="polite">
        {rows.length === 0 ? null : (
          // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reached by keyboard
          <section class="scroll" aria-label="Predictions and answers" tabIndex={0}>
            <table>
              <caption>Predictions and answers</caption>
              <thead>
                <tr>
                  <th scope="col">Question</th>
                  <th scope="col">Prediction</th>
                  <th scope="col">The run</th>
                  <th scope="col">Comparison</th>
                </tr>
              </thead>
              <tbody>
                {rows.map((row) => (
                  <tr key={row.key}>
                    <th scope="row">{row.name}</th>
                    <td>{row.prediction}</td>
                    <td class="run">
                      {row.answer}
                      <span class="detail">{row.detail}</span>
                    </td>
                    <td class="comparison">{row.comparison}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </section>
        )}
      </div>
    </section>
  );
}
