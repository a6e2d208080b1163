import { nextScheduled, type StarterState } from '../../../src/starter/starter.ts';
import type { StarterEvent } from '../../../src/starter/starterEvent.ts';
import { applyScheduled } from '../../../src/starter/transitions.ts';

/** Carries out everything scheduled up to and including `until`; arcs stay as they are. */
export function advance(state: StarterState, until: number): { state: StarterState; events: StarterEvent[] } {
  const events: StarterEvent[] = [];
  let current = state;
  while (nextScheduled(current) <= until) {
    const next = applyScheduled(current);
    events.push(...next.events);
    current = next.state;
  }
  return { state: current, events };
}

/** "time kind contactor phase" of each event, times in ms. */
export function told(events: readonly StarterEvent[]): string[] {
  return events.map((event) =>
    [Math.round(event.t * 1e6) / 1e3, event.kind, event.contactor, event.phase]
      .filter((part) => part !== undefined)
      .join(' '),
  );
}
