import { useSignal } from '@preact/signals';
import { withGuess, withRevealed } from '../../report/lesson/lesson.ts';
import { CHANGE_OVER_CHOICES, QUESTIONS, type QuestionKey } from '../../report/lesson/question.ts';
import { guessExample, readGuess } from '../../report/lesson/readGuess.ts';
import type { LessonProps } from './Lesson.tsx';
import { runToReveal } from './runToReveal.ts';

/** One question with the field for the prediction, and what became of it once the answer is revealed. */
export function QuestionField({
  state,
  lesson,
  question: key,
}: LessonProps & { readonly question: QuestionKey }) {
  const now = lesson.value;
  const view = state.view.value;
  const draft = useSignal(now?.predictions[key]?.text ?? '');
  const message = useSignal('');
  if (now === null || view === null) return null;
  const question = QUESTIONS[key];
  const revealed = now.revealed.includes(key);
  const seen = now.seen[key];
  const guess = (text: string) => {
    draft.value = text;
    const read = readGuess(text, question, { units: state.units.value, base: view.film.base });
    const empty = text.trim() === '';
    message.value = read.kind === 'unreadable' && !empty ? read.message : '';
    lesson.value = withGuess(now, key, read.kind === 'value' ? { text, value: read.value } : null);
  };
  const field = `guess-${key}`;
  const help = `help-${key}`;
  return (
    <li>
      <label for={field}>{question.sentence}</label>
      {question.kind === 'choice' ? (
        <select
          id={field}
          value={now.predictions[key]?.value ?? ''}
          disabled={revealed}
          onChange={({ currentTarget }) => guess(currentTarget.value)}
        >
          <option value="">no prediction yet</option>
          {Object.entries(CHANGE_OVER_CHOICES).map(([choice, words]) => (
            <option key={choice} value={choice}>
              {words}
            </option>
          ))}
        </select>
      ) : (
        <input
          id={field}
          type="text"
          autocomplete="off"
          spellcheck={false}
          value={draft.value}
          disabled={revealed}
          aria-invalid={message.value === '' ? undefined : 'true'}
          aria-describedby={help}
          onInput={({ currentTarget }) => guess(currentTarget.value)}
        />
      )}
      <span id={help} class={message.value === '' ? 'detail' : 'wrong'} aria-live="polite">
        {message.value === '' && question.kind === 'number' && !revealed
          ? guessExample(question, state.units.value)
          : message.value}
      </span>
      {revealed ? null : (
        <button
          type="button"
          disabled={now.predictions[key] === undefined || state.pending.value}
          aria-label={`Reveal the answer: ${question.name}`}
          onClick={() => {
            const run = runToReveal(state);
            if (run !== null) lesson.value = withRevealed(now, run, [key]);
          }}
        >
          Reveal
        </button>
      )}
      <div aria-live="polite">
        {seen === undefined ? null : (
          <dl class="outcome">
            {seen.prediction === '' || question.kind === 'choice' ? null : (
              <div>
                <dt>Prediction</dt>
                <dd>{seen.prediction}</dd>
              </div>
            )}
            <div>
              <dt>The run</dt>
              <dd>
                {seen.text}
                <span class="detail">{seen.detail}</span>
              </dd>
            </div>
            {seen.comparison === '' ? null : (
              <div>
                <dt>Comparison</dt>
                <dd class="comparison">{seen.comparison}</dd>
              </div>
            )}
          </dl>
        )}
      </div>
    </li>
  );
}
