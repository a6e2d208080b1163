import { formatPercent } from '../formatQuantity.ts';
import type { OverloadState } from './stationAt.ts';

/** The bar goes this far beyond the trip level, as a share of it. */
const BEYOND_TRIP = 1.25;

/** Width of the bar's drawing, in its own units. */
const WIDTH = 100;

/** A thermal memory as a bar with a mark where the relay trips. */
export interface ThermalBar {
  /** Of a drawing 100 wide. */
  readonly width: number;
  readonly tripX: number;
  /** "38.1 % of the trip level" */
  readonly text: string;
}

/** Bar and words of an overload relay's thermal memory. */
export function thermalBar({ share }: OverloadState): ThermalBar {
  return {
    width: WIDTH * Math.min(1, Math.max(0, share) / BEYOND_TRIP),
    tripX: WIDTH / BEYOND_TRIP,
    text: `${formatPercent(share)} of the trip level`,
  };
}
