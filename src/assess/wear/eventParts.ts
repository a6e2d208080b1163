import type { BreakingOccasion, MakingOccasion, WearEvent } from './contactWearTypes.ts';

/** What one contactor does in an event. */
export interface EventPart {
  readonly makes?: MakingOccasion;
  readonly breaks?: BreakingOccasion;
  /** How often in one event. */
  readonly times: number;
}

/** Nothing. */
const IDLE: EventPart = { times: 0 };

/** What the driving and the plugging contactor do in each event. In reversals they take turns, so that each does its part in every second one. */
export const EVENT_PARTS: Readonly<Record<'driving' | 'plugging', Readonly<Record<WearEvent, EventPart>>>> = {
  driving: {
    start: { makes: 'start', times: 1 },
    stop: { breaks: 'running', times: 1 },
    plugStop: { breaks: 'running', times: 1 },
    reversal: { makes: 'plugging', breaks: 'running', times: 0.5 },
    inch: { makes: 'start', breaks: 'inching', times: 1 },
  },
  plugging: {
    start: IDLE,
    stop: IDLE,
    plugStop: { makes: 'plugging', breaks: 'plugging', times: 1 },
    reversal: { makes: 'plugging', breaks: 'running', times: 0.5 },
    inch: IDLE,
  },
};
