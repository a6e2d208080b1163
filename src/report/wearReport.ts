import type { LifeBasis } from '../assess/wear/contactLife.ts';
import type { WearOfLog } from '../recording/wearOfLog.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { ContactorName } from '../starter/starter.ts';

/** What a log of operations says about the contactors of a scenario. */
export interface WearReport {
  readonly scenario: Pick<Scenario, 'title' | 'titleBlock'>;
  /** Name of the log's file as given. */
  readonly logName: string;
  /** Day up to which the log counts, YYYY-MM-DD; null: no operation counts. */
  readonly asOf: string | null;
  readonly wear: WearOfLog;
  /** What the lives of each contactor stand on. */
  readonly basis: Readonly<Record<ContactorName, LifeBasis>>;
  /** Words: how the wear of an operation was simulated. */
  readonly method: string;
}

/** Contactors in the order of presentation. */
export const CONTACTORS = ['forward', 'reverse'] as const satisfies readonly ContactorName[];

/** What must be read before a figure of wear is acted on. */
export const WEAR_CAUTIONS: readonly string[] = [
  'An estimate, not a permission to wait: inspect contacts in the maker’s intervals and after every short circuit.',
  'Worn contacts weld; a contactor that does not open leaves the motor plugging or running.',
];
