import type { CountRange, DateRange, WearEvent } from '../assess/wear/contactWearTypes.ts';
import type { ContactorName } from '../starter/starter.ts';

/** Version of the format below. Additions keep it; a change of meaning or a removal raises it. */
export const WEAR_VERSION = 1;

/** What `wear --json` prints. Shares are of one; days are YYYY-MM-DD. There is no NaN and no infinity in it. */
export interface WearFile {
  /** Version of this format. */
  readonly wearVersion: typeof WEAR_VERSION;
  /** The program that made the file. */
  readonly program: { readonly name: 'countertorque'; readonly version: string };
  readonly title: string;
  /** Name of the log's file as given. */
  readonly log: string;
  /** Day up to which the log counts; null: no operation counts. */
  readonly asOf: string | null;
  /** Operations counted, by kind. */
  readonly counts: Readonly<Record<WearEvent, number>>;
  /** First and last day counted. */
  readonly first: string | null;
  readonly last: string | null;
  readonly contactors: Readonly<Record<ContactorName, WearFileContactor>>;
  /** What was assumed in reading the log. */
  readonly remarks: readonly string[];
  /** How the wear of an operation was simulated. */
  readonly method: string;
}

/** One contactor. */
export interface WearFileContactor {
  /** Share of the contacts used up, with its range; null: not known, and `missing` says why. */
  readonly used: CountRange | null;
  readonly left: CountRange | null;
  /** Day on which nothing is left at the log's rhythm; null: not known, or never; a single day null: beyond the year 9999. */
  readonly replacement: DateRange | null;
  /** Days from `asOf` to the expected one, negative when it is over; null as it is. */
  readonly daysLeft: number | null;
  /** No life of this device is stated: a generic curve stands for it. */
  readonly generic: boolean;
  /** What life and range stand on. */
  readonly basis: string;
  readonly missing: readonly string[];
}
