import type { Signal } from '@preact/signals';
import {
  isConcealing,
  isCovered,
  type Lesson as LessonData,
  withStudent,
} from '../../report/lesson/lesson.ts';
import type { PageProps } from '../actions.ts';
import { FindFault } from './FindFault.tsx';
import { LessonFiles } from './LessonFiles.tsx';
import { Predict } from './Predict.tsx';
import { SetUp } from './SetUp.tsx';
import './lesson.css';

/** What the parts of class mode are given: the run as it is, not concealed, and the lesson; null while a teacher sets one up. */
export interface LessonProps extends PageProps {
  readonly lesson: Signal<LessonData | null>;
}

/** Class mode: set a lesson up and hand out its link, or take it: predict, take readings, reveal, compare. */
export function Lesson({ state, act, lesson }: LessonProps) {
  const now = lesson.value;
  return (
    <div class="lesson">
      <h2>{now === null ? 'Set a class its task' : 'Your task'}</h2>
      <label class="tick">
        <input
          type="checkbox"
          checked={state.largePrint.value}
          onChange={({ currentTarget }) => {
            state.largePrint.value = currentTarget.checked;
          }}
        />{' '}
        Large print for a projector
      </label>
      {now === null ? (
        <SetUp state={state} act={act} lesson={lesson} />
      ) : (
        <>
          <label class="field">
            Your name (stays on this page and on your sheet)
            <input
              type="text"
              autocomplete="off"
              value={now.student}
              onInput={({ currentTarget }) => {
                lesson.value = withStudent(now, currentTarget.value);
              }}
            />
          </label>
          {now.mode === 'hiddenFault' ? <FindFault state={state} act={act} lesson={lesson} /> : null}
          {now.questions.length > 0 ? <Predict state={state} act={act} lesson={lesson} /> : null}
          <LessonFiles state={state} act={act} lesson={lesson} />
          <button
            type="button"
            disabled={isCovered(now) || isConcealing(now)}
            onClick={() => {
              lesson.value = null;
            }}
          >
            Set another task
          </button>
        </>
      )}
    </div>
  );
}
