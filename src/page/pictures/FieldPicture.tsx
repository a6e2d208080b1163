import { type ReadonlySignal, useComputed } from '@preact/signals';
import { useRef } from 'preact/hooks';
import { exportName } from '../../report/canvas/exportName.ts';
import { figureCsv } from '../../report/canvas/figureCsv.ts';
import { RADIUS } from '../../report/live/fieldArrow.ts';
import { fieldAxes } from '../../report/live/fieldAxes.ts';
import { type FieldPicture as Drawing, fieldPicture } from '../../report/live/fieldPicture.ts';
import { SCALE_WORDS } from '../../report/live/fieldScale.ts';
import { fieldTrail } from '../../report/live/fieldTrail.ts';
import { fluxesOverTime } from '../../report/live/fluxesOverTime.ts';
import { frameAt } from '../../report/live/frameAt.ts';
import type { PageProps } from '../actions.ts';
import { download } from './download.ts';
import { SaveMenu } from './SaveMenu.tsx';
import { drawingPng, savedDrawing } from './savedDrawing.ts';
import './fieldPicture.css';

/** Of a saved picture, px. */
const PNG_SIDE = 800;
/** Points of the stator flux's trail: one per 4.5° of a steadily turning field. */
const TRAIL_POINTS = 41;

/** The rotating field and the rotor in it, with the fluxes as arrows: a flux trapped in the rotor meets the reversed field. */
export function FieldPicture({ state }: PageProps) {
  const drawing = useComputed(() => {
    const view = state.view.value;
    return view === null ? null : fieldPicture(view.film, frameAt(view.film, state.playhead.value.t));
  });
  const trail = useComputed(() => {
    const view = state.view.value;
    return view === null ? '' : fieldTrail(view.film, state.playhead.value.t, TRAIL_POINTS);
  });
  const svg = useRef<SVGSVGElement>(null);
  const name = (ending: string) => exportName(state.fileName.value, 'field', ending);
  return (
    <figure class="field-picture">
      <div class="picture-head">
        <h2>Field in the machine</h2>
        <SaveMenu
          label="the field in the machine"
          saveSvg={() => {
            if (svg.current !== null) download(name('svg'), savedDrawing(svg.current), 'image/svg+xml');
          }}
          savePng={async () => {
            const png = svg.current === null ? null : await drawingPng(savedDrawing(svg.current), PNG_SIDE);
            if (png !== null) download(name('png'), png, 'image/png');
          }}
          saveCsv={() => {
            const film = state.view.peek()?.film;
            if (film !== undefined)
              download(name('csv'), figureCsv(fluxesOverTime(film)), 'text/csv;charset=utf-8');
          }}
        />
      </div>
      <div class="field-body">
        <svg
          ref={svg}
          viewBox="0 0 200 200"
          role="img"
          aria-label="Flux, voltage and current vectors; the words beside it say how they stand"
        >
          <Frame />
          <polyline class="field-trail" points={trail} />
          <Rotor drawing={drawing} />
          <Arrow drawing={drawing} of="voltage" />
          <Arrow drawing={drawing} of="current" />
          <Arrow drawing={drawing} of="statorFlux" />
          <Arrow drawing={drawing} of="rotorFlux" />
        </svg>
        <figcaption>
          <ul class="field-key">
            <Key of="statorFlux" words="stator flux, with its last half period" />
            <Key of="rotorFlux" words="rotor flux" />
            <Key of="voltage" words="voltage at the motor" />
            <Key of="current" words="current" />
          </ul>
          <Words drawing={drawing} />
          <details class="figure-note">
            <summary>How to read it</summary>
            <p>Drawn for one pair of poles. {SCALE_WORDS}</p>
          </details>
        </figcaption>
      </div>
    </figure>
  );
}

type ArrowName = 'statorFlux' | 'rotorFlux' | 'voltage' | 'current';
type Drawn = { readonly drawing: ReadonlySignal<Drawing | null> };

/** What never moves: the stator with the axes of its phases. */
function Frame() {
  return (
    <g class="field-frame">
      <circle cx="100" cy="100" r={RADIUS.frame} />
      <circle cx="100" cy="100" r={RADIUS.stator} />
      <circle class="field-rotor-ring" cx="100" cy="100" r={RADIUS.rotorOuter} />
      <circle class="field-rotor-ring" cx="100" cy="100" r={RADIUS.rotorInner} />
      {fieldAxes().map(({ phase, x, y, endX, endY }) => (
        <g key={phase}>
          <line x1="100" y1="100" x2={endX} y2={endY} />
          <text x={x} y={y}>
            {phase}
          </text>
        </g>
      ))}
    </g>
  );
}

function Rotor({ drawing }: Drawn) {
  return <path class="field-rotor" d={drawing.value?.rotor.path ?? ''} />;
}

function Arrow({ drawing, of }: Drawn & { readonly of: ArrowName }) {
  const arrow = drawing.value?.[of];
  if (arrow === undefined) return null;
  return (
    <g class={`field-arrow field-${of}`}>
      <line x1="100" y1="100" x2={arrow.x} y2={arrow.y} />
      <path d={arrow.head} />
      <path class="field-bar" d={arrow.bar} />
    </g>
  );
}

function Key({ of, words }: { readonly of: ArrowName; readonly words: string }) {
  return (
    <li>
      <svg class={`field-arrow field-${of}`} viewBox="0 0 30 10" aria-hidden="true">
        <line x1="0" y1="5" x2="30" y2="5" />
        <path d="M30 5L21 1L21 9Z" />
      </svg>
      {words}
    </li>
  );
}

function Words({ drawing }: Drawn) {
  const flux = useComputed(() => drawing.value?.fluxWords ?? '');
  const slip = useComputed(() => drawing.value?.slipWords ?? '');
  return (
    <>
      <p class="field-words">{flux.value}</p>
      <p class="field-words">{slip.value}</p>
    </>
  );
}
