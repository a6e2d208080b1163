import { useRef } from 'preact/hooks';
import type { Problem } from '../../index.ts';
import { offsetOfPlace, saveName } from '../../scenario/edit/placeWords.ts';
import type { PageProps } from '../actions.ts';
import { download } from '../pictures/download.ts';
import { draft, openText, unreadable } from './openFile.ts';
import { Problems } from './Problems.tsx';

/** The scenario as text, with what is wrong with it. */
export function Editor({ state, act }: PageProps) {
  const area = useRef<HTMLTextAreaElement>(null);
  const text = state.text.value;
  const written = draft.value ?? text;
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
        {draft.value === null ? '' : ', changed and not applied'}
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
          draft.value = currentTarget.value === text ? null : currentTarget.value;
        }}
      />
      <p class="actions">
        <button
          type="button"
          disabled={draft.value === null}
          onClick={() => openText(written, state.fileName.value, act)}
        >
          Apply
        </button>
        <button
          type="button"
          disabled={draft.value === null}
          onClick={() => {
            draft.value = null;
          }}
        >
          Discard changes
        </button>
        <button
          type="button"
          onClick={() => download(saveName(state.fileName.value), written, 'application/yaml')}
        >
          Save as .yaml
        </button>
        <button type="button" onClick={() => act.undo()}>
          Undo last change
        </button>
      </p>
      <Problems problems={unreadable.value} onGo={() => {}} />
      <Problems problems={state.problems.value} onGo={go} />
    </section>
  );
}
