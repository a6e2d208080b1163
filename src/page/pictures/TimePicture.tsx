import { useComputed, useSignalEffect } from '@preact/signals';
import type { JSX } from 'preact';
import { paintCursor } from '../../report/canvas/paintCursor.ts';
import { readouts, readoutWords } from '../../report/canvas/readouts.ts';
import { wholeDomain } from '../../report/canvas/visibleDomain.ts';
import { following, sameSpan } from '../../report/canvas/zoom.ts';
import { formatInstant } from '../../report/formatQuantity.ts';
import type { PageProps } from '../actions.ts';
import { effectiveTheme } from '../theme.ts';
import { FigureView } from './FigureView.tsx';
import { Readouts } from './Readouts.tsx';
import './timePicture.css';

/** Rows kept for the words of events. */
const MARK_ROWS = 5;

/** The run over time: contacts, currents, torque, speed and voltage on one axis, with one cursor that reads them all. */
export function TimePicture({ state, act }: PageProps): JSX.Element {
  const cursor = useComputed(() => state.playhead.value.t);
  // What plays stays in sight.
  useSignalEffect(() => {
    const { playing, t } = state.playhead.value;
    const view = state.view.value;
    if (!playing || view === null) return;
    const shown = state.span.peek();
    const next = following(shown, wholeDomain(view.time, state.pinned.peek()?.time), t);
    if (next !== shown) state.span.value = next;
  });
  const view = state.view.value;
  if (view === null) return <p>No run yet.</p>;
  const behind = state.pinned.value?.time ?? null;
  const theme = effectiveTheme.value;
  return (
    <div class="time-picture">
      <FigureView
        spec={view.time}
        lead={
          <fieldset class="stretches screen-only">
            <legend class="visually-hidden">What is shown</legend>
            {view.stretches.map(({ label, span }) => (
              <button
                key={label}
                type="button"
                aria-pressed={sameSpan(span, state.span.value)}
                onClick={() => {
                  state.span.value = span;
                }}
              >
                {label}
              </button>
            ))}
          </fieldset>
        }
        behind={behind}
        span={state.span.value}
        theme={theme}
        label="Time of the cursor"
        cursor={cursor}
        range={view.time.x.domain}
        cursorWords={(t) => `${formatInstant(t)}. ${readoutWords(readouts(view.time, t))}`}
        paintCursorAt={(pen, layout, t) => paintCursor(pen, layout, view.time, t, theme)}
        cursorUnder={(layout, [px]) => layout.xAt(px)}
        onSeek={act.seek}
        onSpan={(span) => {
          state.span.value = span;
        }}
        markRows={MARK_ROWS}
        fileName={state.fileName.value}
        onPainted={() => act.painted(view)}
      />
      <Readouts spec={view.time} behind={behind} cursor={cursor} />
    </div>
  );
}
