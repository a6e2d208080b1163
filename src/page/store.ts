import { batch, computed, effect, signal } from '@preact/signals';
import type { Problem } from '../index.ts';
import type { UnitSystem } from '../report/formatQuantity.ts';
import { isConcealing, type Lesson } from '../report/lesson/lesson.ts';
import type { Playhead } from '../report/live/playhead.ts';
import { AT_REST, playheadOn, started } from '../report/live/playheadOn.ts';
import type { LiveVerdict, RunView } from '../report/live/runView.ts';
import type { PageActions } from './actions.ts';
import { latency } from './latency.ts';
import type { JudgedText, PageState, Task } from './state.ts';
import { type EngineWorker, startEngine } from './worker/client.ts';
import type { HiddenFault, RunAnswer } from './worker/protocol.ts';
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

/** Texts that can be gone back to. */
const MOST_UNDONE = 100;

/**
 * The state of the page and what may be done to it, with the workers behind it.
 *
 * @param onFirstPicture called once, when the curves of the first run are on the screen
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
  const verdict = signal<LiveVerdict | null>(null);
  const judged = signal<JudgedText | null>(null);
  const judging = signal(false);
  const trouble = signal('');
  const pinned = signal<RunView | null>(null);
  const playhead = signal<Playhead>(AT_REST);
  const span = signal<readonly [number, number] | null>(null);
  const past: string[] = [];
  const timing = latency<RunView>();
  /** A run of another scenario opens at its own focus; a changed one stays where it is. */
  let fresh = true;
  /** Pressed while a run was under way: the pictures move on once it is there. */
  let playWhenShown = false;
  let seen = false;
  /** Number of the run that is shown. */
  let serial = 0;

  const order = () => ({ text: text.value, fileName: fileName.value, units: units.value });
  const tell = (error: unknown) => {
    trouble.value = error instanceof Error ? error.message : String(error);
  };
  const runs = startEngine(tell);
  let slow: EngineWorker | null = null;
  const slowEngine = () => {
    slow ??= startEngine(tell);
    return slow.engine;
  };

  const settle = settling({
    ask: () => runs.engine.settle(),
    tell(settled) {
      if (settled.serial !== serial || view.value === null) return;
      const drafted = view.value;
      batch(() => {
        verdict.value = settled.verdict;
        if (settled.pictures === null) return;
        view.value = { ...drafted, ...settled.pictures };
        if (pinned.value === drafted) pinned.value = view.value;
      });
    },
  });

  function show(answer: RunAnswer): void {
    batch(() => {
      answers.value++;
      trouble.value = '';
      if (answer.kind !== 'run') {
        if (answer.kind === 'refused') problems.value = answer.problems;
        else trouble.value = answer.reason;
        playWhenShown = false;
        return;
      }
      problems.value = [];
      remember(answer.text);
      text.value = answer.text;
      viewText.value = answer.text;
      serial = answer.serial;
      verdict.value = null;
      timing.shown(answer.view);
      view.value = answer.view;
      if (fresh) span.value = null;
      playhead.value = playheadOn(answer.view, playhead.value, fresh, playWhenShown);
      fresh = false;
      playWhenShown = false;
    });
    settle();
  }

  /** Keeps the present text to go back to, before another one takes its place. */
  function remember(next: string): void {
    if (text.value === next || past.at(-1) === text.value) return;
    past.push(text.value);
    if (past.length > MOST_UNDONE) past.shift();
  }

  const lesson = signal(first.lesson);
  const hiddenOf = (): HiddenFault | null => {
    const fault = lesson.value?.hidden ?? null;
    return fault === null ? null : { fault, told: !isConcealing(lesson.value) };
  };
  const queue = runQueue(
    { ...order(), hidden: hiddenOf() },
    {
      run: (order) => {
        timing.sent();
        const draft = order.edits.some(({ kind }) => kind === 'adjust');
        return runs.engine.run({ ...order, detail: { draft, span: span.value } });
      },
      show,
      busy: (now) => {
        pending.value = now;
      },
      fail: tell,
    },
  );
  // A lesson that begins to hide a fault, or ends it, runs the scenario again with or without it.
  const hidden = computed(() => JSON.stringify(hiddenOf()));
  effect(() => {
    void hidden.value;
    queue.again({ hidden: hiddenOf() });
  });

  const state: PageState = {
    text,
    fileName,
    view,
    viewText,
    verdict,
    problems,
    answers,
    pending,
    judged,
    judging,
    trouble,
    linkTrouble: signal(''),
    pinned,
    units,
    task: signal(first.task),
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
      remember(newText);
      fresh = true;
      batch(() => {
        text.value = newText;
        fileName.value = newName;
      });
      queue.open({ ...order(), hidden: hiddenOf() });
    },
    undo() {
      const before = past.pop();
      if (before === undefined) return;
      text.value = before;
      queue.open({ ...order(), hidden: hiddenOf() });
    },
    setUnits(system) {
      units.value = system;
      queue.again({ units: system });
    },
    seek(t) {
      playhead.value = { ...playhead.value, t };
    },
    play() {
      if (pending.value) playWhenShown = true;
      else if (view.value !== null) playhead.value = started(playhead.value, view.value);
    },
    pause() {
      playWhenShown = false;
      playhead.value = { ...playhead.value, playing: false };
    },
    judge() {
      const asked = order();
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
    withoutFaults: () => runs.engine.withoutFaults(text.value),
    files: (kind) => slowEngine().files(order(), kind),
    painted(run) {
      timing.painted(run);
      if (seen) return;
      seen = true;
      onFirstPicture();
    },
    exactFrame: (t) => runs.engine.frame(t, units.value),
  };
  return { state, act };
}
