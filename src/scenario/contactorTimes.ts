import { defaultClosingTime, defaultOpeningTime } from './defaults.ts';

/** Operating times as stated; what is left out is undefined. s */
export interface StatedTimes {
  readonly poles?: 'arcing' | 'ideal' | undefined;
  readonly closingTime?: number | undefined;
  readonly openingTime?: number | undefined;
  readonly changeoverDelay?: number | undefined;
  readonly deadTime?: number | undefined;
}

/** Operating times with every default filled in, s. */
export interface ContactorTimes {
  readonly closingTime: number;
  readonly openingTime: number;
  /** Negative where the stated dead time is shorter than the operating times allow. */
  readonly changeoverDelay: number;
  readonly changeoverGivenAs: 'delay' | 'deadTime' | 'default';
}

/** s; times computed from stated ones are rounded to this, far below any contact's scatter, so that 20 − 20 + 10 ms is 10 ms. */
const grid = 1e-12;

/**
 * Fills in the operating times and the delay between the coils.
 *
 * dead time (contacts part → contacts touch) = delay + closing time − opening time. With ideal poles, or where a dead
 * time is all that is stated, the operating times are taken as zero: the command is then the contact. Where nothing is
 * said about the change-over, the incoming coil is fed through the outgoing contactor's own break contact, so the
 * delay is the opening time.
 *
 * @param stated times in s; undefined where not stated
 */
export function contactorTimes(stated: StatedTimes): ContactorTimes {
  const onlyDeadTime =
    stated.deadTime !== undefined && stated.closingTime === undefined && stated.openingTime === undefined;
  const instant = stated.poles === 'ideal' || onlyDeadTime;
  const closingTime = stated.closingTime ?? (instant ? 0 : defaultClosingTime);
  const openingTime = stated.openingTime ?? (instant ? 0 : defaultOpeningTime);
  if (stated.deadTime !== undefined) {
    const changeoverDelay = roundToGrid(stated.deadTime - closingTime + openingTime);
    return { closingTime, openingTime, changeoverDelay, changeoverGivenAs: 'deadTime' };
  }
  if (stated.changeoverDelay !== undefined) {
    return { closingTime, openingTime, changeoverDelay: stated.changeoverDelay, changeoverGivenAs: 'delay' };
  }
  return { closingTime, openingTime, changeoverDelay: openingTime, changeoverGivenAs: 'default' };
}

/** Rounds a time to a picosecond. */
function roundToGrid(time: number): number {
  return Math.round(time / grid) / Math.round(1 / grid) + 0;
}
