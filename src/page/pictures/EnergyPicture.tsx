import { useComputed } from '@preact/signals';
import { exportName } from '../../report/canvas/exportName.ts';
import { figureCsv } from '../../report/canvas/figureCsv.ts';
import { ENERGY_PRINT } from '../../report/canvas/printOptions.ts';
import { energyPicture } from '../../report/live/energyAt.ts';
import { energiesOverTime, energySpec } from '../../report/live/energySpec.ts';
import { quantityColour } from '../../report/palette.ts';
import { renderSvg } from '../../report/renderSvg.ts';
import type { PageProps } from '../actions.ts';
import { download, figurePng } from './download.ts';
import { SaveMenu } from './SaveMenu.tsx';
import './energyPicture.css';

/** Where the energy has gone up to the instant of the playhead, as bars that grow. */
export function EnergyPicture({ state }: PageProps) {
  const picture = useComputed(() => {
    const view = state.view.value;
    return view === null ? null : energyPicture(view.film, state.playhead.value.t);
  });
  const name = (ending: string) => exportName(state.fileName.value, 'energy', ending);
  const now = () => {
    const film = state.view.peek()?.film;
    return film === undefined ? null : energySpec(film, state.playhead.peek().t);
  };
  return (
    <figure class="energy-picture">
      <div class="picture-head">
        <h2>Where the energy has gone</h2>
        <SaveMenu
          label="where the energy has gone"
          saveSvg={() => {
            const spec = now();
            if (spec !== null) download(name('svg'), renderSvg(spec, { theme: 'light' }), 'image/svg+xml');
          }}
          savePng={async () => {
            const spec = now();
            const png = spec === null ? null : await figurePng(spec, ENERGY_PRINT);
            if (png !== null) download(name('png'), png, 'image/png');
          }}
          saveCsv={() => {
            const film = state.view.peek()?.film;
            if (film !== undefined)
              download(name('csv'), figureCsv(energiesOverTime(film)), 'text/csv;charset=utf-8');
          }}
        />
      </div>
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
