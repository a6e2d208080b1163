import { useRef } from 'preact/hooks';
import type { Problem } from '../../index.ts';
import { offsetOfPlace, saveName } from '../../scenario/edit/placeWords.ts';
import type { PageProps } from '../actions.ts';
import { download } from '../pictures/download.ts';
import { draft, notes, openText, unreadable } from './openFile.ts';
import { Problems } from './Problems.tsx';

/** The scenario as text, with what is wrong with it. */
export function Editor({ state, act }: PageProps) {
  const area = useRef<HTMLTextAreaElement>(null);
  const text = state.text.value;
  const own = draft.value;
  const written = own?.text ?? text;
  const forget = () => {
    draft.value = null;
  };
  const go = ({ line, column }: Problem) => {
    const field = area.current;
    if (field === null || line === null || column === null) return;
    const at = offsetOfPlace(field.value, line, column);
    field.setSelectionRange(at, at);
    // A field that gains the focus scrolls to its caret; one that has it does not.
    field.blur();
    field.focus();
  };
  return (
    <section class="editor" aria-label="Scenario as text">
      <label for="scenario-text">
        {state.fileName.value}
        {own === null ? '' : ', changed and not applied'}
      </label>
      <textarea
        id="scenario-text"
        ref={area}
        rows={18}
        spellcheck={false}
        autocomplete="off"
        autocapitalize="off"
        wrap="off"
        value={written}
        onInput={({ currentTarget }) => {
          const { value } = currentTarget;
          draft.value = value === text ? null : { text: value, base: own?.base ?? text };
        }}
      />
      <p class="actions">
        <button
          type="button"
          disabled={own === null}
          onClick={() => openText(written, state.fileName.value, { state, act })}
        >
          Apply
        </button>
        <button type="button" disabled={own === null} onClick={forget}>
          Discard changes
        </button>
        <button
          type="button"
          onClick={() => download(saveName(state.fileName.value), written, 'application/yaml')}
        >
          Save as .yaml
        </button>
        <button
          type="button"
          onClick={() => {
            notes.value = [];
            act.undo();
          }}
        >
          Undo last change
        </button>
      </p>
      <div role="status">
        {notes.value.map((words) => (
          <p key={words}>{words}</p>
        ))}
        {own === null || own.base === text ? null : (
          <p>
            The scenario has changed since you began to write here. Apply would put your text in place of
            those changes.{' '}
            <button type="button" onClick={forget}>
              Take the present text
            </button>
          </p>
        )}
      </div>
      <Problems problems={unreadable.value} onGo={() => {}} />
      <Problems problems={state.problems.value} onGo={go} />
    </section>
  );
}
