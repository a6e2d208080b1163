import { useComputed } from '@preact/signals';
import type { JSX } from 'preact';
import { paintPoint } from '../../report/canvas/paintCursor.ts';
import { nearestInstant, planePoint, planeTail, planeWords } from '../../report/canvas/planePath.ts';
import type { PageProps } from '../actions.ts';
import { effectiveTheme } from '../theme.ts';
import { FigureView } from './FigureView.tsx';
import './planePicture.css';

/** The torque–speed plane: the run over both steady-state curves, and where it stands now. */
export function PlanePicture({ state, act }: PageProps): JSX.Element {
  const cursor = useComputed(() => state.playhead.value.t);
  const view = state.view.value;
  if (view === null) return <p>No run yet.</p>;
  const { film, plane } = view;
  const theme = effectiveTheme.value;
  return (
    <div class="plane-picture">
      <FigureView
        spec={plane}
        behind={state.pinned.value?.plane ?? null}
        span={null}
        theme={theme}
        label="Time of the moving point"
        cursor={cursor}
        range={view.time.x.domain}
        cursorWords={(t) => planeWords(film, t)}
        paintCursorAt={(pen, layout, t) => {
          const { speed, torque } = planePoint(film, t);
          paintPoint(pen, layout, plane, speed, torque, planeTail(film, t), theme);
        }}
        cursorUnder={(layout, place) => nearestInstant(film, layout, 0, place, cursor.peek())}
        onSeek={act.seek}
        onSpan={null}
        fileName={state.fileName.value}
      />
      <p class="plane-words">{planeWords(film, cursor.value)}</p>
    </div>
  );
}
