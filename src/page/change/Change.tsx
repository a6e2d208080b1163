import { isConcealing } from '../../report/lesson/lesson.ts';
import { ADJUSTABLE_KEYS } from '../../scenario/edit/edit.ts';
import type { PageProps } from '../actions.ts';
import { Adjuster } from './Adjuster.tsx';
import { Control } from './Control.tsx';
import { Faults } from './Faults.tsx';
import './change.css';

/** Turn what can be turned, and compare what comes of it with a run that was pinned. */
export function Change({ state, act }: PageProps) {
  // A choice that was refused is drawn back.
  void state.answers.value;
  const view = state.view.value;
  if (view === null) return null;
  const pinned = state.pinned.value;
  return (
    <div class="change">
      <div class="change-head">
        <h2>Change and compare</h2>
        <span class="computing" role="status">
          {state.pending.value ? 'computing' : ''}
        </span>
      </div>
      <div class="change-pin">
        <button type="button" onClick={() => act.pin()}>
          {pinned === null ? 'Pin this run' : 'Pin this run instead'}
        </button>
        <button type="button" disabled={pinned === null} onClick={() => act.unpin()}>
          Unpin
        </button>
        <button type="button" onClick={() => act.undo()}>
          Undo
        </button>
      </div>
      <p class="muted change-note">
        {pinned === null
          ? 'Pin a run, then turn something: every number shows its change.'
          : pinned === view
            ? 'This run is pinned.'
            : 'Numbers are compared with the pinned run.'}
      </p>
      {ADJUSTABLE_KEYS.map((key) => (
        <Adjuster state={state} act={act} adjustable={key} key={key} />
      ))}
      <Control state={state} act={act} />
      {isConcealing(state.lesson.value) ? null : <Faults state={state} act={act} />}
    </div>
  );
}
