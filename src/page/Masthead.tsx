import type { PageProps } from './actions.ts';
import { offlineReady } from './registerServiceWorker.ts';
import { TASKS } from './tasks.ts';
import { type ThemeChoice, themeChoice } from './theme.ts';

const THEMES: readonly { readonly choice: ThemeChoice; readonly label: string }[] = [
  { choice: 'system', label: 'as the computer' },
  { choice: 'light', label: 'light' },
  { choice: 'dark', label: 'dark' },
];

/** Title of the scenario, the tasks, and how the page looks. */
export function Masthead({ state, act }: PageProps) {
  return (
    <header class="masthead">
      <h1>{state.view.value?.scenario.title ?? 'Plugging an induction motor'}</h1>
      <nav aria-label="What to do">
        {TASKS.map(({ task, label }) => (
          <button
            type="button"
            key={task}
            aria-current={state.task.value === task ? 'page' : undefined}
            onClick={() => {
              state.task.value = task;
            }}
          >
            {label}
          </button>
        ))}
      </nav>
      <div class="looks">
        <label>
          Units{' '}
          <select
            value={state.units.value}
            onChange={({ currentTarget }) => act.setUnits(currentTarget.value === 'us' ? 'us' : 'SI')}
          >
            <option value="SI">SI</option>
            <option value="us">US</option>
          </select>
        </label>
        <label>
          Colours{' '}
          <select
            value={themeChoice.value}
            onChange={({ currentTarget }) => {
              themeChoice.value =
                THEMES.find(({ choice }) => choice === currentTarget.value)?.choice ?? 'system';
            }}
          >
            {THEMES.map(({ choice, label }) => (
              <option key={choice} value={choice}>
                {label}
              </option>
            ))}
          </select>
        </label>
        <label class="tick">
          <input
            type="checkbox"
            checked={state.largePrint.value}
            onChange={({ currentTarget }) => {
              state.largePrint.value = currentTarget.checked;
            }}
          />{' '}
          large print
        </label>
        <span class="offline muted" role="status">
          {offlineReady.value ? 'works offline' : ''}
        </span>
      </div>
    </header>
  );
}
