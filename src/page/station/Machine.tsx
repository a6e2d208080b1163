import { type ReadonlySignal, useComputed } from '@preact/signals';
import { frameAt } from '../../report/live/frameAt.ts';
import { type MotionWords, motionWords } from '../../report/live/motionWords.ts';
import { shaftMark } from '../../report/live/shaftMark.ts';
import type { PageProps } from '../actions.ts';

/** Motor and load: a mark that turns with the shaft, and how they turn and pull, in words. */
export function Machine({ state }: PageProps) {
  const words = useComputed(() => {
    const view = state.view.value;
    return view === null ? null : motionWords(view.film, frameAt(view.film, state.playhead.value.t));
  });
  const direction = useComputed(() => words.value?.direction ?? 'rest');
  return (
    <section class="device machine" aria-label="Motor and load">
      <h3>Motor and load</h3>
      <div class="machine-body">
        <svg viewBox="0 0 60 60" aria-hidden="true">
          <circle class="machine-shaft" cx="30" cy="30" r="24" />
          <Mark state={state} />
          {direction.value === 'forward' ? (
            <path class="machine-arrow" d="M40 5A27 27 0 0 0 11 11M11 4V11H18" />
          ) : null}
          {direction.value === 'reverse' ? (
            <path class="machine-arrow" d="M20 5A27 27 0 0 1 49 11M49 4V11H42" />
          ) : null}
        </svg>
        <ul class="device-list">
          <Line words={words} of="speed" name="shaft" />
          <Line words={words} of="torque" name="motor" />
          <Line words={words} of="load" name="load" />
        </ul>
      </div>
      <p class="muted machine-note">Shaft seen as in the picture of the field.</p>
    </section>
  );
}

function Mark({ state }: Pick<PageProps, 'state'>) {
  const view = state.view.value;
  if (view === null) return null;
  const { x1, y1, x2, y2 } = shaftMark(frameAt(view.film, state.playhead.value.t));
  return <line class="machine-mark" x1={x1} y1={y1} x2={x2} y2={y2} />;
}

interface LineProps {
  readonly words: ReadonlySignal<MotionWords | null>;
  readonly of: 'speed' | 'torque' | 'load';
  readonly name: string;
}

function Line({ words, of, name }: LineProps) {
  const text = useComputed(() => words.value?.[of] ?? '');
  return (
    <li>
      <span>{name}</span> <span class="device-state">{text.value}</span>
    </li>
  );
}
