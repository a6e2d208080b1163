import { conduction } from './conduction.ts';
import { clearLine } from './lines.ts';
import { opposite, type StarterState } from './starter.ts';
import type { StarterEvent } from './starterEvent.ts';
import type { Transition } from './transition.ts';
import { clearPole } from './transitions.ts';

/**
 * Extinguishes arcs that carry no current any more: their circuit has been opened by another pole or by the loss of their
 * supply phase, or the other contactor's pole on the same terminal has closed beside them (the common phase) and taken the
 * current over.
 */
export function extinguishDeadArcs(state: StarterState, t: number): Transition {
  const events: StarterEvent[] = [];
  let current = state;
  for (const contactor of ['forward', 'reverse'] as const)
    for (const pole of [0, 1, 2] as const) {
      if (current.poles[contactor][pole] !== 'arcing') continue;
      const bypassed = current.poles[opposite(contactor)][pole] === 'closed';
      const poles = conduction(current);
      if (poles.kind === 'shortCircuit') continue;
      const carries = poles.kind !== 'none' && poles.connection[pole] !== -1;
      if (carries && !bypassed) continue;
      const cause = bypassed ? 'the other contactor took its current over' : 'its circuit is open';
      const cleared = clearPole(current, t, contactor, pole, cause);
      current = cleared.state;
      events.push(...cleared.events);
    }
  for (const phase of [0, 1, 2]) {
    if (current.lines[phase] !== 'arcing') continue;
    const poles = conduction(current);
    if (poles.kind === 'shortCircuit') continue;
    if (poles.kind !== 'none' && poles.connection.includes(phase)) continue;
    const cleared = clearLine(current, t, phase, 'it carries no current');
    current = cleared.state;
    events.push(...cleared.events);
  }
  return { state: current, events };
}
