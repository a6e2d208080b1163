import { useComputed, useSignal } from '@preact/signals';
import { answersOf } from '../../report/lesson/answers.ts';
import { faultsInWords } from '../../report/lesson/faultChoices.ts';
import { hide } from '../../report/lesson/hiddenFault.ts';
import { type Lesson, type LessonMode, newLesson } from '../../report/lesson/lesson.ts';
import { QUESTION_KEYS, QUESTIONS, type QuestionKey } from '../../report/lesson/question.ts';
import { tellingLines } from '../../report/lesson/tellingLines.ts';
import { download } from '../pictures/download.ts';
import { VERSION } from '../worker/version.ts';
import type { LessonProps } from './Lesson.tsx';
import { MakeLink } from './MakeLink.tsx';

const MODES: readonly { readonly mode: LessonMode; readonly words: string }[] = [
  { mode: 'predict', words: 'Predict, then reveal' },
  { mode: 'hiddenFault', words: 'Find a hidden fault' },
];

/** A teacher's side: what is asked of this scenario, the link that carries it, the handout. */
export function SetUp({ state, act, lesson }: LessonProps) {
  const mode = useSignal<LessonMode>('predict');
  const left = useSignal<readonly QuestionKey[]>([]);
  const trouble = useSignal('');
  const faults = useComputed(() => state.view.value?.scenario.starter.faults ?? []);
  const asked = useComputed(() => {
    if (state.view.value === null) return [];
    const answers = answersOf(state.view.value);
    return QUESTION_KEYS.filter((key) => answers.has(key));
  });
  // A fault is looked for with readings: whoever is asked for numbers as well finds them covered.
  const drafted = useComputed((): Lesson => {
    const hiding = mode.value === 'hiddenFault';
    const questions = hiding ? [] : asked.value.filter((key) => !left.value.includes(key));
    return newLesson(mode.value, questions, hiding ? hide(faults.value) : null);
  });
  const text = async (): Promise<string | null> => {
    trouble.value = '';
    if (mode.value === 'predict') return state.text.value;
    const stripped = await act.withoutFaults();
    if (stripped.refusal === null) return stripped.text;
    trouble.value = `The faults cannot be taken out of the text: ${stripped.refusal}.`;
    return null;
  };
  const madeOf = JSON.stringify([state.text.value, drafted.value, state.units.value, state.largePrint.value]);
  const view = state.view.value;
  const telling = mode.value === 'hiddenFault' ? tellingLines(state.text.value) : [];
  const refused = state.problems.value.length > 0;
  const empty = mode.value === 'predict' && drafted.value.questions.length === 0;
  return (
    <>
      <fieldset>
        <legend>Task</legend>
        {MODES.map(({ mode: one, words }) => (
          <label class="tick" key={one}>
            <input
              type="radio"
              name="lesson-mode"
              checked={mode.value === one}
              onChange={() => {
                mode.value = one;
              }}
            />{' '}
            {words}
          </label>
        ))}
      </fieldset>
      {mode.value === 'predict' ? (
        <fieldset>
          <legend>Questions</legend>
          {asked.value.length === 0 ? (
            <p>This run answers none of the questions: let a hand start the machine and plug it.</p>
          ) : null}
          {asked.value.map((key) => (
            <label class="tick" key={key}>
              <input
                type="checkbox"
                checked={!left.value.includes(key)}
                onChange={({ currentTarget }) => {
                  const others = left.value.filter((other) => other !== key);
                  left.value = currentTarget.checked ? others : [...others, key];
                }}
              />{' '}
              {QUESTIONS[key].name}
            </label>
          ))}
        </fieldset>
      ) : (
        <fieldset>
          <legend>Fault to be found</legend>
          <p>Now in this scenario: {faultsInWords(faults.value)}.</p>
          <p class="detail">
            Choose the fault at the buttons. The link carries the scenario without it, and the fault itself so
            that it cannot be read at a glance. It is not secret from a determined reader.
          </p>
          {telling.length === 0 ? null : (
            <>
              <p>
                These lines speak of faults. The list of faults is taken out; a comment or a title stays in
                the link:
              </p>
              <ul class="telling">
                {telling.map(({ line, text: words }) => (
                  <li key={line}>
                    Line {line}: <code>{words}</code>
                  </li>
                ))}
              </ul>
            </>
          )}
        </fieldset>
      )}
      {refused ? (
        <p class="wrong">
          The text is no scenario that can be run: no link and no task can be made of it. Mend it under Files
          first.
        </p>
      ) : null}
      <MakeLink
        disabled={empty || view === null || refused || state.pending.value}
        madeOf={madeOf}
        parts={async () => {
          const plain = await text();
          if (plain === null) return null;
          return {
            text: plain,
            lesson: drafted.value,
            units: state.units.value,
            largePrint: state.largePrint.value,
          };
        }}
      />
      <p class="actions">
        <button
          type="button"
          disabled={empty || view === null || refused || state.pending.value}
          onClick={async () => {
            const plain = await text();
            if (plain === null) return;
            const begun = drafted.value;
            lesson.value = begun;
            if (plain !== state.text.value) act.open(plain, state.fileName.value);
          }}
        >
          Begin here
        </button>
        <button
          type="button"
          disabled={empty || view === null || refused || state.pending.value}
          onClick={async () => {
            if (view === null) return;
            const { renderHandoutHtml } = await import('./papers.ts');
            download(
              'handout.html',
              renderHandoutHtml({ view, lesson: drafted.value, version: VERSION }),
              'text/html',
            );
          }}
        >
          Handout with answers
        </button>
      </p>
      <p role="alert" class="wrong">
        {trouble.value}
      </p>
    </>
  );
}
