import { type ReadonlySignal, useComputed, useSignalEffect } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { formatInstant } from '../../report/formatQuantity.ts';
import { letPass } from '../../report/live/letPass.ts';
import {
  advancedTo,
  nextEvent,
  previousEvent,
  SLOWNESSES,
  slownessWords,
  stepped,
} from '../../report/live/playhead.ts';
import { SCRUB_STEPS, scrubMarks, scrubPosition, scrubTime } from '../../report/live/scrub.ts';
import type { PageProps } from '../actions.ts';
import { useAsked } from '../change/useAsked.ts';
import type { PageState } from '../state.ts';
import { shortcutOf } from './shortcut.ts';
import './transport.css';

/** Moves the playhead: plays, steps, jumps to events, scrubs, and lets time pass. */
export function Transport({ state, act }: PageProps) {
  const playing = useComputed(() => state.playhead.value.playing);
  const isEmpty = useComputed(() => state.view.value === null);
  const end = useAsked<number>(state);
  usePlaying(state, playing);
  const step = (direction: 1 | -1) => {
    const film = state.view.peek()?.film;
    if (film === undefined) return;
    act.pause();
    act.seek(stepped(state.playhead.peek(), direction, film.tEnd).t);
  };
  const jump = (find: typeof nextEvent) => {
    const film = state.view.peek()?.film;
    const t = film === undefined ? null : find(film, state.playhead.peek().t);
    if (t === null) return;
    act.pause();
    act.seek(t);
  };
  const toggle = () => (playing.peek() ? act.pause() : act.play());
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.defaultPrevented) return;
      const shortcut = shortcutOf(event, event.target instanceof Element ? event.target : null);
      if (shortcut === null) return;
      event.preventDefault();
      if (shortcut === 'playOrPause') toggle();
      else step(shortcut === 'stepOn' ? 1 : -1);
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  });
  return (
    <section class="transport" aria-label="Time of the run">
      <Scrub state={state} act={act} />
      <div class="transport-row">
        <Key label="Previous event" disabled={isEmpty} onClick={() => jump(previousEvent)}>
          ◂ event
        </Key>
        <Key label="Step back" disabled={isEmpty} onClick={() => step(-1)} shortcut=",">
          ◂ step
        </Key>
        <button
          type="button"
          class="transport-play"
          disabled={isEmpty}
          onClick={toggle}
          aria-keyshortcuts="Space"
        >
          {playing.value ? 'Pause' : 'Play'}
        </button>
        <Key label="Step on" disabled={isEmpty} onClick={() => step(1)} shortcut=".">
          step ▸
        </Key>
        <Key label="Next event" disabled={isEmpty} onClick={() => jump(nextEvent)}>
          event ▸
        </Key>
        <Slowness state={state} />
        <Instant state={state} />
        <span class="transport-run">
          <button
            type="button"
            disabled={isEmpty}
            onClick={() => {
              const film = state.view.peek()?.film;
              if (film === undefined) return;
              const longer = letPass(film, end.value.peek());
              end.ask(longer.value, () => act.edit(longer));
              // It has passed: nobody waits a hundred seconds for it in slow motion.
              act.goToEndWhenShown();
            }}
          >
            Let 1 s pass
          </button>
          <button
            type="button"
            disabled={isEmpty}
            onClick={() => {
              act.edit({ kind: 'clearActions' });
              act.pause();
              act.seek(0);
            }}
          >
            Start over
          </button>
        </span>
      </div>
    </section>
  );
}

interface KeyProps {
  readonly label: string;
  readonly disabled: ReadonlySignal<boolean>;
  readonly onClick: () => void;
  readonly shortcut?: string;
  readonly children: string;
}

function Key({ label, disabled, onClick, shortcut, children }: KeyProps) {
  return (
    <button
      type="button"
      aria-label={label}
      aria-keyshortcuts={shortcut}
      title={shortcut === undefined ? label : `${label} (key ${shortcut})`}
      disabled={disabled}
      onClick={onClick}
    >
      {children}
    </button>
  );
}

/** While the playhead plays, every picture of the display moves it on by what the clock has moved. */
function usePlaying(state: PageState, playing: ReadonlySignal<boolean>): void {
  useSignalEffect(() => {
    if (!playing.value) return;
    let previous: number | null = null;
    let handle = requestAnimationFrame(function show(stamp) {
      // Asked for before the playhead moves: where it comes to the end, this request is taken back.
      handle = requestAnimationFrame(show);
      const film = state.view.peek()?.film;
      if (film === undefined) return;
      state.playhead.value = advancedTo(state.playhead.peek(), previous, stamp, film.tEnd);
      previous = stamp;
    });
    return () => cancelAnimationFrame(handle);
  });
}

function Scrub({ state, act }: PageProps) {
  const view = state.view.value;
  const position = useComputed(() =>
    state.view.value === null ? 0 : scrubPosition(state.view.value.film, state.playhead.value.t),
  );
  const words = useComputed(() => formatInstant(state.playhead.value.t));
  return (
    <div class="transport-scrub">
      <svg viewBox="0 0 10000 10" preserveAspectRatio="none" aria-hidden="true">
        {view === null
          ? null
          : scrubMarks(view.film).map((x) => <line key={x} x1={x} x2={x} y1="0" y2="10" />)}
      </svg>
      <input
        type="range"
        aria-label="Instant of the run"
        min="0"
        max={SCRUB_STEPS}
        step="1"
        value={position.value}
        aria-valuetext={words.value}
        disabled={view === null}
        onInput={(event) => {
          const film = state.view.peek()?.film;
          if (film === undefined) return;
          act.pause();
          act.seek(scrubTime(film, Number(event.currentTarget.value)));
        }}
      />
    </div>
  );
}

function Slowness({ state }: Pick<PageProps, 'state'>) {
  const slowness = useComputed(() => state.playhead.value.slowness);
  return (
    <label class="transport-slowness">
      <span>Speed</span>
      <select
        value={SLOWNESSES.indexOf(slowness.value)}
        onChange={(event) => {
          const chosen = SLOWNESSES[Number(event.currentTarget.value)];
          if (chosen !== undefined) state.playhead.value = { ...state.playhead.peek(), slowness: chosen };
        }}
      >
        {SLOWNESSES.map((one, i) => (
          <option key={one} value={i}>
            {slownessWords(one)}
          </option>
        ))}
      </select>
    </label>
  );
}

function Instant({ state }: Pick<PageProps, 'state'>) {
  return <output class="transport-time">{formatInstant(state.playhead.value.t)}</output>;
}
