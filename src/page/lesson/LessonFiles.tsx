import { useSignal } from '@preact/signals';
import { isConcealing, isCovered } from '../../report/lesson/lesson.ts';
import { download } from '../pictures/download.ts';
import { VERSION } from '../worker/version.ts';
import type { LessonProps } from './Lesson.tsx';

/** What writes the sheets is loaded only when one is asked for. */
const loadPapers = () => import('./papers.ts');

/** What a student takes home: the answer sheet at any time, the handout with its answers once they have been seen. */
export function LessonFiles({ state, lesson }: LessonProps) {
  const trouble = useSignal('');
  const now = lesson.value;
  const view = state.view.value;
  if (now === null || view === null) return null;
  const save = async (kind: 'html' | 'csv' | 'handout') => {
    trouble.value = '';
    try {
      const papers = await loadPapers();
      if (kind === 'handout') {
        download(
          'handout.html',
          papers.renderHandoutHtml({ view, lesson: now, version: VERSION }),
          'text/html',
        );
        return;
      }
      const sheet = papers.answerSheet({
        title: view.scenario.title,
        text: state.viewText.value,
        lesson: now,
        units: state.units.value,
        version: VERSION,
      });
      if (kind === 'html') download('answer-sheet.html', papers.renderAnswerSheetHtml(sheet), 'text/html');
      else download('answer-sheet.csv', papers.renderAnswerSheetCsv(sheet), 'text/csv');
    } catch {
      trouble.value = 'The sheet could not be written: load the page again and try once more.';
    }
  };
  return (
    <section aria-label="Sheets">
      <h3>Sheets</h3>
      <p class="actions">
        <button type="button" onClick={() => void save('html')}>
          Answer sheet to print
        </button>
        <button type="button" onClick={() => void save('csv')}>
          Answer sheet as CSV
        </button>
        <button
          type="button"
          disabled={isCovered(now) || isConcealing(now)}
          onClick={() => void save('handout')}
        >
          Handout with answers
        </button>
      </p>
      <p role="alert" class="wrong">
        {trouble.value}
      </p>
    </section>
  );
}
