import { batch, computed, effect, signal } from '@preact/signals';
import type { Problem } from '../index.ts';
import type { UnitSystem } from '../report/formatQuantity.ts';
import { isConcealing, type Lesson } from '../report/lesson/lesson.ts';
import type { Playhead } from '../report/live/playhead.ts';
import { AT_REST, atEnd, playheadOn, started } from '../report/live/playheadOn.ts';
import type { LiveVerdict, RunView } from '../report/live/runView.ts';
import type { PageActions } from './actions.ts';
import { newHistory } from './history.ts';
import { latency } from './latency.ts';
import type { JudgedText, PageState, Task } from './state.ts';
import { type EngineWorker, startEngine } from './worker/client.ts';
import type { HiddenFault, RunAnswer } from './worker/protocol.ts';
import { newRunner } from './worker/runner.ts';
import { runQueue } from './worker/runQueue.ts';
import { settling } from './worker/settling.ts';

/** What the page opens with. */
export interface FirstInput {
  readonly text: string;
  readonly fileName: string;
  readonly units: UnitSystem;
  readonly task: Task;
  readonly largePrint: boolean;
  readonly lesson: Lesson | null;
}

/** A run that takes longer than this can be stopped, ms. */
const LONG = 3000;

/**
 * The state of the page and what may be done to it, with the workers behind it.
 *
 * @param onFirstPicture called once, when the first run is on the screen
 */
export function newStore(
  first: FirstInput,
  onFirstPicture: () => void,
): { state: PageState; act: PageActions } {
  const text = signal(first.text);
  const fileName = signal(first.fileName);
  const units = signal(first.units);
  const view = signal<RunView | null>(null);
  const viewText = signal('');
  const problems = signal<readonly Problem[]>([]);
  const answers = signal(0);
  const pending = signal(true);
  const isLong = signal(false);
  const verdict = signal<LiveVerdict | null>(null);
  const judged = signal<JudgedText | null>(null);
  const judging = signal(false);
  const trouble = signal('');
  const pinned = signal<RunView | null>(null);
  const pinnedText = signal('');
  const playhead = signal<Playhead>(AT_REST);
  const span = signal<readonly [number, number] | null>(null);
  const task = signal(first.task);
  const lesson = signal(first.lesson);
  const history = newHistory();
  const timing = latency<RunView>();
  /** A run of another scenario opens at its own focus; a changed one stays where it is. */
  let fresh = true;
  /** What was asked for while a run was under way: the pictures do it once it is there. */
  let whenShown: 'stay' | 'play' | 'goToEnd' = 'stay';
  let seen = false;
  /** Said with the next answer. */
  let note = '';
  /** Name of the file that the run is of. */
  let viewName = first.fileName;
  /** Number of the run that is shown. */
  let serial = 0;

  const hiddenOf = (): HiddenFault | null => {
    const fault = lesson.value?.hidden ?? null;
    return fault === null ? null : { fault, told: !isConcealing(lesson.value) };
  };
  const newest = () => ({
    text: text.value,
    fileName: fileName.value,
    units: units.value,
    hidden: hiddenOf(),
  });
  const tell = (error: unknown) => {
    trouble.value = error instanceof Error ? error.message : String(error);
  };
  const runner = newRunner(tell);
  let slow: EngineWorker | null = null;
  const slowEngine = () => {
    slow ??= startEngine(tell);
    return slow.engine;
  };

  const settle = settling({
    ask: () => runner.worker().engine.settle(),
    tell(settled) {
      const drafted = view.value;
      if (settled.serial !== serial || drafted === null) return;
      batch(() => {
        verdict.value = settled.verdict;
        if (settled.pictures === null) return;
        view.value = { ...drafted, ...settled.pictures };
        if (pinned.value === drafted) pinned.value = view.value;
      });
    },
  });

  /** What was asked for holds until the last input has been answered. */
  function done(): void {
    if (!queue.isWaiting()) whenShown = 'stay';
  }

  function show(answer: RunAnswer, goesOn: boolean): void {
    batch(() => {
      answers.value++;
      trouble.value = note;
      note = '';
      if (answer.kind !== 'run') {
        if (answer.kind === 'refused') problems.value = answer.problems;
        else trouble.value = answer.reason;
        // Without any run there is nothing to look at but the text.
        if (view.value === null) task.value = 'files';
        done();
        return;
      }
      problems.value = [];
      if (!goesOn && text.value !== answer.text) history.keep({ text: text.value, fileName: fileName.value });
      text.value = answer.text;
      viewText.value = answer.text;
      viewName = fileName.value;
      units.value = answer.view.units;
      serial = answer.serial;
      verdict.value = null;
      timing.shown(answer.view);
      view.value = answer.view;
      if (fresh) span.value = null;
      const on = playheadOn(answer.view, playhead.value, fresh, whenShown === 'play');
      playhead.value = whenShown === 'goToEnd' ? atEnd(on, answer.view) : on;
      fresh = false;
      done();
    });
    if (answer.kind === 'run') settle();
  }

  let clock: ReturnType<typeof setTimeout> | undefined;
  const queue = runQueue(newest(), {
    run: (order) => {
      timing.sent();
      const draft = order.edits.some(({ kind }) => kind === 'adjust');
      return runner.run({ ...order, detail: { draft, span: span.value } });
    },
    show,
    busy: (now) => {
      pending.value = now;
      clearTimeout(clock);
      isLong.value = false;
      if (now)
        clock = setTimeout(() => {
          isLong.value = true;
        }, LONG);
    },
    fail: tell,
  });
  // A lesson that begins to hide a fault, or ends it, runs the scenario again with or without it.
  const hidden = computed(() => JSON.stringify(hiddenOf()));
  effect(() => {
    void hidden.value;
    // What was there before may name what is to be found.
    if (isConcealing(lesson.peek())) history.clear();
    queue.again({ hidden: hiddenOf() });
  });

  const open = (newText: string, newName: string) => {
    batch(() => {
      text.value = newText;
      fileName.value = newName;
    });
    queue.open(newest());
  };

  const state: PageState = {
    text,
    fileName,
    view,
    viewText,
    verdict,
    problems,
    answers,
    pending,
    isLong,
    judged,
    judging,
    trouble,
    linkTrouble: signal(''),
    pinned,
    units,
    task,
    largePrint: signal(first.largePrint),
    playhead,
    span,
    lesson,
  };
  const act: PageActions = {
    edit(...edits) {
      // What hands do is done at an instant of the run that is shown: the pictures wait for what becomes of it.
      if (edits.some(({ kind }) => kind === 'button' || kind === 'command')) act.pause();
      timing.input();
      queue.edit(edits);
    },
    open(newText, newName) {
      // A lesson that hides a fault begins by opening the text without it: the one with it must not come back.
      if (!isConcealing(lesson.value)) history.keep({ text: text.value, fileName: fileName.value });
      fresh = true;
      open(newText, newName);
    },
    keepForUndo: (past, name) => history.keep({ text: past, fileName: name }),
    undo() {
      // A change that is still under way is taken back before any that has been shown.
      if (queue.hasEdits()) queue.open(newest());
      else {
        const past = history.back();
        if (past !== undefined) open(past.text, past.fileName);
      }
    },
    stop() {
      const stopped = { text: text.value, fileName: fileName.value };
      runner.stop('The run was stopped.');
      if (view.value === null) return;
      // Text, pictures and numbers belong together: the scenario of the last run comes back.
      if (stopped.text !== viewText.value) history.keep(stopped);
      note = 'The run was stopped and the scenario before it is back; Undo brings the other text.';
      open(viewText.value, viewName);
    },
    setUnits(system) {
      queue.again({ units: system });
      const old = pinned.value;
      if (old === null || old.units === system) return;
      const asked = { ...newest(), text: pinnedText.value, units: system };
      slowEngine()
        .run({ ...asked, edits: [], detail: { draft: false, span: null } })
        .then((answer) => {
          if (answer.kind === 'run' && pinned.value === old) pinned.value = answer.view;
        }, tell);
    },
    pin() {
      pinned.value = view.value;
      pinnedText.value = viewText.value;
    },
    unpin() {
      pinned.value = null;
    },
    seek(t) {
      playhead.value = { ...playhead.value, t };
    },
    play() {
      if (pending.value) whenShown = 'play';
      else if (view.value !== null) playhead.value = started(playhead.value, view.value);
    },
    goToEndWhenShown() {
      if (pending.value) whenShown = 'goToEnd';
      else if (view.value !== null) playhead.value = atEnd(playhead.value, view.value);
    },
    pause() {
      whenShown = 'stay';
      playhead.value = { ...playhead.value, playing: false };
    },
    judge() {
      const asked = { ...newest(), text: viewText.value };
      slow?.end();
      slow = null;
      judging.value = true;
      slowEngine()
        .judge(asked)
        .then((found) => {
          judged.value = { text: asked.text, units: asked.units, judged: found };
        }, tell)
        .finally(() => {
          judging.value = false;
        });
    },
    withoutFaults: () => runner.worker().engine.withoutFaults(text.value),
    files: (kind) => slowEngine().files(newest(), kind),
    painted(run) {
      timing.painted(run);
      if (seen) return;
      seen = true;
      onFirstPicture();
    },
    exactFrame: (t) => runner.worker().engine.frame(t, units.value),
  };
  return { state, act };
}
