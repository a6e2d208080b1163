import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { PageProps } from '../actions.ts';
import type { BuiltInExample } from '../examples.ts';
import { MakeLink } from '../lesson/MakeLink.tsx';
import { Downloads } from './Downloads.tsx';
import { acceptDrops } from './dropTarget.ts';
import { Editor } from './Editor.tsx';
import { openFile, openText } from './openFile.ts';
import './files.css';

/** Scenarios in and out: built-in ones, files, text; and what the command line makes of them. */
export function Files({
  state,
  act,
  examples,
}: PageProps & { readonly examples: readonly BuiltInExample[] }) {
  const chosen = examples.find(({ text }) => text === state.text.value)?.fileName ?? '';
  return (
    <div class="files">
      <h2>Scenario files</h2>
      <label class="field">
        Built-in scenario
        <select
          value={chosen}
          onChange={({ currentTarget }) => {
            const found = examples.find(({ fileName }) => fileName === currentTarget.value);
            if (found !== undefined) openText(found.text, found.fileName, { state, act });
          }}
        >
          <option value="" disabled>
            changed, or another file
          </option>
          {examples.map(({ fileName, label }) => (
            <option value={fileName} key={fileName}>
              {label}
            </option>
          ))}
        </select>
      </label>
      <label class="field">
        Open a file, or drop it anywhere on the page
        <input
          type="file"
          accept=".yaml,.yml,.json,text/yaml,application/yaml,application/json"
          onChange={({ currentTarget }) => {
            const file = currentTarget.files?.[0];
            if (file !== undefined) void openFile(file, { state, act });
            // The same file, changed meanwhile, can be chosen again.
            currentTarget.value = '';
          }}
        />
      </label>
      <Editor state={state} act={act} />
      <MakeLink
        madeOf={JSON.stringify([state.text.value, state.units.value, state.largePrint.value])}
        disabled={state.problems.value.length > 0}
        parts={async () => ({
          text: state.text.value,
          lesson: null,
          units: state.units.value,
          largePrint: state.largePrint.value,
        })}
      />
      <Downloads state={state} act={act} />
    </div>
  );
}

/** Takes a file dropped anywhere on the page, whatever the task is, and shows that it would be taken. */
export function DropZone({ state, act }: PageProps) {
  const over = useSignal(false);
  useEffect(
    () =>
      acceptDrops(window, {
        over: (is) => {
          over.value = is;
        },
        drop: (file) => {
          void openFile(file, { state, act });
          state.task.value = 'files';
        },
      }),
    [state, act],
  );
  return over.value ? <div class="drop-here">Drop the scenario file here</div> : null;
}
