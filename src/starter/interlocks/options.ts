import type { ControlData, StarterFault } from '../../scenario/scenario.ts';
import { PROPERTIES, type PropertyId, whyNotApplicable } from './property.ts';

/** What the check must know of a starter besides its circuit. */
export interface ExploreOptions {
  /** What is judged. */
  readonly properties: readonly PropertyId[];
  readonly emergencyStopCategory: 0 | 1;
  /** While one contactor is in the other cannot move. */
  readonly mechanicalInterlock: boolean;
  /** Braking needs a relay that remembers: it must then not begin twice. */
  readonly memoryRelay: boolean;
  /** There is an overload relay that can trip. */
  readonly overload: boolean;
  /** What is wrong with the devices. */
  readonly faults: readonly StarterFault[];
  /**
   * slow: the speed takes longer from drop-out to pick-up than the devices take to settle, as the switch's hysteresis is there for.
   * any: it may be as fast as it likes.
   */
  readonly speed: 'slow' | 'any';
}

/** The healthy starter, judged by every property that applies to it. */
export function exploreOptions(control: ControlData): ExploreOptions {
  return {
    properties: PROPERTIES.map(({ id }) => id).filter((id) => whyNotApplicable(id, control) === null),
    emergencyStopCategory: control.emergencyStop.category,
    mechanicalInterlock: control.mechanicalInterlock,
    memoryRelay: control.memoryRelay,
    overload: control.overload !== null,
    faults: [],
    speed: 'slow',
  };
}
