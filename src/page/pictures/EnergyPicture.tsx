import { useComputed } from '@preact/signals';
import { energyPicture } from '../../report/live/energyAt.ts';
import { quantityColour } from '../../report/palette.ts';
import type { PageProps } from '../actions.ts';
import './energyPicture.css';

/** Where the energy has gone up to the instant of the playhead, as bars that grow. */
export function EnergyPicture({ state }: PageProps) {
  const picture = useComputed(() => {
    const view = state.view.value;
    return view === null ? null : energyPicture(view.film, state.playhead.value.t);
  });
  return (
    <figure class="energy-picture">
      <h2>Where the energy has gone</h2>
      <ul>
        {picture.value?.bars.map((bar) => (
          <li key={bar.key} class={bar.key === 'in' ? 'energy-in' : undefined}>
            <span class="energy-label">{bar.label}</span>
            <span class="energy-text">{bar.text}</span>
            <svg viewBox="0 0 100 8" preserveAspectRatio="none" aria-hidden="true">
              <rect x={bar.x} y="1" width={bar.width} height="6" fill={quantityColour(bar.quantity, 'css')} />
              <line x1={picture.value?.zeroX} x2={picture.value?.zeroX} y1="0" y2="8" />
            </svg>
          </li>
        ))}
      </ul>
      <figcaption>
        From the start of the run up to the cursor. What comes in is the sum of all the others; left of the
        line is given back.
      </figcaption>
    </figure>
  );
}
