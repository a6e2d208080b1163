import type { Problem, ReportFile } from '../../index.ts';
import type { UnitSystem } from '../../report/formatQuantity.ts';
import type { Frame } from '../../report/live/frame.ts';
import type { JudgedView } from '../../report/live/judgedView.ts';
import type { LiveVerdict, RunPictures, RunView } from '../../report/live/runView.ts';
import type { PictureDetail } from '../../report/live/runViewOf.ts';
import type { Edited } from '../../scenario/edit/applyEdits.ts';
import type { Edit } from '../../scenario/edit/edit.ts';

/** A scenario's text. */
export interface FilesOrder {
  readonly text: string;
  /** For the messages. */
  readonly fileName: string;
  readonly units: UnitSystem;
  /** A fault that the text does not tell; null: none. */
  readonly hidden: HiddenFault | null;
}

/** A scenario to run: its text, and changes to be made to it first. */
export interface RunOrder extends FilesOrder {
  readonly edits: readonly Edit[];
  readonly detail: PictureDetail;
}

/** What is wrong behind the text's back. */
export interface HiddenFault {
  /** Of `hide`. */
  readonly fault: string;
  /** False: nothing in the answer may tell it. */
  readonly told: boolean;
}

/** What came of an order. */
export type RunAnswer =
  /** `text` is the scenario that was run. */
  | { readonly kind: 'run'; readonly serial: number; readonly text: string; readonly view: RunView }
  /** The text is no scenario, or would be none with the edits; `text` is what was sent. */
  | { readonly kind: 'refused'; readonly text: string; readonly problems: readonly Problem[] }
  /** The edits make no sense here; words for the person. */
  | { readonly kind: 'notChanged'; readonly text: string; readonly reason: string };

/** What comes after a run, once the hand rests; all of it takes longer than the run. */
export interface Settled {
  /** Of the run that it belongs to. */
  readonly serial: number;
  /** At the run's closing angle alone; null: the run hides a fault. */
  readonly verdict: LiveVerdict | null;
  /** In full detail; null: they were so from the first. */
  readonly pictures: RunPictures | null;
}

/** Folders that the command line writes too: the run's report, the commissioning sheet, the calculation note of the judgement. */
export type FileKind = 'report' | 'sheet' | 'note';

/** What the page asks of a worker. */
export interface Engine {
  run(order: RunOrder): Promise<RunAnswer>;
  /** What the last run was not given time for while the hand moved. */
  settle(): Promise<Settled>;
  /** The instant t of the last run, not interpolated. */
  frame(t: number, units: UnitSystem): Promise<Frame>;
  /** Files of a scenario, by the same code as the command line. */
  files(order: FilesOrder, kind: FileKind): Promise<readonly ReportFile[]>;
  /** The text without its faults. */
  withoutFaults(text: string): Promise<Edited>;
  /** Over thirteen closing angles, with the other ways to stop. */
  judge(order: FilesOrder): Promise<JudgedView>;
}
