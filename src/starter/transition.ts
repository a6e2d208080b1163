import type { StarterState } from './starter.ts';
import type { StarterEvent } from './starterEvent.ts';

/** New state and what is worth recording. */
export interface Transition {
  readonly state: StarterState;
  readonly events: readonly StarterEvent[];
}
