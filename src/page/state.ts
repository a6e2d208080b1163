import type { ReadonlySignal, Signal } from '@preact/signals';
import type { Problem } from '../index.ts';
import type { UnitSystem } from '../report/formatQuantity.ts';
import type { Lesson } from '../report/lesson/lesson.ts';
import type { JudgedView } from '../report/live/judgedView.ts';
import type { Playhead } from '../report/live/playhead.ts';
import type { LiveVerdict, RunView } from '../report/live/runView.ts';

/** What the left column is for. */
export type Task = 'push' | 'change' | 'judge' | 'class' | 'files';

/** Everything that components read; only `actions.ts` and `engine.ts` write what is marked read-only. */
export interface PageState {
  /** The scenario's text: what is run, saved and linked. */
  readonly text: ReadonlySignal<string>;
  readonly fileName: ReadonlySignal<string>;
  /** The run that is shown; null before the first one. */
  readonly view: ReadonlySignal<RunView | null>;
  /** The text that made it: differs from `text` only while that is refused or a run is under way. */
  readonly viewText: ReadonlySignal<string>;
  /** True once that run has taken so long that one may want to stop it. */
  readonly isLong: ReadonlySignal<boolean>;
  /** The whole judgement and the text that it is of; null: none yet. */
  readonly judged: ReadonlySignal<JudgedText | null>;
  /** True while that judgement is being made. */
  readonly judging: ReadonlySignal<boolean>;
  /** What went wrong outside a run (a worker that cannot start, a file that cannot be made); '' is nothing. */
  readonly trouble: Signal<string>;
  /** Why the link that the page was opened by could not be used; '' is nothing. */
  readonly linkTrouble: Signal<string>;
  /** Verdict of that run at its closing angle alone; null: it is being judged, or hides a fault. */
  readonly verdict: ReadonlySignal<LiveVerdict | null>;
  /** What is wrong with the text; the pictures then still show `view`, which is marked as another text's. */
  readonly problems: ReadonlySignal<readonly Problem[]>;
  /** Counts answers to input, runs and refusals: what a refused choice shows must go back. */
  readonly answers: ReadonlySignal<number>;
  /** True while a run of newer input is under way. */
  readonly pending: ReadonlySignal<boolean>;
  /** The run that others are compared with. */
  readonly pinned: ReadonlySignal<RunView | null>;
  readonly units: ReadonlySignal<UnitSystem>;
  readonly task: Signal<Task>;
  /** Large print for a projector. */
  readonly largePrint: Signal<boolean>;
  readonly playhead: Signal<Playhead>;
  /** Stretch of time that the pictures show, s; null: the whole run. */
  readonly span: Signal<readonly [number, number] | null>;
  /** What a class is asked; null: no lesson. */
  readonly lesson: Signal<Lesson | null>;
}

/** A judgement with the scenario it is of. */
export interface JudgedText {
  readonly text: string;
  readonly units: UnitSystem;
  readonly judged: JudgedView;
}
