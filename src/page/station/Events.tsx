import { useComputed, useSignal, useSignalEffect } from '@preact/signals';
import { formatInstant } from '../../report/formatQuantity.ts';
import { eventsUpTo } from '../../report/live/stationAt.ts';
import type { PageProps } from '../actions.ts';

/** Events that are listed. */
const LISTED = 6;
/** An event is read out when no other has followed for this long, ms: within one reversal twenty things happen. */
const READ_OUT_AFTER = 1500;

/** The last events up to the playhead, the latest first; each is a way back to its instant. */
export function Events({ state, act }: PageProps) {
  const latest = useComputed(() => {
    const view = state.view.value;
    return view === null ? null : (eventsUpTo(view.film, state.playhead.value.t, 1)[0] ?? null);
  });
  const film = state.view.value?.film;
  const events = film === undefined || latest.value === null ? [] : eventsUpTo(film, latest.value.t, LISTED);
  return (
    <section class="events" aria-label="Last events">
      <h3>Last events</h3>
      <ol>
        {events.map((event, i) => (
          <li key={`${event.t} ${event.text}`} aria-current={i === 0 ? 'true' : undefined}>
            <button
              type="button"
              class="event-time"
              onClick={() => {
                act.pause();
                act.seek(event.t);
              }}
            >
              {formatInstant(event.t)}
            </button>
            <span>{event.text}</span>
          </li>
        ))}
      </ol>
      {events.length === 0 ? <p>Nothing has happened yet.</p> : null}
      <ReadOut state={state} />
    </section>
  );
}

/** Says the latest event to who does not see it, once things have calmed down. */
function ReadOut({ state }: Pick<PageProps, 'state'>) {
  const said = useSignal('');
  const text = useComputed(() => {
    const view = state.view.value;
    return view === null ? '' : (eventsUpTo(view.film, state.playhead.value.t, 1)[0]?.text ?? '');
  });
  useSignalEffect(() => {
    const next = text.value;
    const timer = setTimeout(() => {
      said.value = next;
    }, READ_OUT_AFTER);
    return () => clearTimeout(timer);
  });
  return (
    <p class="visually-hidden" aria-live="polite">
      {said}
    </p>
  );
}
