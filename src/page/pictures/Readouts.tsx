import type { ReadonlySignal } from '@preact/signals';
import type { JSX } from 'preact';
import { readouts } from '../../report/canvas/readouts.ts';
import type { FigureSpec } from '../../report/figureSpec.ts';
import { formatInstant } from '../../report/formatQuantity.ts';
import { quantityColour } from '../../report/palette.ts';
import './readouts.css';

/** A figure over time and where its cursor stands. */
export interface ReadoutsProps {
  readonly spec: FigureSpec;
  readonly behind: FigureSpec | null;
  /** s */
  readonly cursor: ReadonlySignal<number>;
}

/** The values of all curves under the cursor, beside those of the pinned run. */
export function Readouts({ spec, behind, cursor }: ReadoutsProps): JSX.Element {
  return (
    <dl class="readouts">
      <div>
        <dt>Time</dt>
        <dd>{formatInstant(cursor.value)}</dd>
      </div>
      {readouts(spec, cursor.value, behind).map(({ panel, rows }) => (
        <div key={panel}>
          <dt>{panel}</dt>
          {rows.map(({ label, text, quantity, pinned }) => (
            <dd key={label}>
              {quantity !== null && (
                <svg viewBox="0 0 14 6" width="14" height="6" aria-hidden="true">
                  <rect width="14" height="6" fill={quantityColour(quantity, 'css')} />
                </svg>
              )}
              <span class="readouts-label">{label}</span> <span class="readouts-value">{text}</span>
              {pinned !== null && quantity !== null && <small> pinned {pinned}</small>}
            </dd>
          ))}
        </div>
      ))}
    </dl>
  );
}
