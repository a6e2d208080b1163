import type { Place } from './place.ts';
import type { Fault } from './problem.ts';

/** A fault with its place in the text. */
export interface PlacedFault extends Fault {
  readonly place: Place;
}
