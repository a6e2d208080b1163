import type { ReadonlySignal } from '@preact/signals';
import type { StationState } from '../../report/live/stationAt.ts';

/** The starter at the playhead; null before there is a run. */
export type StationSignal = ReadonlySignal<StationState | null>;

/** What every part of the station's drawing is given. */
export interface StationProps {
  readonly station: StationSignal;
}
