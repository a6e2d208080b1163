import { concealed } from '../../report/lesson/concealed.ts';
import { FAULT_CHOICES, isFaultChoice, judgeFault } from '../../report/lesson/faultChoices.ts';
import { unhide } from '../../report/lesson/hiddenFault.ts';
import {
  MOST_READINGS,
  withFaultAnswer,
  withFaultRevealed,
  withoutReading,
  withReading,
} from '../../report/lesson/lesson.ts';
import { takeReading } from '../../report/lesson/readings.ts';
import { readingTable } from '../../report/lesson/readingTable.ts';
import type { LessonProps } from './Lesson.tsx';

/** Something is wrong: take readings at the playhead, name it, see whether it is so. */
export function FindFault({ state, lesson }: LessonProps) {
  const now = lesson.value;
  const view = state.view.value;
  if (now === null || view === null) return null;
  const { heads, rows } = readingTable(now.readings);
  const answer = now.faultAnswer;
  const faults = now.hidden === null ? null : unhide(now.hidden);
  return (
    <section aria-label="Hidden fault">
      <h3>Find what is wrong</h3>
      <p>
        Something may be wrong with this starter. Press its buttons, move to an instant, take readings there,
        and name the fault. It is hidden from a glance only, not from a determined reader of this page.
      </p>
      <button
        type="button"
        disabled={state.pending.value || now.faultRevealed}
        onClick={() => {
          lesson.value = withReading(now, takeReading(concealed(view).film, state.playhead.value.t));
        }}
      >
        Take a reading at the cursor
      </button>
      <p class="detail">At most {MOST_READINGS} are kept; the oldest goes first.</p>
      {now.readings.length === 0 ? null : (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reached by keyboard
        <section class="scroll" aria-label="Readings" tabIndex={0}>
          <table>
            <caption>Readings</caption>
            <thead>
              <tr>
                <th scope="col">What is read</th>
                {heads.map((head, i) => (
                  <th scope="col" key={i}>
                    {head}
                    {now.faultRevealed ? null : (
                      <button
                        type="button"
                        aria-label={`Strike the reading at ${head}`}
                        onClick={() => {
                          lesson.value = withoutReading(now, i);
                        }}
                      >
                        strike
                      </button>
                    )}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {rows.map(({ label, cells }) => (
                <tr key={label}>
                  <th scope="row">{label}</th>
                  {cells.map((cell, i) => (
                    <td key={i}>{cell}</td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      )}
      <div class="field">
        <label for="fault-kind">What is wrong</label>
        <select
          id="fault-kind"
          value={answer?.kind ?? ''}
          disabled={now.faultRevealed}
          onChange={({ currentTarget: { value } }) => {
            lesson.value = withFaultAnswer(
              now,
              isFaultChoice(value) ? { kind: value, where: answer?.where ?? '' } : null,
            );
          }}
        >
          <option value="">no answer yet</option>
          {Object.entries(FAULT_CHOICES).map(([kind, words]) => (
            <option key={kind} value={kind}>
              {words}
            </option>
          ))}
        </select>
      </div>
      <label class="field">
        Where, and which readings show it
        <input
          type="text"
          autocomplete="off"
          value={answer?.where ?? ''}
          disabled={now.faultRevealed || answer === null}
          onInput={({ currentTarget }) => {
            if (answer !== null)
              lesson.value = withFaultAnswer(now, { ...answer, where: currentTarget.value });
          }}
        />
      </label>
      <button
        type="button"
        disabled={answer === null || now.faultRevealed}
        onClick={() => {
          lesson.value = withFaultRevealed(now);
        }}
      >
        Reveal what is wrong
      </button>
      <p role="status" class="comparison">
        {now.faultRevealed && answer !== null && faults !== null ? judgeFault(answer.kind, faults).words : ''}
      </p>
    </section>
  );
}
