import type { TripClass } from '../starterData.ts';

/** Trip classes to choose from, from the quickest on. */
export const TRIP_CLASSES: readonly TripClass[] = ['5', '10A', '10', '20', '30'];
