import type { ReportFile } from '../index.ts';
import type { UnitSystem } from '../report/formatQuantity.ts';
import type { Frame } from '../report/live/frame.ts';
import type { RunView } from '../report/live/runView.ts';
import type { Edited } from '../scenario/edit/applyEdits.ts';
import type { Edit } from '../scenario/edit/edit.ts';
import type { PageState } from './state.ts';
import type { FileKind } from './worker/protocol.ts';

/** What components may do. */
export interface PageActions {
  /** Runs the scenario again with these changes; of several turns of the same thing the latest wins. */
  edit(...edits: readonly Edit[]): void;
  /** Another scenario: a dropped file, a link, what the editor holds. */
  open(text: string, fileName: string): void;
  setUnits(units: UnitSystem): void;
  /** Keeps the run that is shown, to compare others with. */
  pin(): void;
  unpin(): void;
  /** Stops a run that takes too long. */
  stop(): void;
  /** Moves the playhead, s. */
  seek(t: number): void;
  play(): void;
  pause(): void;
  /** Judges the present text over many closing angles; what comes is `judged`. */
  judge(): void;
  /** The text before the last change; nothing where there is none. */
  undo(): void;
  /** The present text without its faults. */
  withoutFaults(): Promise<Edited>;
  /** Files of the present text. */
  files(kind: FileKind): Promise<readonly ReportFile[]>;
  /** Moves the playhead to the end of the run that has been asked for, once it is there: for whoever wants no motion. */
  goToEndWhenShown(): void;
  /** Keeps a text that is about to be replaced, so that `undo` brings it back. */
  keepForUndo(text: string, fileName: string): void;
  /** Tells that the curves of this run are on the screen. */
  painted(view: RunView): void;
  /** The instant t of the run that is shown, not interpolated. */
  exactFrame(t: number): Promise<Frame>;
}

/** What every component is given. */
export interface PageProps {
  readonly state: PageState;
  readonly act: PageActions;
}
